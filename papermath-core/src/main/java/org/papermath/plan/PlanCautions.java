package org.papermath.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.drying.Dryer;
import org.papermath.engine.Engine;
import org.papermath.engine.FillingVat;
import org.papermath.engine.Settings;
import org.papermath.order.Piece;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.text.Digits;

/** The cautions of a plan: which steps it has, and the figure that makes each caution its own. */
final class PlanCautions {
    private final Studio studio;
    private final Engine engine;
    private final Settings settings;
    private final List<BatchPlan> batches;
    private final List<PiecePlan> pieces;

    PlanCautions(Studio studio, Engine engine, Settings settings, List<BatchPlan> batches, List<PiecePlan> pieces) {
        this.studio = studio;
        this.engine = engine;
        this.settings = settings;
        this.batches = batches;
        this.pieces = pieces;
    }

    List<StepCaution> all() {
        List<StepCaution> all = new ArrayList<>();
        for (WorkStep step : WorkStep.values()) {
            if (has(step)) {
                for (Caution caution : step.cautions()) {
                    all.add(new PlannedCaution(caution, step, caution.text(figure(caution)), caution.basis()));
                }
            }
        }
        return List.copyOf(all);
    }

    private boolean has(WorkStep step) {
        return switch (step) {
            case FORM, SORT, CLEAR_UP, CONDITION, PACK -> true;
            case WEIGH, SOAK ->
                batches.stream().anyMatch(batch -> batch.fibre().ovenDry().si() > 0);
            case COUNT -> !inEnvelopes().isEmpty();
            case COOK -> !raw().isEmpty();
            case BEAT -> batches.stream().anyMatch(batch -> batch.beatingStage().isDone());
            case DOSE -> batches.stream().anyMatch(batch -> !batch.additives().isEmpty());
            case WET_POWDER -> powder() > 0;
            // Where there are boards, trials dry on them, and the caution stands there.
            case DRY_TRIALS ->
                !driesOn(Dryer.Boards.class)
                        && pieces.stream().anyMatch(piece -> piece.counts().trials() > 0);
            case LAY_POSTS ->
                pieces.stream().anyMatch(piece -> piece.postsStage().isDone());
            case PRESS -> studio.press().isPresent();
            case DRY_UNDER_WEIGHT -> driesOn(Dryer.FanStack.class) || driesOn(Dryer.Blotters.class);
            // How the rest dries is not known: most likely in air that has to be moved or warmed.
            case DRY_IN_AIR ->
                driesOn(Dryer.FanStack.class)
                        || driesOn(Dryer.Loft.class)
                        || pieces.stream()
                                .anyMatch(piece -> !piece.dryingStage().isDone());
            case DRY_ON_BOARDS -> driesOn(Dryer.Boards.class);
            case SIZE -> pieces.stream().anyMatch(piece -> piece.sizingStage().isDone());
            case TRIM -> pieces.stream().anyMatch(piece -> piece.piece().edge() == Piece.Edge.CUT);
            case FOLD ->
                pieces.stream()
                        .anyMatch(piece -> piece.piece().folds() > 0
                                || piece.envelopeStage().isDone());
        };
    }

    private String figure(Caution caution) {
        return switch (caution) {
            case HOUSEHOLDS -> String.join(", ", inEnvelopes()) + ", in envelopes";
            case SOAKING_PAILS -> soaking();
            case ALKALI -> String.join(" and ", raw()) + " has to be cooked";
            case NOISE -> beating();
            case DRY_POWDER -> Kinds.MASS.ofSi(powder(), "g") + " of it";
            case LIFTING_MOULD -> lift();
            case LIFTING ->
                "a post weighs about "
                        + kilograms(pieces.stream()
                                .mapToDouble(piece -> piece.postsStage()
                                        .map(post -> post.mass().likely().si())
                                        .orElse(0.0))
                                .max()
                                .orElseThrow())
                        + ", boards more";
            case PRESS -> press();
            case SIZE_BATH ->
                litres(pieces.stream()
                                .mapToDouble(piece -> piece.sizingStage()
                                        .map(sizing -> sizing.bath().si())
                                        .orElse(0.0))
                                .sum())
                        + " in all";
            case DRAIN -> left();
            case MOULD ->
                "the room is at "
                        + Kinds.RELATIVE_HUMIDITY.ofSi(engine.workshop().roomHumidity(), "%") + " RH";
            case BEATER_ROLL, SAFETY_SHEETS, WARM_PLATE, WET_ELECTRICITY, STACK, FAN_HEATER, BLADE -> "";
        };
    }

