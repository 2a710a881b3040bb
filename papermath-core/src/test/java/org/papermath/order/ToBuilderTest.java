package org.papermath.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.cubicMetres;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.millilitres;
import static org.papermath.quantity.Amounts.mm;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** A builder of something that is there begins with all of it; what it is given then replaces that. */
class ToBuilderTest {
    private static final Recipe RECIPE = Recipe.of("rush", Furnish.of(Fibres.ABACA))
            .beating(hours(4))
            .drainability(SchopperRiegler.degrees(50))
            .beaterConsistency(Consistency.percent(2))
            .stockConsistency(Consistency.percent(1.5))
            .vatConsistency(Consistency.percent(0.4))
            .sizeBath(FibreConcentration.gramsPerLitre(30))
            .additive(Additive.of("ochre", Additive.Purpose.PIGMENT), Dose.percent(2))
            .build();
    private static final Piece CARD = Piece.of("card", 30, "rush")
            .size(Formats.ISO_A6)
            .grammage(Grammage.gsm(200))
            .spare(Share.percent(7))
            .kept(2)
            .trials(3)
            .folds(1)
            .trim(mm(4))
            .gap(mm(2))
            .dryer("boards")
            .mailedIn(MailLimits.countries().get(0))
            .build();
    private static final Piece SQUARE = Piece.of("square", 30, "rush")
            .size(mm(200), mm(200))
            .caliper(micrometres(200))
            .envelopeFor("card", EnvelopeStyle.DIAMOND)
            .inserts(2)
            .clearance(mm(6))
            .build();
    private static final Piece RIM = Piece.of("rim", 9, "rush")
            .size(mm(100), mm(120))
            .edge(Piece.Edge.DECKLE)
            .sample(Piece.Sample.of(mm(50), mm(50), grams(0.4), micrometres(220)))
            .build();
    private static final Studio STUDIO = Studio.of("loft room")
            .beater(Beater.of("beater", litres(30), grams(600)))
            .vat(Vat.of("vat", litres(60)))
            .mould(Mould.of("a", mm(300), mm(400)))
            .press(Press.of("press", kilonewtons(50), mm(400), mm(500)))
            .felts(Felts.of(mm(400), mm(500), Grammage.gsm(400), 12))
            .dryer(Dryer.boards("boards", 20))
            .room(Air.of(celsius(19), RelativeHumidity.percent(51)))
            .ventilation(Ventilation.of(cubicMetres(60), Rate.perHour(2)))
            .onHand(Fibres.ABACA, grams(300))
            .scaleStep(grams(2))
            .fineScaleStep(grams(0.2))
            .jugStep(millilitres(20))
            .workingDay(hours(7))
            .alsoCustomaryUnits()
            .assumptions(Assumptions.standard().given("press.factor", Scope.GENERAL, 1.05))
            .build();
    private static final Order ORDER = Order.of("spring")
            .recipe(RECIPE)
            .piece(CARD)
            .piece(SQUARE)
            .piece(RIM)
            .due(LocalDate.of(2027, 4, 2))
            .weighedIn(Air.of(celsius(20), RelativeHumidity.percent(65)))
            .build();

    static Stream<Object[]> copies() {
        return Stream.of(
                new Object[] {RECIPE, RECIPE.toBuilder().build()},
                new Object[] {CARD, CARD.toBuilder().build()},
                new Object[] {SQUARE, SQUARE.toBuilder().build()},
                new Object[] {RIM, RIM.toBuilder().build()},
                new Object[] {STUDIO, STUDIO.toBuilder().build()},
                new Object[] {ORDER, ORDER.toBuilder().build()});
    }

    @ParameterizedTest
    @MethodSource("copies")
    void nothingIsForgotten(Object one, Object copy) throws IllegalAccessException {
        assertThat(copy).isEqualTo(one).isNotSameAs(one);
        for (Field field : one.getClass().getDeclaredFields()) {
            if (!Modifier.isStatic(field.getModifiers())) {
                field.setAccessible(true);
                assertThat(field.get(copy)).as(field.getName()).isEqualTo(field.get(one));
            }
        }
    }

    @Test
    void whatIsGivenReplacesWhatItBeganWith() {
        assertThat(CARD.toBuilder().count(110).build().count()).isEqualTo(110);
        assertThat(CARD.withCount(110)).isEqualTo(CARD.toBuilder().count(110).build());
        Piece thick = CARD.toBuilder().caliper(micrometres(300)).build();
        assertThat(thick.caliper()).isPresent();
        assertThat(thick.grammage()).isEmpty();
        assertThat(CARD.toBuilder().size(mm(90), mm(130)).build().format()).isEmpty();
        assertThat(RECIPE.withBeating(hours(6)).beating().in("h")).isEqualTo(6);
        assertThat(RECIPE.toBuilder()
                        .additive(Additive.of("ochre", Additive.Purpose.PIGMENT), Dose.percent(3))
                        .build()
                        .additives())
                .hasSize(1)
                .first()
                .matches(dose -> dose.dose().in("%") == 3);
        assertThat(STUDIO.toBuilder()
                        .mould(Mould.of("a", mm(200), mm(300)))
                        .mould(Mould.of("b", mm(90), mm(90)))
                        .build()
                        .moulds())
                .extracting(Mould::name)
                .containsExactly("a", "b");
        assertThat(STUDIO.withAssumptions(Assumptions.standard()).assumptions().own())
                .isEmpty();
        Order more = ORDER.withPiece(CARD.withCount(110));
        assertThat(more.pieces()).extracting(Piece::count).containsExactly(110, 30, 9);
        assertThat(ORDER.withDue(LocalDate.of(2027, 5, 1)).due()).contains(LocalDate.of(2027, 5, 1));
        assertThat(ORDER.withRecipe(RECIPE.withBeating(hours(1))).recipes()).hasSize(1);
        assertThat(ORDER.withoutPiece("rim").pieces()).extracting(Piece::name).isEqualTo(List.of("card", "square"));
    }

    @Test
    void whatIsGivenTwiceIsStillRefused() {
        assertThatThrownBy(() -> CARD.toBuilder().trim(mm(1)).trim(mm(2)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the trim");
        assertThatThrownBy(() -> CARD.toBuilder().grammage(Grammage.gsm(90)).caliper(mm(0.1)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> STUDIO.toBuilder()
                        .mould(Mould.of("a", mm(200), mm(300)))
                        .mould(Mould.of("a", mm(210), mm(300))))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> ORDER.withoutPiece("card")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> ORDER.withoutPiece("poster"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no piece \"poster\"");
    }
}
