package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.plan.Caution.ALKALI;
import static org.papermath.plan.Caution.BEATER_ROLL;
import static org.papermath.plan.Caution.BLADE;
import static org.papermath.plan.Caution.DRAIN;
import static org.papermath.plan.Caution.DRY_POWDER;
import static org.papermath.plan.Caution.FAN_HEATER;
import static org.papermath.plan.Caution.HOUSEHOLDS;
import static org.papermath.plan.Caution.LIFTING;
import static org.papermath.plan.Caution.LIFTING_MOULD;
import static org.papermath.plan.Caution.MOULD;
import static org.papermath.plan.Caution.NOISE;
import static org.papermath.plan.Caution.PRESS;
import static org.papermath.plan.Caution.SAFETY_SHEETS;
import static org.papermath.plan.Caution.SIZE_BATH;
import static org.papermath.plan.Caution.SOAKING_PAILS;
import static org.papermath.plan.Caution.STACK;
import static org.papermath.plan.Caution.WARM_PLATE;
import static org.papermath.plan.Caution.WET_ELECTRICITY;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.VolumeFlow;
import org.papermath.text.Digits;

/** Each step that can hurt has its caution beside it, once, and no caution stands without its step. */
class PlanCautionsTest {
    private static final int WIDTH = 80;

    /**
     * What belongs beside a step.
     *
     * @param section the head on the card under which the cautions stand
     * @param cautions the cautions
     * @param with a plan that has the step
     * @param without a plan that has it not; null if no plan is without it
     */
    private record Row(
            String section,
            Set<Caution> cautions,
            MakingPlan with,
            @Nullable MakingPlan without) {}