    // ------------------------------------------------------------------------------------------------ figures

    /** Returns how many of what goes into an envelope that is made for it. */
    private List<String> inEnvelopes() {
        Set<String> held = pieces.stream()
                .flatMap(piece -> piece.piece().envelopeFor().stream())
                .collect(Collectors.toSet());
        return pieces.stream()
                .filter(piece -> held.contains(piece.name()))
                .map(piece -> piece.counts().ordered() + " of " + piece.name())
                .toList();
    }

    private String soaking() {
        double water = 0;
        double fibre = 0;
        for (BatchPlan batch : batches) {
            water += batch.soak().water().si();
            for (FibreToWeigh.Line line : batch.fibre().kinds()) {
                fibre += line.asBought().si() + line.fromHand().si();
            }
        }
        return litres(water) + " and the fibre weigh "
                + kilograms(water * engine.workshop().waterDensity() + fibre);
    }

    /** Returns the names of the fibres that are cooked. */
    private List<String> raw() {
        return batches.stream()
                .flatMap(batch -> batch.cooking().stream())
                .flatMap(cooking -> cooking.pots().stream())
                .map(pot -> pot.fibre().name())
                .distinct()
                .toList();
    }

    private String beating() {
        double time = 0;
        for (BatchPlan batch : batches) {
            time += batch.beatingStage().map(beating -> beating.rollTime().si()).orElse(0.0);
        }
        return time > 0 ? "the roll runs " + Kinds.TIME.ofSi(time, "h") + " in all" : "";
    }

    private double powder() {
        return batches.stream()
                .flatMap(batch -> batch.additives().stream())
                .filter(additive -> additive.additive().purpose().isParticle())
                .mapToDouble(additive -> additive.productInAll().si())
                .sum();
    }

    /** What is poured has water of its own in the deckle, as much as the maker likes. */
    private String lift() {
        FillingVat.Setting heaviest = IntStream.range(0, engine.pieces())
                .mapToObj(settings::vat)
                .max(Comparator.comparingDouble(FillingVat.Setting::lift))
                .orElseThrow();
        return "a full lift is " + kilograms(heaviest.lift())
                + (heaviest.dipped() ? " and the mould" : " of stock, its water and the mould");
    }

    private String press() {
        Optional<PressingPlan> most = pieces.stream()
                .flatMap(piece -> piece.pressStage().optional().stream())
                .reduce((one, other) -> other.force().si() > one.force().si() ? other : one);
        if (most.isEmpty()) {
            return "";
        }
        PressingPlan hardest = most.get();
        Press.Allowed allowed = hardest.press().allowed(studio.assumptions());
        return "up to " + hardest.force() + " is set, never over " + allowed.force() + ", what the "
                + PlanReading.part(hardest.press(), allowed.weakest()) + " as weakest part allows";
    }

    private String left() {
        double left = batches.stream()
                .mapToDouble(batch -> batch.keptInVat().likely().si())
                .sum();
        return left > 0 ? "about " + Digits.three(left * 1000) + " g of fibre is left in the vat" : "";
    }

    private boolean driesOn(Class<? extends Dryer> kind) {
        return pieces.stream()
                .anyMatch(piece -> piece.dryingStage()
                        .map(drying -> kind.isInstance(drying.dryer()))
                        .orElse(false));
    }

    private String kilograms(double mass) {
        Amount<Mass> amount = Kinds.MASS.ofSi(mass, "kg");
        return Digits.three(mass) + " kg"
                + (studio.alsoCustomaryUnits() ? " (" + Digits.three(amount.in("lb")) + " lb)" : "");
    }

    private String litres(double volume) {
        Amount<Volume> amount = Kinds.VOLUME.ofSi(volume, "L");
        return Digits.three(amount.in("L")) + " L"
                + (studio.alsoCustomaryUnits() ? " (" + Digits.three(amount.in("gal_us")) + " US gal)" : "");
    }
}
