package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Scope;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;

class PlanComparisonTest {
    private static final Order ORDER = Sample.order();
    private static final Studio STUDIO = Sample.studio();
    private static final MakingPlan BEFORE = MakingPlan.of(ORDER, STUDIO);

    private static List<String> told(List<PlanComparison.Change> changes) {
        return changes.stream().map(Object::toString).toList();
    }

    @Test
    void theSamePlanDiffersInNothing() {
        PlanComparison same = MakingPlan.of(Sample.order(), Sample.studio()).comparedWith(BEFORE);
        assertThat(same.isSame()).isTrue();
        assertThat(same).hasToString("Nothing differs.");
    }

    @Test
    void morePiecesAreMoreOfEverythingAndNoOtherPaper() {
        MakingPlan after = MakingPlan.of(ORDER.with("leaflet", piece -> piece.count(95)), STUDIO);
        PlanComparison differs = after.comparedWith(BEFORE);
        assertThat(told(differs.asked())).containsExactly("leaflet: ordered 95, 35 more");
        int more = after.piece("leaflet").counts().sheets()
                - BEFORE.piece("leaflet").counts().sheets();
        assertThat(more).isPositive();
        assertThat(told(differs.toDo()))
                .contains("leaflet: sheets to pull "
                        + after.piece("leaflet").counts().sheets() + ", " + more + " more")
                .anyMatch(line -> line.startsWith("fog blue: fibre, oven-dry ") && line.endsWith(" more"))
                .anyMatch(line -> line.startsWith("fog blue: weigh of blue pigment ") && line.endsWith(" more"));
        assertThat(differs.comesOut().stream().map(PlanComparison.Change::what))
                .contains("good pieces", "hands on")
                .doesNotContain("width");
        // Twelve lines are read; hundreds are not.
        assertThat(differs.toString().lines().count()).isLessThanOrEqualTo(14);
        assertThat(differs.toString()).startsWith("Asked otherwise\n  leaflet: ordered 95, 35 more\nDo otherwise\n");
    }

    @Test
    void whatMovesInsideItsBandIsSaidTo() {
        MakingPlan after = MakingPlan.of(ORDER.withRecipe("fog blue", recipe -> recipe.beating(hours(2.9))), STUDIO);
        PlanComparison differs = after.comparedWith(BEFORE);
        assertThat(differs.comesOut().stream().filter(change -> change.what().equals("drainability")))
                .singleElement()
                .satisfies(change -> {
                    assertThat(change.insideBand()).isTrue();
                    assertThat(change.of()).isEqualTo("fog blue");
                    assertThat(change.toString()).contains(" higher").endsWith("(inside the band of before)");
                });
        assertThat(told(differs.toDo()))
                .anyMatch(line -> line.startsWith("fog blue: roll down ") && line.contains("longer"));
    }

    @Test
    void aHeavierSheetIsOutsideIt() {
        MakingPlan after = MakingPlan.of(ORDER.with("leaflet", piece -> piece.grammage(Grammage.gsm(160))), STUDIO);
        assertThat(after.comparedWith(BEFORE).comesOut().stream()
                        .filter(change -> change.toString().startsWith("leaflet: grammage")))
                .singleElement()
                .satisfies(change -> {
                    assertThat(change.of()).isEqualTo("leaflet");
                    assertThat(change.insideBand()).isFalse();
                    assertThat(change.difference().orElseThrow()).contains(" heavier, its band ");
                });
        assertThat(told(BEFORE.comparedWith(after).asked()))
                .containsExactly("leaflet: weight asked for 120 g/m², 40 g/m² lighter");
    }

    @Test
    void fewerFeltsAreMorePosts() {
        Studio few = STUDIO.with(studio -> studio.felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 9)));
        PlanComparison differs = MakingPlan.of(ORDER, few).comparedWith(BEFORE);
        assertThat(differs.asked()).isEmpty();
        assertThat(told(differs.toDo()))
                .anyMatch(line -> line.contains(": posts ") && line.endsWith(" more"))
                .anyMatch(line -> line.contains("felts in a post ") && line.endsWith(" fewer"));
    }

    @Test
    void anotherDayIsToldInDays() {
        MakingPlan later = MakingPlan.of(ORDER.withDue(LocalDate.of(2027, 3, 19)), STUDIO);
        PlanComparison differs = later.comparedWith(BEFORE);
        assertThat(told(differs.asked())).containsExactly("due 2027-03-19, 14 days later");
        assertThat(told(differs.toDo()))
                .containsExactly("begin on " + later.schedule().start().orElseThrow() + ", 14 days later");
    }

    @Test
    void aNarrowerBandIsTold() {
        Studio known = STUDIO.withAssumptions(STUDIO.assumptions().given("press.factor", Scope.GENERAL, 1.4));
        PlanComparison differs = MakingPlan.of(ORDER, known).comparedWith(BEFORE);
        assertThat(told(differs.asked()))
                .singleElement()
                .asString()
                .startsWith("values taken otherwise: press.factor, of ");
        assertThat(differs.toDo()).isEmpty();
        assertThat(differs.comesOut().stream().filter(change -> change.what().equals("solids after pressing")))
                .isNotEmpty()
                .allMatch(change -> change.difference().orElseThrow().contains("times as wide"));
    }

    @Test
    void whatIsNewOrGoneIsSaidTo() {
        MakingPlan less = MakingPlan.of(ORDER.withoutPiece("place card"), STUDIO);
        Function<PlanComparison, List<String>> lines = one -> Stream.of(one.asked(), one.toDo())
                .flatMap(List::stream)
                .map(Object::toString)
                .toList();
        assertThat(lines.apply(less.comparedWith(BEFORE))).contains("place card: ordered none, was 40");
        assertThat(lines.apply(BEFORE.comparedWith(less))).contains("place card: ordered 40, new");
    }

    @Test
    void aStudioWithoutAPressHasNoLoadAnyMore() {
        MakingPlan without = MakingPlan.of(
                ORDER, Sample.bare().vat(STUDIO.vat().orElseThrow()).build());
        assertThat(told(without.comparedWith(BEFORE).toDo()))
                .anyMatch(line -> line.matches(".*press load none, was .* kN"));
    }

    @Test
    void namesThatAreNotThereAreRefused() {
        assertThatThrownBy(() -> ORDER.with("leaflets", piece -> piece.count(1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no piece \"leaflets\"; it has: [leaflet, place card, cover]");
        assertThatThrownBy(() -> ORDER.withRecipe("blue", recipe -> recipe))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no recipe \"blue\"");
        assertThat(STUDIO.with(studio -> studio.scaleStep(grams(2))).scaleStep())
                .isEqualTo(grams(2));
    }
}
