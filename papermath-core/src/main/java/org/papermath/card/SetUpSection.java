package org.papermath.card;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.papermath.drying.Dryer;
import org.papermath.order.Piece;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.SharedStuff;
import org.papermath.plan.VatPlan;
import org.papermath.quantity.Kinds;
import org.papermath.vat.Vat;

/** What stands ready before the work begins, and how much water there will be at once. */
final class SetUpSection extends CardSection {
    SetUpSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(
                0,
                Label.SET_UP.words(),
                start("soak").map(day -> "before " + Figures.day(day)).orElse("before the first day"));
        felts();
        if (anyVat(SetUpSection::isBailed)
                && plan.studio().vat().map(Vat::isStrained).orElse(false)) {
            form.line(Mark.SET, "a strainer of fine cloth, and a pail under it, at the vat");
        }
        List<PiecePlan> made = pieces.all().stream()
                .filter(piece -> piece.forming().deckleToMake()
                        || piece.forming().mould().isEmpty()
                        || piece.piece().edge() == Piece.Edge.SHAPED)
                .toList();
        if (!made.isEmpty()) {
            form.line(
                    Mark.SET,
                    "the deckle for "
                            + String.join(
                                    ", ", made.stream().map(pieces::letter).toList())
                            + ", cut to its opening and tried on the mould");
        }
        water();
        longestDay();
        return false;
    }

    private static boolean isBailed(VatPlan vat) {
        return vat.bail().si() > 0
                || vat.recharges().stream()
                        .anyMatch(one -> one.bail().si() > 0 || one.strained().si() > 0);
    }

    private void felts() {
        int felts = pieces.all().stream()
                .mapToInt(
                        piece -> piece.postsStage().map(posts -> posts.felts()).orElse(0))
                .max()
                .orElse(0);
        if (felts > 0) {
            form.line(Mark.SET, Written.set(felts + " felts") + " damp, not dripping; two boards for the post");
        }
        int layers = 0;
        for (PiecePlan piece : pieces.all()) {
            layers = Math.max(
                    layers,
                    piece.dryingStage()
                            .optional()
                            .filter(drying -> drying.dryer() instanceof Dryer.FanStack)
                            .map(drying -> LayersPicture.layers(piece, drying))
                            .orElse(0));
        }
        if (layers > 0) {
            form.line(
                    Mark.SET,
                    Written.set(Figures.count(layers + 1, "board")) + " and "
                            + Written.set(2 * layers + " dry blotters") + " for the stack, and its straps");
        }
    }

    /** Water by its use, and the most that stands at a time: the stock of a batch in its pails beside the full vat. */
    private void water() {
        double soak = 0;
        double cook = 0;
        double beat = 0;
        double thin = 0;
        double stock = 0;
        for (BatchPlan batch : plan.batches()) {
            Optional<SharedStuff> shared = batch.sharedStuff();
            boolean beatenHere = shared.map(SharedStuff::isBeatenHere).orElse(true);
            if (beatenHere) {
                soak += shared.map(SharedStuff::soak)
                        .orElse(batch.soak())
                        .water()
                        .in("L");
                cook += batch.cooking().stream()
                        .flatMap(one -> one.pots().stream())
                        .mapToDouble(pot -> pot.liquor().in("L"))
                        .sum();
                beat += batch.beatingStage().optional().stream()
                        .flatMap(one -> one.runs().stream())
                        .mapToDouble(run -> run.loads() * run.waterEach().in("L"))
                        .sum();
            }
            stock = Math.max(stock, batch.stock().volume().in("L"));
        }
        for (PiecePlan piece : pieces.all()) {
            thin += piece.vatStage().map(vat -> vat.water().in("L")).orElse(0.0);
        }
        List<String> uses = Stream.of(
                        use(soak, "to soak"),
                        use(cook, "to cook"),
                        use(beat, "for the beater"),
                        use(thin, "for the vat"))
                .filter(one -> !one.isEmpty())
                .toList();
        if (!uses.isEmpty()) {
            form.line(Mark.SET, "water: " + String.join(", ", uses) + "; more for rinsing, the felts and washing up");
        }
        double most = stock
                + plan.studio().vat().map(vat -> vat.workingVolume().in("L")).orElse(0.0);
        if (most > 0) {
            form.line(
                    Mark.SET,
                    "pails with lids for " + whole(stock) + " of stock, kept cool"
                            + (anyVat(vat -> vat.letDown().si() > 0) ? ", and for what is let out of the vat" : ""));
            form.line(
                    Mark.CHECK,
                    "at most about " + whole(most)
                            + " stand in the room at once: would a tray, a sill or a floor drain catch it? If not,"
                            + " make one load at a time");
        }
    }

    private String use(double litres, String what) {
        return litres > 0 ? whole(litres) + " " + what : "";
    }

    private String whole(double litres) {
        return figures.set(Kinds.VOLUME.of(Math.ceil(litres), "L"), "gal_us");
    }

    /** Whether the day that has most of it has time for its work. */
    private void longestDay() {
        double hours = plan.studio().workingDay().in("h") * plan.studio().people();
        // Of days alike the first.
        calendar().stream()
                .map(day -> Map.entry(day, plan.schedule().handsOn(day)))
                .reduce((one, other) -> other.getValue().si() > one.getValue().si() ? other : one)
                .ifPresent(longest -> form.line(
                        Mark.EXPECT,
                        "the longest day by hand is "
                                + Figures.day(longest.getKey().date()) + ": "
                                + Figures.work(longest.getValue()) + " of "
                                + Figures.clock(Kinds.TIME.of(hours, "h"))));
    }
}
