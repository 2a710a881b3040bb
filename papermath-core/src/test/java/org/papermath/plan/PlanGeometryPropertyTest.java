package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;

import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.papermath.drying.Dryer;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.quantity.Refused;
import org.papermath.vat.Vat;

/** Over random orders and studios: every account closes, and nothing is planned that the geometry forbids. */
class PlanGeometryPropertyTest {
    private static final int MOST_DIPS = 4;

    @Test
    void accountsCloseAndThingsFit() {
        int planned = 0;
        int dipped = 0;
        int letDown = 0;
        int runDown = 0;
        int several = 0;
        int sideBySide = 0;
        for (long seed : LongStream.range(5_000, 5_600).toArray()) {
            AnyOrder.Job job = AnyOrder.plausible(seed);
            MakingPlan plan;
            try {
                plan = MakingPlan.withoutBands(job.order(), job.studio());
            } catch (Refused e) {
                continue;
            }
            planned++;
            balances(seed, plan);
            for (PiecePlan piece : plan.pieces()) {
                String of = "seed " + seed + " " + piece.piece().name();
                opening(of, piece);
                posts(of, piece, job.studio().felts());
                sideBySide += layers(of, piece) ? 1 : 0;
                Optional<VatPlan> vat = piece.vatStage().optional();
                if (vat.isPresent()) {
                    vat(of, piece, vat.get(), job.studio().vat().orElseThrow());
                    dipped++;
                    letDown += vat.get().letDown().si() > 0 ? 1 : 0;
                    several += vat.get().dips() > 1 ? 1 : 0;
                    runDown += vat.get().recharges().stream()
                                    .anyMatch(one -> one.strained().si() > 0)
                            ? 1
                            : 0;
                }
            }
        }
        assertThat(planned).isGreaterThan(500);
        assertThat(dipped).isGreaterThan(400);
        assertThat(letDown).isGreaterThan(10);
        assertThat(runDown).isGreaterThan(10);
        assertThat(several).isGreaterThan(10);
        assertThat(sideBySide).isGreaterThan(10);
    }

    /** Whether several lie in a layer of the dryer; as many as it has room for, and fillings for all of them. */
    private static boolean layers(String of, PiecePlan piece) {
        DryingPlan drying = piece.dryingStage().optional().orElse(null);
        if (drying == null) {
            return false;
        }
        FormingPlan forming = piece.forming();
        int laid = piece.counts().sheets();
        double area =
                forming.opening().width().si() * forming.opening().height().si();
        assertThat(drying.loads() * (long) drying.atOnce()).as(of).isGreaterThanOrEqualTo(laid);
        assertThat((drying.loads() - 1) * (long) drying.atOnce())
                .as(of)
                .isLessThan(laid * (long) Math.max(1, forming.perSheet()));
        if (drying.inLayer() == 1) {
            return false;
        }
        Dryer.Layer layer = drying.dryer().layer().orElseThrow();
        if (piece.piece().edge() != Piece.Edge.SHAPED) {
            assertThat(drying.inLayer() * area)
                    .as(of)
                    .isLessThan(layer.width().si() * layer.length().si());
        }
        return true;
    }

    /** The same of jobs whose studio has a split deckle with the openings that a piece with rims needs. */
    @Test
    void accountsCloseOfSplitDeckles() {
        int used = 0;
        for (long seed : LongStream.range(5_000, 5_600).toArray()) {
            AnyOrder.Job job = AnyOrder.plausible(seed);
            Studio.Builder studio = job.studio().toBuilder();
            MakingPlan plan;
            try {
                for (PiecePlan piece :
                        MakingPlan.withoutBands(job.order(), job.studio()).pieces()) {
                    FormingPlan forming = piece.forming();
                    if (piece.piece().edge() == Piece.Edge.DECKLE && forming.deckleToMake()) {
                        int across = 1 + (int) (seed % 3);
                        int along = 2 + (int) (seed % 2);
                        double strip = seed % 17;
                        studio.mould(Mould.of(
                                "split for " + piece.name(),
                                Deckle.of(
                                                mm(across
                                                                * forming.opening()
                                                                        .width()
                                                                        .in("mm")
                                                        + (across - 1) * strip),
                                                mm(along
                                                                * forming.opening()
                                                                        .height()
                                                                        .in("mm")
                                                        + (along - 1) * strip))
                                        .split(across, along, mm(strip))));
                    }
                }
                plan = MakingPlan.withoutBands(job.order(), studio.build());
            } catch (Refused e) {
                continue;
            }
            balances(seed, plan);
            for (PiecePlan piece : plan.pieces()) {
                String of = "seed " + seed + " " + piece.piece().name();
                opening(of, piece);
                posts(of, piece, job.studio().felts());
                if (piece.piece().edge() == Piece.Edge.DECKLE && piece.forming().perSheet() > 1) {
                    used++;
                    Deckle deckle = piece.forming().mould().orElseThrow().deckle();
                    assertThat(piece.forming().perSheet()).as(of).isEqualTo(deckle.count());
                    assertThat(piece.counts().good().likely().si())
                            .as(of)
                            .isGreaterThanOrEqualTo(piece.counts().wanted() * (1 - 1e-9));
                }
            }
        }
        assertThat(used).isGreaterThan(50);
    }

