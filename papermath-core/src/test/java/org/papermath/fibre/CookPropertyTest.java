package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class CookPropertyTest {
    private static final Assumptions TABLE = Assumptions.standard();

    /** The whole range of what a caller may give: numbers, or a named refusal. */
    @Property(tries = 300, seed = "2026")
    void answersOrRefuses(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1e6) double kilograms,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.5) double dose,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1e6) double litres,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double active,
            @ForAll Alkali alkali,
            @ForAll Form form) {
        List<Double> numbers = new ArrayList<>();
        try {
            Cook cook = Cook.of(
                            BoughtFibre.of(Fibres.FLAX_RAW, form),
                            Kinds.MASS.ofSi(kilograms),
                            alkali,
                            Kinds.DOSE.ofSi(dose, "%"),
                            Kinds.VOLUME.of(litres, "L"))
                    .withActive(Kinds.SHARE.ofSi(active, "%"));
            numbers.add(cook.pureAlkali().si());
            numbers.add(cook.product().si());
            numbers.add(cook.hydroxide().si());
            numbers.add(cook.liquorRatio().si());
            numbers.add(cook.bathStrength().si());
            numbers.add(cook.stuff(TABLE).si());
            numbers.add(cook.rinseWater(TABLE).high().si());
            assertThat(cook.notices(TABLE)).isNotEmpty();
            for (Alkali other : Alkali.values()) {
                numbers.add(cook.withSameHydroxide(other).value().dose().si());
            }
        } catch (Refused refused) {
            assertThat(refused.code()).isNotEqualTo("quantity.not-a-number");
            assertThat(refused.getMessage()).doesNotContain("NaN").doesNotContain("Infinity");
        }
        assertThat(numbers).allSatisfy(number -> assertThat(number).isFinite().isGreaterThanOrEqualTo(0));
    }

    @Property(tries = 300, seed = "2026")
    void bathWeighingAndDoseTellTheSameCookAndNothingIsLost(
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 50) double kilograms,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.4) double dose,
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 30) double perKilogram,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 1) double yield,
            @ForAll Alkali alkali) {
        BoughtFibre bark = BoughtFibre.of(Fibres.KOZO, Form.RAW)
                .withYield(Kinds.SHARE.ofSi(yield, "%"))
                .withMoisture(Kinds.MOISTURE.of(11, "%"));
        Cook cook = Cook.of(
                bark,
                Kinds.MASS.ofSi(kilograms),
                alkali,
                Kinds.DOSE.ofSi(dose, "%"),
                Kinds.VOLUME.of(perKilogram * kilograms, "L"));
        assertThat(cook.bathStrength().si() * cook.liquor().si())
                .isCloseTo(cook.pureAlkali().si(), relative(cook.pureAlkali().si(), 1e-12));
        assertThat(Cook.ofBath(bark, cook.ovenDry(), alkali, cook.bathStrength(), cook.liquor())
                        .dose()
                        .si())
                .isCloseTo(dose, relative(dose, 1e-12));
        assertThat(Cook.ofWeighed(bark, cook.ovenDry(), alkali, cook.pureAlkali(), cook.liquor())
                        .dose()
                        .si())
                .isCloseTo(dose, relative(dose, 1e-12));
        double bought = bark.asBought(cook.stuff(TABLE), TABLE).si();
        assertThat(bark.ovenDryRaw(Kinds.MASS.ofSi(bought), TABLE).si())
                .isCloseTo(kilograms, relative(kilograms, 1e-12));
    }
}
