package org.papermath.plan;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;

/**
 * An order and a studio in plain numbers of coherent SI, with every assumption they touch in a slot of one array. Made once;
 * the {@link Engine} then runs on arrays of values of these slots.
 */
final class Job {
    /** Marks an assumption that is not there. */
    static final int NONE = -1;

    final List<Assumption> assumptions;
    final double[] likely;
    final double[] low;
    final double[] high;
    /** The slots that are varied in bands. */
    final int[] varied;

    final BatchJob[] batches;
    final PieceJob[] pieces;

    // The studio.
    double scale;
    double fineScale;
    double jug;
    boolean hasBeater;
    double trough;
    double ratedLoad;
    boolean hasVat;
    double vatVolume;
    double vatCelsius;
    double[] mouldWidth = {};
    double[] mouldHeight = {};
    boolean hasPress;
    double weakest;
    double platenArea;
    double daylight = Double.NaN;
    boolean hasFelts;
    double feltArea;
    double feltDry;
    int felts;
    double roomCelsius;
    double roomHumidity;
    double roomVolume;
    double roomRatio;
    double roomSaturated;
    double referenceCelsius;
    double referenceHumidity;

    // Slots of what holds for everything.
    int handling;
    int drainabilityLimit;
    int drainabilityUnbeaten;
    int progress;
    int tellingLimit;
    int pouredConsistency;
    int largeSheet;
    int sizeTolerance;
    int leastDensityPressure;
    int standInDensity;
    int sizeHeel;
    int waterReading;
    int resistanceFactor;
    int resistanceExponent;
    int wireResistance;
    int matRetention;
    int endShare;
    int suction;
    int couched;
    int wall;
    int pressFactor;
    int pressExponent;
    int pressReference;
    int pressTimeConstant;
    int pressFloor;
    int pressAllowed;
    int pressPressure;
    int pressTime;
    int postHeight;
    int postSheets;
    int feltWater;
    int densityExponent;
    int densitySaturation;
    int thinOffset;
    int thinDensity;
    int sorptionSlope;
    int endMargin;
    int vatTolerance;
    int lift;
    int soakRatio;
    int soakTime;
    int sizeTaken;
    int blotterSolids;
    int beatingLoad;
    int additiveLoad;
    int vatCharge;
    int partTime;
    int dryLoad;
    int sizeTime;
    int sortTime;
    int trimTime;
    int foldTime;

    /** One recipe, for all the pieces made from it. */
    static final class BatchJob {
        String name = "";
        double[] share = {};
        double[] onHand = {};
        int[] moisture = {};
        int[] rate = {};
        int[] exponent = {};
        int[] retentionUnbeaten = {};
        int[] retentionWell = {};
        int[] retentionLong = {};
        int[] drainabilityWell = {};
        int[] drainabilityLong = {};
        int[] densityUnbeaten = {};
        int[] densityLong = {};
        int[] densityLight = {};
        int[] shrinkInitial = {};
        int[] shrinkLimit = {};
        int[] shrinkTime = {};
        int shrinkSlope;
        int shrinkIntercept;
        int shrinkOnset;
        int direction;
        int densityTime;
        int[] monolayer = {};
        int[] energy = {};
        int[] bulk = {};
        int[] firstPass = {};
        double beating;
        double drainability = Double.NaN;
        boolean kinetics = true;
        double[] dose = {};
        double[] active = {};
        int[] additiveRetention = {};
        boolean[] particle = {};
        double beaterConsistency;
        double stockConsistency;
        double vatConsistency;
        double sizeBath = Double.NaN;
        int[] pieces = {};
    }

    /** One piece of the order. */
    static final class PieceJob {
        String name = "";
        int index;
        int batch;
        int ordered;
        int wanted;
        int trials;
        double width = Double.NaN;
        double height = Double.NaN;
        double grammage = Double.NaN;
        double caliper = Double.NaN;
        double sampleSolids = Double.NaN;
        double sampleMass = Double.NaN;
        double sampleArea = Double.NaN;
        int folds;
        boolean deckleEdge;
        double trim;
        double gap;
        int envelopeFor = NONE;
        int style;
        int inserts = 1;
        double clearance;
        double sideFlap;
        double flapShare;
        double seam;
        int dryerKind;
        double freeAir;
        int spur = 1;
        int capacity;
        int sheetTimeSmall;
        int sheetTimeLarge;
        int rejectForming;
        int rejectPressing;
        int rejectDrying;
        int rejectSizing;
        int rejectCutting;
        int rejectFolding = NONE;
        int restraint = NONE;
        int criticalRatio = NONE;
        int fanEfficiency = NONE;
        int deliveredShare = NONE;
        int filmStill = NONE;
        int radiative = NONE;
        int lewis = NONE;
        int loftTail = NONE;
        int blotterKept = NONE;
        int blotterHours = NONE;
        int measuredAlong = NONE;
        int measuredAcross = NONE;
        int measuredSolids = NONE;
        int measuredMoisture = NONE;
        int measuredDensity = NONE;
    }

    /** Kinds of dryer, as plain numbers. */
    static final int NO_DRYER = 0;
    static final int FAN_STACK = 1;
    static final int BOARDS = 2;
    static final int LOFT = 3;
    static final int BLOTTERS = 4;

    /** Collects the slots while an order is read. */
    static final class Slots {
        private final Assumptions known;
        private final List<Assumption> list = new ArrayList<>();
        private final Map<Assumption, Integer> slots = new IdentityHashMap<>();

        Slots(Assumptions known) {
            this.known = known;
        }

        int of(String id, Scope scope) {
            return slot(known.get(id, scope));
        }

        int of(String id) {
            return of(id, Scope.GENERAL);
        }

        int maybe(String id, Scope scope) {
            Optional<Assumption> found = known.find(id, scope);
            return found.isPresent() ? slot(found.get()) : NONE;
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
    }

    Job(Slots slots, BatchJob[] batches, PieceJob[] pieces) {
        this.assumptions = List.copyOf(slots.list());
        this.batches = batches;
        this.pieces = pieces;
        int n = assumptions.size();
        this.likely = new double[n];
        this.low = new double[n];
        this.high = new double[n];
        int[] vary = new int[n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            Assumption assumption = assumptions.get(i);
            likely[i] = assumption.likelySi();
            low[i] = assumption.lowSi();
            high[i] = assumption.highSi();
            if (assumption.role() == Role.PHYSICAL && low[i] < high[i]) {
                vary[count++] = i;
            }
        }
        this.varied = java.util.Arrays.copyOf(vary, count);
    }
}