    /** The next best mould, taken instead, takes as long at the vat or longer, but for the twentieth that fibre may cost. */
    @Test
    void theMouldTakenSavesTimeAtTheVat() {
        int compared = 0;
        for (long seed : LongStream.range(5_000, 6_800).toArray()) {
            AnyOrder.Job job = AnyOrder.plausible(seed);
            try {
                Order order = job.order();
                for (Piece piece : order.pieces().subList(1, order.pieces().size())) {
                    order = order.withoutPiece(piece.name());
                }
                PiecePlan piece =
                        MakingPlan.withoutBands(order, job.studio()).pieces().get(0);
                Optional<String> other = piece.forming().otherMould();
                if (other.isEmpty()) {
                    continue;
                }
                Studio.Builder studio = withoutMoulds(job.studio());
                job.studio().moulds().stream()
                        .filter(mould -> other.get().startsWith(mould.name() + ":"))
                        .forEach(studio::mould);
                PiecePlan next =
                        MakingPlan.withoutBands(order, studio.build()).pieces().get(0);
                assertThat(next.timeAtVat().likely().si())
                        .as("seed " + seed + " " + other.get())
                        .isGreaterThan(piece.timeAtVat().likely().si() / 1.1);
                compared++;
            } catch (Refused e) {
                continue;
            }
        }
        assertThat(compared).isGreaterThan(20);
    }

    private static Studio.Builder withoutMoulds(Studio all) {
        Studio.Builder studio = Studio.of(all.name())
                .room(all.room())
                .scaleStep(all.scaleStep())
                .fineScaleStep(all.fineScaleStep())
                .jugStep(all.jugStep())
                .workingDay(all.workingDay())
                .assumptions(all.assumptions());
        all.beater().ifPresent(studio::beater);
        all.vat().ifPresent(studio::vat);
        all.press().ifPresent(studio::press);
        all.felts().ifPresent(studio::felts);
        all.dryers().forEach(studio::dryer);
        all.ventilation().ifPresent(studio::ventilation);
        return studio;
    }

    private static void balances(long seed, MakingPlan plan) {
        for (BatchPlan batch : plan.batches()) {
            for (Balance one : batch.balances()) {
                assertThat(one.totalOut().si())
                        .as("seed " + seed + " " + one.substance())
                        .isCloseTo(
                                one.totalIn().si(),
                                within(1e-9 * Math.max(1e-3, one.totalIn().si())));
            }
        }
    }

    /** As many pieces as lie on the opening, and an opening within the mould. */
    private static void opening(String of, PiecePlan piece) {
        FormingPlan forming = piece.forming();
        double width = forming.opening().width().si();
        double height = forming.opening().height().si();
        double area = piece.finished().width().likely().si()
                * piece.finished().height().likely().si();
        assertThat(forming.perSheet() * area).as(of).isLessThanOrEqualTo(width * height * 1.02);
        forming.mould().ifPresent(mould -> {
            Deckle deckle = mould.deckle();
            double across = Math.min(deckle.width().si(), deckle.height().si());
            double along = Math.max(deckle.width().si(), deckle.height().si());
            assertThat(Math.min(width, height)).as(of).isLessThanOrEqualTo(across * 1.001);
            assertThat(Math.max(width, height)).as(of).isLessThanOrEqualTo(along * 1.001);
        });
    }

    private static void posts(String of, PiecePlan piece, Optional<Felts> felts) {
        piece.postsStage().optional().ifPresent(posts -> {
            Felts owned = felts.orElseThrow();
            double width = piece.forming().opening().width().si();
            double height = piece.forming().opening().height().si();
            double sheets = posts.sheetsInPost() / (double) Math.max(1, posts.felts() - 1);
            assertThat(posts.felts()).as(of).isLessThanOrEqualTo(owned.count());
            assertThat(Math.floor(sheets) * width * height)
                    .as(of)
                    .isLessThanOrEqualTo(owned.width().si() * owned.length().si() * 1.001);
        });
    }

    private static void vat(String of, PiecePlan piece, VatPlan vat, Vat owned) {
        double volume = owned.workingVolume().si();
        double lift = vat.dips() * vat.lift().si() / 998.0;
        assertThat(lift).as(of).isLessThan(volume);
        assertThat(vat.letDown().si()).as(of).isLessThan(volume);
        double strained =
                vat.recharges().stream().mapToDouble(one -> one.strained().si()).sum();
        assertThat(strained)
                .as(of)
                .isLessThanOrEqualTo(
                        volume - owned.runDown().map(one -> one.si()).orElse(volume) + 1e-3 * volume + 1e-4);
        Optional<Double> deep = piece.forming()
                .mould()
                .map(Mould::deckle)
                .flatMap(Deckle::depth)
                .map(depth -> depth.si());
        boolean free = piece.forming().mould().isEmpty();
        assertThat(vat.dips()).as(of).isLessThanOrEqualTo(MOST_DIPS);
        if (deep.isPresent() && !free) {
            // What drains during the dip may double what the deckle holds.
            assertThat(vat.dipDepth().si()).as(of).isLessThanOrEqualTo(2 * deep.get() + 1e-3);
        }
        assertThat(vat.consistency().si()).as(of).isBetween(0.0004, 0.016);
    }
}
