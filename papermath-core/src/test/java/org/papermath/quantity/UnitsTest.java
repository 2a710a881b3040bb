package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.entry;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.format.ReamBasis;

class UnitsTest {
    @ParameterizedTest
    @CsvSource({
        "260 g/m2, 0.26",
        "260 g/m², 0.26",
        "260 gsm, 0.26",
        "'  260   g/m2 ', 0.26",
        "260g/m2, 0.26",
        "2.6e2 g/m2, 0.26",
        "+260 g/m2, 0.26",
        "26E1 g/m2, 0.26",
        ".26 kg/m2, 0.26",
        "260. g/m2, 0.26",
        "2600e-1 g/m2, 0.26"
    })
    void anAmountIsReadFromText(String text, double si) {
        assertThat(Kinds.GRAMMAGE.read(text).si()).isEqualTo(si);
        assertThat(Units.read(Kinds.GRAMMAGE, text)).isEqualTo(Kinds.GRAMMAGE.read(text));
    }

    @Test
    void aPlainNumberNeedsNoUnitWhereTheKindHasNone() {
        assertThat(Units.read(Kinds.SHARE, "0.25")).isEqualTo(Kinds.SHARE.of(0.25, "1"));
        assertThat(Units.read(Kinds.SHARE, "25 %").si()).isEqualTo(0.25);
        assertThat(Units.read(Kinds.NUMBER, "-3")).isEqualTo(Kinds.NUMBER.of(-3, "1"));
        assertThat(Units.read(Kinds.RATE, "2 1/h")).isEqualTo(Rate.perHour(2));
        assertThat(Units.read(Kinds.TEMPERATURE, "-5 °C")).isEqualTo(Amounts.celsius(-5));
    }