    private static final MakingPlan BARE =
            MakingPlan.of(order(Fibres.COTTON_RAG), Sample.bare().build());
    private static final MakingPlan FULL = MakingPlan.of(Sample.order(), Sample.studio());
    private static final MakingPlan FLAX =
            MakingPlan.of(order(Fibres.FLAX_RAW), Sample.bare().build());
    private static final MakingPlan SIZED = MakingPlan.of(
            order(recipe(Fibres.COTTON_RAG).sizeBath(FibreConcentration.gramsPerLitre(26)), piece()),
            Sample.bare()
                    .dryer(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 40))
                    .build());
    private static final MakingPlan EDGE = MakingPlan.of(
            order(
                    recipe(Fibres.COTTON_RAG),
                    Piece.of("sheet", 20, "plain")
                            .size(mm(200), mm(280))
                            .grammage(Grammage.gsm(120))
                            .edge(Piece.Edge.DECKLE)),
            Sample.bare().dryer(Dryer.boards("boards", 30)).build());

    /** A new step has to be given its row here: whether it can hurt, and by what. */
    private static Row row(WorkStep step) {
        return switch (step) {
            case WEIGH, SORT, CONDITION, PACK -> new Row("", Set.of(), BARE, null);
            case FOLD -> new Row("", Set.of(), FULL, BARE);
            case COUNT -> new Row("PIECES AND MOULD", Set.of(HOUSEHOLDS), FULL, BARE);
            case SOAK -> new Row("WEIGH, SOAK, COOK", Set.of(SOAKING_PAILS), BARE, null);
            case COOK -> new Row("WEIGH, SOAK, COOK", Set.of(ALKALI), FLAX, BARE);
            case BEAT -> new Row("BEAT AND DOSE", Set.of(BEATER_ROLL, NOISE), FULL, BARE);
            case DOSE -> new Row("BEAT AND DOSE", Set.of(SAFETY_SHEETS), FULL, BARE);
            case WET_POWDER -> new Row("BEAT AND DOSE", Set.of(DRY_POWDER), FULL, BARE);
            case DRY_TRIALS -> new Row("POUR", Set.of(WARM_PLATE), SIZED, EDGE);
            case FORM -> new Row("POUR", Set.of(WET_ELECTRICITY, LIFTING_MOULD), BARE, null);
            case LAY_POSTS -> new Row("POST AND PRESS", Set.of(LIFTING), FULL, BARE);
            case PRESS -> new Row("POST AND PRESS", Set.of(PRESS), FULL, BARE);
            case DRY_UNDER_WEIGHT -> new Row("DRY", Set.of(STACK), SIZED, BARE);
            case DRY_IN_AIR -> new Row("DRY", Set.of(FAN_HEATER), SIZED, EDGE);
            case DRY_ON_BOARDS -> new Row("DRY", Set.of(WARM_PLATE), EDGE, BARE);
            case SIZE -> new Row("SIZE, CUT, FOLD", Set.of(SIZE_BATH), SIZED, BARE);
            case TRIM -> new Row("SIZE, CUT, FOLD", Set.of(BLADE), BARE, EDGE);
            case CLEAR_UP -> new Row("WHERE THE FIBRE GOES", Set.of(DRAIN, MOULD), BARE, null);
        };
    }

    private static Recipe.Builder recipe(Fibre fibre) {
        return Recipe.of("plain", Furnish.of(fibre)).beating(hours(3));
    }

    private static Piece.Builder piece() {
        return Piece.of("card", 40, "plain").size(mm(120), mm(170)).grammage(Grammage.gsm(150));
    }

    private static Order order(Fibre fibre) {
        return order(recipe(fibre), piece());
    }

    private static Order order(Recipe.Builder recipe, Piece.Builder piece) {
        return Order.of("cautious").recipe(recipe.build()).piece(piece.build()).build();
    }

    private static List<MakingPlan> plans() {
        return List.of(BARE, FULL, FLAX, SIZED, EDGE);
    }

    private static StepCaution of(MakingPlan plan, Caution code) {
        return plan.cautions().stream()
                .filter(one -> one.code() == code)
                .findFirst()
                .orElseThrow();
    }

    /** Where each caution stands on the card: the section it is found under, joined lines as one text. */
    private static List<String> sections(MakingPlan plan, String text) {
        List<String> found = new ArrayList<>();
        String section = "";
        StringBuilder body = new StringBuilder();
        List<String> lines = new ArrayList<>(MakingCard.of(plan).lines());
        lines.add("99 END -");
        for (String line : lines) {
            if (line.matches("(\\d+  )?[A-Z][A-Z ,]+ -+( .*)?")) {
                String whole = body.toString();
                for (int at = whole.indexOf("!  " + text); at >= 0; at = whole.indexOf("!  " + text, at + 1)) {
                    found.add(section);
                }
                section = line.replaceAll("^\\d+  | -+( .*)?$", "");
                body.setLength(0);
            } else {
                body.append(line.strip()).append(' ');
            }
        }
        return found;
    }

    @ParameterizedTest
    @EnumSource(WorkStep.class)
    void eachStepHasItsCautionsBesideIt(WorkStep step) {
        Row row = row(step);
        assertThat(step.cautions()).containsExactlyInAnyOrderElementsOf(row.cautions());
        assertThat(row.with().cautions())
                .filteredOn(one -> one.step() == step)
                .extracting(StepCaution::code)
                .containsExactlyElementsOf(step.cautions());
        for (Caution caution : step.cautions()) {
            StepCaution one = of(row.with(), caution);
            assertThat(sections(row.with(), one.text())).as(one.text()).containsExactly(row.section());
            assertThat(one.basis()).isEqualTo(caution.basis());
        }
        if (row.without() != null) {
            assertThat(row.without().cautions()).extracting(StepCaution::step).doesNotContain(step);
        }
    }

    @Test
    void noCautionIsSaidTwiceAndNoneIsWithoutAStep() {
        Set<Caution> owned = EnumSet.noneOf(Caution.class);
        for (WorkStep step : WorkStep.values()) {
            owned.addAll(step.cautions());
        }
        assertThat(owned).containsExactly(Caution.values());
        Set<Caution> said = EnumSet.noneOf(Caution.class);
        for (MakingPlan plan : plans()) {
            assertThat(plan.cautions()).extracting(StepCaution::code).doesNotHaveDuplicates();
            assertThat(plan.cautions()).extracting(StepCaution::step).isSorted();
            plan.cautions().forEach(one -> {
                assertThat(one.step().cautions()).contains(one.code());
                assertThat(sections(plan, one.text())).as(one.text()).hasSize(1);
                said.add(one.code());
            });
        }
        assertThat(said).containsExactly(Caution.values());
    }

    @Test
    void stepsThatAreNotInThePlanHaveNoCaution() {
        assertThat(BARE.cautions())
                .extracting(StepCaution::code)
                .containsExactly(
                        SOAKING_PAILS, WARM_PLATE, WET_ELECTRICITY, LIFTING_MOULD, FAN_HEATER, BLADE, DRAIN, MOULD);
        MakingPlan aid = MakingPlan.of(
                order(
                        recipe(Fibres.COTTON_RAG)
                                .additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1)),
                        piece()),
                Sample.studio());
        assertThat(aid.cautions())
                .extracting(StepCaution::code)
                .contains(SAFETY_SHEETS)
                .doesNotContain(DRY_POWDER);
        assertThat(EDGE.cautions())
                .extracting(StepCaution::step)
                .contains(WorkStep.DRY_ON_BOARDS)
                .doesNotContain(WorkStep.DRY_TRIALS);
    }

    /** Guests counted for households: a common mistake of an order of invitations. */
    @Test
    void whatGoesOutInEnvelopesIsCountedByHouseholds() {
        assertThat(of(FULL, HOUSEHOLDS).text())
                .isEqualTo("Count: 60 of leaflet, in envelopes; were households counted, or guests? One goes to"
                        + " each.");
    }

    @Test
    void rawFibreIsCookedAndCookedFibreIsNot() {
        Set<String> raw = new TreeSet<>();
        for (Fibre fibre : Fibres.all()) {
            if (MakingPlan.withoutBands(order(fibre), Sample.bare().build()).cautions().stream()
                    .anyMatch(one -> one.code() == ALKALI)) {
                raw.add(fibre.id());
            }
        }
        assertThat(raw).containsExactly("esparto", "flax-raw", "gampi", "hemp-raw", "kozo", "mitsumata");
        assertThat(of(FLAX, ALKALI).text()).startsWith("Alkali: raw flax has to be cooked; into cold water");
    }

    @Test
    void cautionsCarryTheFiguresOfThePlan() {
        BatchPlan batch = FULL.batches().get(0);
        assertThat(of(FULL, SOAKING_PAILS).text())
                .contains(Digits.three(batch.soak().water().in("L")) + " L and the fibre weigh ")
                .contains(Digits.three(batch.soak().water().in("L") * 0.99821
                                + batch.fibre().asBought().in("kg")) + " kg");
        double force = FULL.pieces().stream()
                .mapToDouble(one -> one.press().force().in("kN"))
                .max()
                .orElseThrow();
        assertThat(force).isPositive();
        assertThat(of(FULL, PRESS).text())
                .startsWith("Press: up to "
                        + FULL.pieces().stream()
                                .map(one -> one.press().force())
                                .filter(one -> one.in("kN") == force)
                                .findFirst()
                                .orElseThrow())
                .contains(", what the jack as weakest part allows");
        double post = FULL.pieces().stream()
                .mapToDouble(one -> one.posts().mass().likely().in("kg"))
                .max()
                .orElseThrow();
        assertThat(of(FULL, LIFTING).text())
                .contains("about " + Digits.three(post) + " kg")
                .contains("23 kg");
        double lift = FULL.pieces().stream()
                .mapToDouble(one -> one.vat().lift().in("kg"))
                .max()
                .orElseThrow();
        assertThat(of(FULL, LIFTING_MOULD).text()).contains("a full lift is " + Digits.three(lift) + " kg");
        assertThat(of(BARE, LIFTING_MOULD).text()).contains(" kg of stock, its water and the mould;");
        assertThat(of(SIZED, SIZE_BATH).text())
                .contains(Digits.three(SIZED.piece("card").sizing().bath().in("L")) + " L in all");
        assertThat(of(FULL, NOISE).text())
                .contains("the roll runs " + Digits.three(batch.beating().loads() * 2.5) + " h in all");
        assertThat(of(FULL, MOULD).text()).contains("at 52 % RH");
    }

    @Test
    void poundsAndGallonsStandBesideWhereTheStudioWantsThem() {
        MakingPlan plan = MakingPlan.of(
                order(Fibres.COTTON_RAG), Sample.bare().alsoCustomaryUnits().build());
        assertThat(of(plan, SOAKING_PAILS).text()).containsPattern("L \\([0-9.]+ US gal\\) .* kg \\([0-9.]+ lb\\);");
        assertThat(of(BARE, SOAKING_PAILS).text()).doesNotContain("US gal");
    }

    @Test
    void cautionsOfACardAreShortAndLocalCodesComeFirst() {
        for (MakingPlan plan : plans()) {
            List<String> lines = MakingCard.of(plan).lines();
            assertThat(lines).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(WIDTH));
            assertThat(plan.cautions())
                    .allSatisfy(one -> assertThat(one.text().length()).isLessThanOrEqualTo(3 * WIDTH - 12));
            assertThat(lines)
                    .filteredOn(line -> line.equals("Local codes and licensed practice come before this card."))
                    .hasSize(1);
            assertThat(lines.subList(lines.size() - 3, lines.size()))
                    .contains("Local codes and licensed practice come before this card.");
        }
    }

    @Test
    void everyCautionNamesWhatHurtsAndWhatItRestsOn() {
        assertThat(Caution.values()).allSatisfy(one -> {
            assertThat(one.text()).matches("[A-Z][^:]+: .+\\.");
            assertThat(one.basis()).isNotBlank();
        });
        assertThat(Map.of(PRESS, "Press: ", DRAIN, "Drain: "))
                .allSatisfy((one, start) -> assertThat(one.text("9 kN"))
                        .isEqualTo(start + "9 kN; " + one.text().substring(start.length())));
    }
}
