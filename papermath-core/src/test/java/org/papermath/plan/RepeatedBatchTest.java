package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

class RepeatedBatchTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 14);
    private static final Additive BLUE = Additive.of("blue pigment", Additive.Purpose.PIGMENT);
    private static final Additive AID = Additive.of("retention aid", Additive.Purpose.RETENTION_AID);
    private static final Additive CARBONATE = Additive.of("carbonate", Additive.Purpose.CARBONATE);

    private static final Studio STUDIO = Sample.studio();
    private static final Order ORDER = Sample.order();
    private static final MakingPlan PLAN = MakingPlan.of(ORDER, STUDIO);

    private static BatchRecord asPlanned(EmptyRecord empty) {
        BatchRecord.Builder filled = empty.record().toBuilder();
        empty.blanks().forEach(blank -> filled.add(blank.asPlanned()));
        return filled.build();
    }

    private static BatchRecord.Builder begun() {
        return PLAN.emptyRecord("fog blue", "leaflet", DAY).record().toBuilder();
    }

    private static <Q extends javax.measure.Quantity<Q>> Reading<Q> read(org.papermath.quantity.Amount<Q> value) {
        return Reading.of(value, value.kind().ofSi(value.si() / 1000));
    }

    private static void requireTheSameToTheBit(Order one, Order other, Studio studio) {
        Engine first = Engine.of(one, studio);
        Engine second = Engine.of(other, studio);
        Figures a = first.forecast(first.decide(first.likely()), first.likely());
        Figures b = second.forecast(second.decide(second.likely()), second.likely());
        assertThat(b.size()).isEqualTo(a.size());
        for (int at = 0; at < a.size(); at++) {
            assertThat(Double.doubleToLongBits(b.at(at)))
                    .as("figure %s", at)
                    .isEqualTo(Double.doubleToLongBits(a.at(at)));
        }
        assertThat(MakingPlan.of(other, studio).comparedWith(MakingPlan.of(one, studio)))
                .hasToString("Nothing differs.");
    }

    @Test
    void aYearOfMakingsEachRepeatedToTheBit() {
        int repeated = 0;
        for (long seed = 1; repeated < 60; seed++) {
            AnyOrder.Job job = AnyOrder.plausible(seed);
            MakingPlan plan = plan(job).orElse(null);
            if (plan == null) {
                continue;
            }
            Order again = job.order();
            for (BatchPlan batch : plan.batches()) {
                String piece = plan.pieces().stream()
                        .filter(one -> one.batch().equals(batch.name()))
                        .findFirst()
                        .orElseThrow()
                        .name();
                BatchRecord record = asPlanned(plan.emptyRecord(batch.name(), piece, DAY.plusDays(6 * seed)));
                Recipe recipe = record.recipeAsMade();
                assertThat(recipe).isEqualTo(batch.recipe());
                again = again.withRecipe(batch.name(), planned -> recipe.toBuilder());
                assertThat(plan.changesSince(record).changes()).isEmpty();
                assertThat(plan.changesSince(record)).hasToString("Nothing has changed.");
                repeated++;
            }
            requireTheSameToTheBit(job.order(), again, job.studio());
        }
    }

    /** Some orders drawn at random cannot be made. */
    private static Optional<MakingPlan> plan(AnyOrder.Job job) {
        try {
            return Optional.of(MakingPlan.of(job.order(), job.studio()));
        } catch (PapermathException refused) {
            return Optional.empty();
        }
    }

    @Test
    void aDoseIsAsItWasWeighedOnTheFibreUsed() {
        double cotton = PLAN.batch("fog blue").fibre().kinds().get(0).asBought().si();
        double abaca = PLAN.batch("fog blue").fibre().kinds().get(1).asBought().si();
        double blue = PLAN.batch("fog blue").additives().get(0).productInAll().si();
        BatchRecord record = begun().add(
                        new Measurement.FibreWeighed(Fibres.COTTON_RAG, read(Kinds.MASS.ofSi(0.9 * cotton, "g"))),
                        new Measurement.FibreWeighed(Fibres.ABACA, read(Kinds.MASS.ofSi(0.9 * abaca, "g"))),
                        new Measurement.AdditiveWeighed(BLUE, read(Kinds.MASS.ofSi(1.2 * blue, "g")), Optional.empty()))
                .build();
        Recipe made = record.recipeAsMade();
        assertThat(made.furnish()).isEqualTo(ORDER.recipes().get(0).furnish());
        // 2 % × 1.2 / 0.9
        assertThat(made.additives().get(0).dose().si()).isCloseTo(0.02 * 1.2 / 0.9, Offset.offset(1e-12));
        assertThat(made.additives().stream().map(one -> one.additive().name()))
                .containsExactly("blue pigment", "retention aid", "carbonate");
        assertThat(made.beating()).isEqualTo(ORDER.recipes().get(0).beating());
    }

    @Test
    void theFurnishIsAsItWasWeighedToo() {
        double cotton = PLAN.batch("fog blue").fibre().kinds().get(0).asBought().si();
        double abaca = PLAN.batch("fog blue").fibre().kinds().get(1).asBought().si();
        BatchRecord record = begun().add(
                        new Measurement.FibreWeighed(Fibres.COTTON_RAG, read(Kinds.MASS.ofSi(cotton, "g"))),
                        new Measurement.FibreWeighed(Fibres.ABACA, read(Kinds.MASS.ofSi(0.75 * abaca, "g"))))
                .build();
        // 60 parts and 30 instead of 40.
        assertThat(record.recipeAsMade().furnish().share(Fibres.COTTON_RAG).si())
                .isCloseTo(60.0 / 90, Offset.offset(1e-12));
    }

    @Test
    void hoursAndOrderAreAsTheyWere() {
        BatchRecord record = begun().add(
                        new Measurement.Beaten(Optional.empty(), read(hours(3.25))),
                        new Measurement.AdditiveWeighed(AID, read(grams(1)), Optional.of(read(grams(1000)))),
                        new Measurement.AdditiveWeighed(CARBONATE, read(grams(15)), Optional.of(read(grams(500)))),
                        new Measurement.AdditiveWeighed(CARBONATE, read(grams(25)), Optional.of(read(grams(500)))),
                        new Measurement.AdditiveWeighed(BLUE, read(grams(20)), Optional.of(read(grams(1000)))))
                .build();
        Recipe made = record.recipeAsMade();
        assertThat(made.beating()).isEqualTo(hours(3.25));
        assertThat(made.additives().stream().map(one -> one.additive().name() + " " + one.dose()))
                .containsExactly("retention aid 0.1 %", "carbonate 4 %", "blue pigment 2 %");
        assertThat(record.measurements(Measurement.AdditiveWeighed.class)
                        .get(1)
                        .dose()
                        .orElseThrow()
                        .dose()
                        .si())
                .isCloseTo(0.03, Offset.offset(1e-15));
    }

    @Test
    void theSamePaperInAnotherCountAndSize() {
        BatchRecord record = asPlanned(PLAN.emptyRecord("fog blue", "leaflet", DAY));
        Order again = Order.of("in autumn")
                .recipe(record.recipeAsMade())
                .piece(Piece.of("menu", 25, "fog blue")
                        .size(mm(99), mm(210))
                        .grammage(Grammage.gsm(120))
                        .build())
                .build();
        MakingPlan plan = MakingPlan.of(again, STUDIO);
        assertThat(plan.batch("fog blue").additives().get(0).dose())
                .isEqualTo(PLAN.batch("fog blue").additives().get(0).dose());
        assertThat(plan.changesSince(record).changes()).isEmpty();
    }

    @Test
    void whatCannotBeRepeatedIsRefused() {
        assertThatThrownBy(() -> BatchRecord.builder("nameless", DAY).build().recipeAsMade())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("names no recipe");
        BatchRecord record = BatchRecord.builder("first", DAY)
                .recipe("fog", Furnish.of(Fibres.ABACA))
                .add(new Measurement.AdditiveWeighed(BLUE, read(grams(20)), Optional.empty()))
                .build();
        assertThatThrownBy(record::recipeAsMade)
                .isInstanceOf(Refused.class)
                .hasMessageContaining("20 g of blue pigment were weighed, but not on how much fibre");
        assertThatThrownBy(() -> PLAN.changesSince(record))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("does not hold what was taken for known");
        assertThatThrownBy(() -> new Measurement.Formed(0, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> BatchRecord.builder("a", DAY).lot(BLUE, " ")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Measurement.VatStood(read(Kinds.CONSISTENCY.of(0, "%"))))
                .isInstanceOf(Refused.class);
    }

    @Test
    void whatHasChangedSinceIsToldWithWhatItDoes() {
        BatchRecord then =
                begun().lot(Fibres.ABACA, "bale 3").lot(BLUE, "jar 1").build();
        Assumption moisture = STUDIO.assumptions().get("fibre.moisture-as-bought", Fibres.ABACA.scope());
        double water = moisture.likely() + 0.05;
        Studio now = STUDIO.withAssumptions(STUDIO.assumptions()
                .measured("fibre.moisture-as-bought", Fibres.ABACA.scope(), water, water - 0.01, water + 0.01)
                .given("labour.post-sheets", Scope.GENERAL, 12));
        MakingPlan plan = MakingPlan.of(ORDER, now);
        BatchRecord today =
                begun().lot(Fibres.ABACA, "bale 9").lot(BLUE, "jar 1").build();
        ChangesSince found = plan.changesSince(then, today);
        assertThat(found.changes().get(0).what()).isEqualTo("lot of abaca");
        assertThat(found.changes().get(0).before()).contains("bale 3");
        assertThat(found.changes().get(0).after()).contains("bale 9");
        ChangesSince.Change wetter =
                found.change("fibre.moisture-as-bought" + moisture.scope()).orElseThrow();
        // Of 40 % abaca there is (1 - w - 0.05)/(1 - w) as much, in the same water.
        double expected = 0.6 + 0.4 * (1 - water) / (1 - moisture.likely()) - 1;
        ChangesSince.Effect grammage = wetter.effects().stream()
                .filter(one -> one.piece().equals("leaflet") && one.figure().equals("grammage"))
                .findFirst()
                .orElseThrow();
        assertThat(grammage.change()).isCloseTo(expected, Offset.offset(0.15 * Math.abs(expected)));
        assertThat(found.together().stream()
                        .filter(one ->
                                one.piece().equals("leaflet") && one.figure().equals("grammage"))
                        .findFirst()
                        .orElseThrow()
                        .change())
                .isCloseTo(grammage.change(), Offset.offset(1e-9));
        assertThat(found.change("lot of blue pigment")).isEmpty();
        assertThat(found.toString()).contains("grammage").contains("lot of abaca bale 3 → bale 9");
    }

    @Test
    void anotherEditionAndAnotherLotThatWasNotMeasured() {
        BatchRecord then = begun().lot(Fibres.ABACA, "bale 3").build();
        BatchRecord today = begun().lot(Fibres.ABACA, "bale 9")
                .lot(Fibres.COTTON_RAG, "bale 1")
                .build();
        assertThat(PLAN.changesSince(then, today).changes().stream().map(Object::toString))
                .containsExactly(
                        "lot of abaca bale 3 → bale 9: measure it once before the batch",
                        "lot of cotton-rag not said → bale 1: measure it once before the batch");
    }

    @Test
    void theEmptyRecordIsForTheWall() {
        EmptyRecord empty = PLAN.emptyRecord("fog blue", "leaflet", DAY);
        assertThat(empty.record().measurements()).isEmpty();
        assertThat(empty.record().planned()).containsKeys(BatchRecord.SHEET_SOLIDS, BatchRecord.weighing(BLUE));
        assertThat(empty.record().beater()).contains("hollander");
        String text = empty.text();
        assertThat(text.lines())
                .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        assertThat(text).endsWith("\n").contains("Weigh cotton-rag as bought", "____", "planned");
        assertThat(text.indexOf("Weigh cotton-rag")).isLessThan(text.indexOf("Beat,"));
        assertThat(text.indexOf("Beat,")).isLessThan(text.indexOf("Weigh blue pigment"));
        assertThat(text.indexOf("Strain a litre")).isLessThan(text.indexOf("off the mould"));
        assertThat(text.indexOf("off the mould")).isLessThan(text.indexOf("Measure finished piece"));
        for (long seed = 1; seed <= 30; seed++) {
            plan(AnyOrder.plausible(seed)).ifPresent(plan -> {
                PiecePlan piece = plan.pieces().get(0);
                assertThat(plan.emptyRecord(piece.batch(), piece.name(), DAY)
                                .text()
                                .lines())
                        .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
            });
        }
    }
}