    @Test
    void commaDecimalsAreRefused() {
        Refused refused = refused(() -> Units.read(Kinds.MASS, "4,92 g"));
        assertThat(refused.code()).isEqualTo("quantity.unreadable-number");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "mass"),
                        entry("found", "4,92 g"),
                        entry("accepted", "g, kg, mg, t, lb, oz, momme, cwt_us, cwt_uk"));
        assertThat(refused)
                .hasMessage("mass: \"4,92 g\" has more after its number than a unit: \",92 g\". Write a decimal"
                        + " point and no separators, such as \"12.5 g\".");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1,200 g",
                "1'200 g",
                "1 200 g",
                "1.2.3 g",
                "g",
                "",
                "--5 g",
                "1e g",
                "NaN g",
                "Infinity g",
                "½ kg",
                "٣ g",
                "１２ g",
                "0x10 g",
                "1_000 g",
                "1e400 g",
                "−5 g",
                "e5 g",
                ". g",
                "+ g"
            })
    void whatIsNoNumberWithAPointIsRefused(String text) {
        Refused refused = refused(() -> Units.read(Kinds.MASS, text));
        assertThat(refused.code()).as(text).isIn("quantity.unreadable-number", "unit.unknown");
        assertThat(refused.arguments()).containsKeys("quantity", "found", "accepted");
        assertThat(refused.getMessage()).startsWith("mass: ");
    }

    @Test
    void aNumberThatCannotBeReadIsRefusedWithAnExample() {
        assertThat(refused(() -> Units.read(Kinds.MASS, "some fibre")))
                .hasMessage("mass: \"some fibre\" does not begin with a number. Write a number with a decimal"
                        + " point and no"
                        + " separators, a space and a unit, such as \"12.5 g\".");
        assertThat(refused(() -> Units.read(Kinds.NUMBER, "many")).getMessage()).endsWith("such as \"12.5\".");
        assertThat(refused(() -> Units.read(Kinds.MASS, "1e400 g")))
                .hasMessage("mass: \"1e400 g\" has a number that is too large to reckon with. Check its exponent.");
    }

    @Test
    void aMissingUnitIsRefused() {
        Refused refused = refused(() -> Units.read(Kinds.MASS, "260"));
        assertThat(refused.code()).isEqualTo("quantity.no-unit");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "mass"),
                        entry("found", "260"),
                        entry("accepted", "g, kg, mg, t, lb, oz, momme, cwt_us, cwt_uk"));
        assertThat(refused)
                .hasMessage("mass: \"260\" has no unit. Add one of: g, kg, mg, t, lb, oz, momme, cwt_us, cwt_uk.");
    }

    @Test
    void anUnknownUnitIsRefusedWithAHint() {
        Refused refused = refused(() -> Units.read(Kinds.MASS, "260 Grams"));
        assertThat(refused.code()).isEqualTo("unit.unknown");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "mass"),
                        entry("found", "Grams"),
                        entry("accepted", "g, kg, mg, t, lb, oz, momme, cwt_us, cwt_uk"));
        assertThat(refused)
                .hasMessage("mass: \"Grams\" is not a unit of mass. Did you mean \"g\"?"
                        + " Accepted units: g, kg, mg, t, lb, oz, momme, cwt_us, cwt_uk."
                        + " For \"260 Grams\" write \"260 g\".");
    }

    @ParameterizedTest
    @CsvSource({"LBS, lb", "Ounces, oz", "KG, kg", "Kilos, kg", "Tonnes, t", "Mg, mg"})
    void massesAreHintedAt(String written, String meant) {
        assertThat(refused(() -> Kinds.MASS.unit(written)).getMessage()).contains("Did you mean \"" + meant + "\"?");
    }

    @ParameterizedTest
    @CsvSource({"Millimetres, mm", "Millimeter, mm", "Metres, m", "Feet, ft", "MM, mm", "Microns, um"})
    void lengthsAreHintedAt(String written, String meant) {
        assertThat(refused(() -> Kinds.LENGTH.unit(written)).getMessage()).contains("Did you mean \"" + meant + "\"?");
    }

    /** Words for units are read in documents too, in singular and plural. */
    @ParameterizedTest
    @CsvSource({
        "TIME, 4 hours, 4 h",
        "TIME, 1 hour, 1 h",
        "TIME, 90 minutes, 90 min",
        "TIME, 2 days, 2 d",
        "MASS, 1 pound, 1 lb",
        "MASS, 3 pounds, 3 lb",
        "MASS, 5 lbs, 5 lb",
        "MASS, 8 ounces, 8 oz",
        "MASS, 12 grams, 12 g",
        "MASS, 2 kilos, 2 kg",
        "VOLUME, 40 litres, 40 L",
        "VOLUME, 40 liters, 40 L",
        "LENGTH, 5.5 inches, 5.5 in",
        "LENGTH, 2 feet, 2 ft",
        "LENGTH, 12 mils, 12 mil",
        "VOLUME_FLOW, 200 cfm, 200 ft3/min",
        "TEMPERATURE, 64 F, 64 degF",
        "TEMPERATURE, 18 C, 18 Cel",
        "SHARE, 60 per cent, 60 %",
        "SHARE, 60 percent, 60 %"
    })
    void wordsAreReadAsTheUnitsTheyMean(String kind, String written, String meant) throws ReflectiveOperationException {
        Kind<?> of = (Kind<?>) Kinds.class.getField(kind).get(null);
        assertThat(Units.print(Units.read(of, written))).isEqualTo(meant);
        assertThat(Units.print(of.read(written))).isEqualTo(meant);
    }

    @Test
    void aHyphenBehindTheNumberIsNoPartOfTheUnit() {
        assertThatThrownBy(() -> Units.read(Kinds.FORCE, "20-ton"))
                .isInstanceOf(Unclear.class)
                .hasMessageContaining("\"ton\" is three different units. It may mean: tonf_us");
        assertThat(refused(() -> Units.read(Kinds.LENGTH, "12-inch")).getMessage())
                .startsWith("length: \"-inch\" is not a unit of length. Did you mean \"in\"?")
                .endsWith("For \"12-inch\" write \"12 in\".");
    }

    @Test
    void aUnitOfAnotherKindIsNamedAsThat() {
        assertThat(refused(() -> Units.read(Kinds.MASS, "5 mm")))
                .hasMessage("mass: \"mm\" is not a unit of mass. \"mm\" measures length."
                        + " Accepted units: g, kg, mg, t, lb, oz, momme, cwt_us, cwt_uk.");
        assertThat(refused(() -> Units.read(Kinds.GRAMMAGE, "5 %")).getMessage())
                .contains("\"%\" measures consistency or moisture, wet basis or moisture ratio, dry basis.");
        assertThat(refused(() -> Units.read(Kinds.MASS, "5 wheelbarrows")))
                .hasMessage("mass: \"wheelbarrows\" is not a unit of mass. Accepted units: g, kg, mg, t, lb,"
                        + " oz, momme, cwt_us, cwt_uk.");
    }

    @Test
    void aPlainTonOfForceHasThreeMeanings() {
        for (String written : new String[] {"20 ton", "20 tons"}) {
            Unclear unclear = catchThrowableOfType(Unclear.class, () -> Units.read(Kinds.FORCE, written));
            assertThat(unclear.code()).isEqualTo("unit.unclear");
            assertThat(unclear.arguments())
                    .containsExactly(entry("quantity", "force"), entry("found", written.substring(3)));
            assertThat(unclear.candidates())
                    .containsExactly(
                            new Unclear.Candidate("tonf_us", "short ton, 8.896 kN"),
                            new Unclear.Candidate("tf", "metric ton, 9.807 kN"),
                            new Unclear.Candidate("tonf_uk", "long ton, 9.964 kN"));
            assertThat(unclear)
                    .hasMessage(
                            "force: \"" + written.substring(3)
                                    + "\" is three different units. It may mean:"
                                    + " tonf_us (short ton, 8.896 kN); tf (metric ton, 9.807 kN); tonf_uk (long ton, 9.964 kN).");
            for (Unclear.Candidate candidate : unclear.candidates()) {
                assertThat(candidate.gives())
                        .endsWith(
                                Kinds.FORCE.of(1, candidate.meaning()).to("kN").toString());
            }
        }
    }

    @Test
    void aPlainTonOfMassHasThreeMeanings() {
        Unclear unclear = catchThrowableOfType(Unclear.class, () -> Units.read(Kinds.MASS, "1 ton"));
        assertThat(unclear)
                .hasMessage("mass: \"ton\" is three different units. It may mean: 2000 lb (short ton, 907.2 kg);"
                        + " 1 t (metric tonne, 1000 kg); 2240 lb (long ton, 1016 kg).");
        for (Unclear.Candidate candidate : unclear.candidates()) {
            assertThat(candidate.gives())
                    .endsWith(
                            Units.read(Kinds.MASS, candidate.meaning()).to("kg").toString());
        }
    }

    @Test
    void poundsAreNoGrammageWithoutAReam() {
        Unclear unclear = catchThrowableOfType(Unclear.class, () -> Units.read(Kinds.GRAMMAGE, "80 lb"));
        assertThat(unclear.code()).isEqualTo("grammage.ream-unclear");
        assertThat(unclear.arguments()).containsExactly(entry("quantity", "grammage"), entry("found", "lb"));
        assertThat(unclear.candidates()).hasSize(3);
        assertThat(unclear)
                .hasMessage("grammage: pounds are the weight of a ream, and no ream is named. Give the sheet size"
                        + " and the count of the ream. It may mean: a ream of 500 sheets 20 x 26 in (cover) (2.704 g/m²"
                        + " per lb);"
                        + " a ream of 500 sheets 25 x 38 in (text) (1.48 g/m² per lb);"
                        + " a ream of 500 sheets 17 x 22 in (bond) (3.76 g/m² per lb).");
        ReamBasis[] bases = {ReamBasis.COVER, ReamBasis.TEXT, ReamBasis.BOND};
        for (int i = 0; i < bases.length; i++) {
            assertThat(unclear.candidates().get(i).gives())
                    .isEqualTo(bases[i].pounds(1).to(Units.GSM) + " per lb");
        }
    }

    @Test
    void gallonsAndPointsHaveTwoMeanings() {
        Unclear gallons = catchThrowableOfType(Unclear.class, () -> Units.read(Kinds.VOLUME, "3 gallons"));
        assertThat(gallons.candidates()).hasSize(2);
        for (Unclear.Candidate candidate : gallons.candidates()) {
            assertThat(candidate.gives())
                    .isEqualTo(Kinds.VOLUME.of(1, candidate.meaning()).to("L").toString());
        }
        Unclear points = catchThrowableOfType(Unclear.class, () -> Units.read(Kinds.LENGTH, "12 pt"));
        assertThat(points.candidates()).hasSize(2);
        for (Unclear.Candidate candidate : points.candidates()) {
            assertThat(candidate.gives())
                    .endsWith(Kinds.LENGTH.of(1, candidate.meaning()).to("um").toString());
        }
    }

    @Test
    void theRangeOfTheKindHoldsForTextToo() {
        assertThat(refused(() -> Units.read(Kinds.DOSE, "300 %")).code()).isEqualTo("quantity.range");
        assertThat(refused(() -> Units.read(Kinds.CONSISTENCY, "5")))
                .hasMessage("consistency: 5 given; it must be from 0 to 1. For per cent write \"5 %\".");
    }

    @Test
    void amountsPrintAsShortTextWithTheirCode() {
        assertThat(Units.print(Grammage.gsm(260))).isEqualTo("260 g/m2");
        assertThat(Units.print(Amounts.celsius(21.5))).isEqualTo("21.5 Cel");
        assertThat(Units.print(Kinds.SHARE.of(0.25, "1"))).isEqualTo("0.25");
        assertThat(Units.print(Amounts.grams(0.1 + 0.2))).isEqualTo("0.30000000000000004 g");
        assertThat(Units.print(Kinds.FILTRATION_RESISTANCE.of(2.5e15, "m/kg"))).isEqualTo("2.5e15 m/kg");
        assertThat(Units.print(Amounts.metres(1e-9))).isEqualTo("1e-9 m");
        assertThat(Units.print(Amounts.grams(0).negate())).isEqualTo("0 g");
    }

    @Test
    void aReamWeightPrintsAsAGrammageThatReadsBack() {
        Amount<Grammage> cover = ReamBasis.COVER.pounds(80);
        String text = Units.print(cover);
        assertThat(text).startsWith("216.3").endsWith(" g/m2");
        assertThat(Units.read(Kinds.GRAMMAGE, text).isEquivalentTo(cover)).isTrue();
        assertThat(Units.read(Kinds.GRAMMAGE, text)).isEqualTo(cover.to(Units.GSM));
    }

    @Test
    void numbersPrintTheShortestTextThatReadsBack() {
        assertThat(Units.number(0)).isEqualTo("0");
        assertThat(Units.number(-2.5)).isEqualTo("-2.5");
        assertThat(Units.number(0.005)).isEqualTo("0.005");
        assertThat(Units.number(1e15)).isEqualTo("1e15");
        assertThat(Units.number(123456789012345.0)).isEqualTo("123456789012345");
        assertThat(Units.number(1.0 / 3)).isEqualTo("0.3333333333333333");
        assertThat(Units.number(2e-3)).isEqualTo("0.002");
        assertThat(Units.number(1.5e-8)).isEqualTo("1.5e-8");
        assertThat(Units.number(Double.MIN_VALUE)).isEqualTo("5e-324");
        assertThat(Units.number(Double.MAX_VALUE)).isEqualTo("1.7976931348623157e308");
        assertThat(Units.number(-0.1 - 0.2)).isEqualTo("-0.30000000000000004");
    }

    @Test
    void fourDigitsRoundWhatIsWritten() {
        assertThat(Units.fourDigits(0)).isEqualTo("0");
        assertThat(Units.fourDigits(1.00049)).isEqualTo("1");
        assertThat(Units.fourDigits(1.0005)).isEqualTo("1.001");
        assertThat(Units.fourDigits(-0.99995)).isEqualTo("-1");
        assertThat(Units.fourDigits(123456789)).isEqualTo("123500000");
        assertThat(Units.fourDigits(1234567890)).isEqualTo("1.235e9");
        assertThat(Units.fourDigits(1.5e-9)).isEqualTo("1.5e-9");
    }

    @Test
    void rowsOfATableNameTheirUnitByCode() {
        assertThat(Units.toSi(25, "Cel")).isEqualTo(298.15);
        assertThat(Units.toSi(2, "lb")).isEqualTo(0.90718474);
        assertThat(Units.codes())
                .contains("g/m2", "tonf_us", "floz_us")
                .doesNotHaveDuplicates()
                .isUnmodifiable();
        Refused refused = refused(() -> Units.toSi(1, "furlong"));
        assertThat(refused.code()).isEqualTo("unit.unknown");
        assertThat(refused.arguments()).containsEntry("found", "furlong").containsEntry("accepted", Units.codes());
        assertThat(refused.getMessage())
                .startsWith("unit: \"furlong\" is not in the table of units. Write one of: m, km, ");
    }

    @Test
    void everyCodeIsOfSomeUseOrStandsForARowOfATable() {
        assertThat(Units.codes()).allSatisfy(code -> assertThat(code).matches("[\\x21-\\x7e]+"));
    }

    @Test
    void exceptionsKeepTheirNamesAndValuesInOrder() {
        assertThatThrownBy(() -> Refused.of("a.code", "text", "lonely"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a name without a value: lonely");
        assertThat(Refused.of("a.code", "text", "b", 1, "a", 2).arguments())
                .containsExactly(entry("b", 1), entry("a", 2));
        assertThat(Refused.of("a.code", "text")).hasToString("org.papermath.quantity.Refused: text");
    }

    private static Refused refused(ThrowingCallable call) {
        return catchThrowableOfType(Refused.class, call);
    }
}
