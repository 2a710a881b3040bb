package org.papermath.plan;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;

/** Gives every assumption an order touches a slot of one array, in the order it is first asked for. */
final class Slots {
    private final Assumptions known;
    private final List<Assumption> list = new ArrayList<>();
    private final Map<Assumption, Integer> slots = new IdentityHashMap<>();

    Slots(Assumptions known) {
        this.known = known;
    }

    int of(String id, Scope scope) {
        return slot(known.get(id, scope));
    }

    /** The slot of an assumption there may be no default for; {@link Job#NONE} if there is none. */
    int maybe(String id, Scope scope) {
        Optional<Assumption> found = known.find(id, scope);
        return found.isPresent() ? slot(found.get()) : Job.NONE;
    }

    private int slot(Assumption assumption) {
        Integer slot = slots.get(assumption);
        if (slot == null) {
            slot = list.size();
            slots.put(assumption, slot);
            list.add(assumption);
        }
        return slot;
    }

    List<Assumption> list() {
        return list;
    }

    /** Looks up what holds for the whole job, general or of the vat or the press of the studio. */
    General general(Scope vat, Scope press) {
        return new General(this, vat, press);
    }

    /**
     * Where the slots of {@link General} are looked up; a class of its own so that each slot can be said in one line.
     */
    private abstract static class Places {
        private final Slots slots;
        private final Scope vat;
        private final Scope press;

        Places(Slots slots, Scope vat, Scope press) {
            this.slots = slots;
            this.vat = vat;
            this.press = press;
        }

        final int of(String id) {
            return of(id, Scope.GENERAL);
        }

        final int of(String id, Scope scope) {
            return slots.of(id, scope);
        }

        final int ofVat(String id) {
            return of(id, vat);
        }

        final int ofPress(String id) {
            return of(id, press);
        }
    }

    /** The slots of what holds for the whole job. */
    static final class General extends Places {
        final int handling = of("order.handling-share");
        final int drainabilityLimit = of("beating.drainability-limit");
        final int drainabilityUnbeaten = of("beating.drainability-unbeaten");
        final int progress = of("beating.progress");
        final int tellingLimit = of("drainage.drainability-limit");
        final int pouredConsistency = of("vat.poured-consistency");
        final int largeSheet = of("labour.large-sheet");
        final int leastDensityPressure = of("sheet.density-least-pressure");
        final int standInDensity = of("sheet.density-stand-in");
        final int sizeHeel = of("size.bath-heel");
        final int sizeTolerance = of("order.size-tolerance");
        final int waterReading = of("freeness.sr-water-reading");
        final int resistanceFactor = ofVat("drainage.resistance-factor");
        final int resistanceExponent = ofVat("drainage.resistance-exponent");
        final int wireResistance = ofVat("drainage.wire-resistance");
        final int matRetention = ofVat("drainage.mat-retention");
        final int endShare = ofVat("drainage.end-share");
        final int suction = ofVat("drainage.suction-factor");
        final int couched = ofVat("web.solids-couched");
        final int wall = of("fibre.cell-wall-density");
        final int pressFactor = ofPress("press.factor");
        final int pressExponent = ofPress("press.exponent");
        final int pressReference = ofPress("press.reference-pressure");
        final int pressTimeConstant = ofPress("press.time-constant");
        final int pressFloor = ofPress("press.floor");
        final int pressAllowed = ofPress("press.allowed-share");
        final int pressPressure = ofPress("press.pressure");
        final int pressTime = ofPress("labour.press-time");
        final int postHeight = ofPress("press.post-height");
        final int postSheets = ofPress("labour.post-sheets");
        final int feltWater = of("felt.water-before");
        final int densityExponent = ofPress("sheet.density-exponent");
        final int densitySaturation = ofPress("sheet.density-saturation-pressure");
        final int thinOffset = of("sheet.thin-offset");
        final int thinDensity = of("sheet.density-lightly-pressed", Scope.of("kozo"));
        final int sorptionSlope = of("sorption.temperature-slope");
        final int endMargin = of("drying.end-margin");
        final int vatTolerance = ofVat("vat.tolerance");
        final int lift = ofVat("vat.lift-factor");
        final int soakRatio = of("beater.soak-liquor-ratio");
        final int soakTime = of("beater.soak-time");
        final int sizeTaken = of("size.bath-taken");
        final int blotterSolids = of("web.solids-blotter-exchange");
        final int beatingLoad = of("labour.beating-load");
        final int additiveLoad = of("labour.additive-load");
        final int vatCharge = of("labour.vat-charge");
        final int partTime = of("labour.part-time");
        final int dryLoad = of("labour.dry-load");
        final int sizeTime = of("labour.size");
        final int sortTime = of("labour.sort");
        final int trimTime = of("labour.trim");
        final int foldTime = of("labour.fold");

        private General(Slots slots, Scope vat, Scope press) {
            super(slots, vat, press);
        }
    }
}
