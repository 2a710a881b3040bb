package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

class FormatsTest {
    @ParameterizedTest
    @ValueSource(strings = {"A6", "a6", "B5", "demy", "Royal", "A2", "6 bar", "5 bar", "C6 "})
    void aSharedNameIsAskedAbout(String name) {
        if (name.equals("C6 ")) {
            // Only one standard has a C6.
            assertThat(Formats.find(name)).isEqualTo(Formats.ISO_C6);
            return;
        }
        assertThatThrownBy(() -> Formats.find(name)).isInstanceOfSatisfying(Unclear.class, unclear -> {
            assertThat(unclear.code()).isEqualTo("format.unclear");
            assertThat(unclear.candidates()).hasSizeGreaterThan(1);
            // Every candidate can be asked for as it is written.
            assertThat(unclear.candidates())
                    .allSatisfy(
                            c -> assertThat(Formats.find(c.meaning()).name()).isEqualTo(c.meaning()));
        });
    }

    @Test
    void theCandidatesOfA6() {
        assertThatThrownBy(() -> Formats.find("A6"))
                .isInstanceOfSatisfying(
                        Unclear.class,
                        unclear -> assertThat(unclear.candidates())
                                .extracting(Unclear.Candidate::meaning)
                                .containsExactly("ISO A6", "NA A6 envelope", "NA A6 card"))
                .hasMessageContaining("105 mm × 148 mm, sheet")
                .hasMessageContaining("4.75 in × 6.5 in, envelope outside");
    }

    @Test
    void fullNamesAreFoundWhateverTheirCase() {
        assertThat(Formats.find(" iso  a6 ")).isEqualTo(Formats.ISO_A6);
        assertThat(Formats.find("jis b5")).isEqualTo(Formats.JIS_B5);
        assertThat(Formats.find("ISO B6")).isEqualTo(Formats.ISO_B6).isNotEqualTo(Formats.find("ISO B6 envelope"));
        assertThat(Formats.find("DL")).isEqualTo(Formats.ISO_DL);
        assertThat(Formats.find("monarch").width().in("in")).isEqualTo(3.875);
        for (Format format : Formats.all()) {
            assertThat(Formats.find(format.name())).isSameAs(format);
            assertThat(format.width().si())
                    .isPositive()
                    .isLessThanOrEqualTo(format.height().si());
            assertThat(format.aspect()).isGreaterThanOrEqualTo(1);
        }
    }

    @Test
    void anUnknownNameIsRefusedWithItsNeighbours() {
        assertThatThrownBy(() -> Formats.find("ISO Z9"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("two sides");
        assertThatThrownBy(() -> Formats.find("elephant, writing"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("elephant, writing, 1854");
        assertThatThrownBy(() -> Formats.find("")).isInstanceOf(Refused.class);
    }

    @Test
    void formatsNearASize() {
        assertThat(Formats.near(mm(150), mm(104), mm(3)))
                .extracting(Format::name)
                .contains("ISO A6");
        assertThat(Formats.near(inches(5), inches(7), mm(1)))
                .extracting(Format::name)
                .containsExactly("NA A7 card");
        assertThat(Formats.near(mm(105), mm(148), mm(0)))
                .extracting(Format::name)
                .containsExactly("ISO A6");
        assertThat(Formats.near(mm(106), mm(150), mm(6)).get(0)).isEqualTo(Formats.ISO_A6);
        assertThat(Formats.near(mm(3000), mm(3000), mm(1))).isEmpty();
    }

    @Test
    void envelopesThatTakeACard() {
        assertThat(Formats.envelopesTaking(mm(148), mm(105), mm(6)))
                .extracting(Format::name)
                .startsWith("ISO C6")
                .contains("NA A6 envelope")
                .doesNotContain("NA A2 envelope");
        assertThat(Formats.envelopesTaking(Formats.NA_A6_CARD.width(), Formats.NA_A6_CARD.height(), mm(0)))
                .doesNotContain(Formats.ISO_C6)
                .contains(Formats.NA_A6_ENVELOPE);
        // A play that equals the clearance is enough, whatever rounding makes of it.
        assertThat(Formats.envelopesTaking(inches(5), inches(7), mm(6.35))).contains(Formats.NA_A7_ENVELOPE);
        assertThat(Formats.envelopesTaking(inches(5), inches(7), mm(6.36))).doesNotContain(Formats.NA_A7_ENVELOPE);
        assertThat(Formats.envelopesTaking(Formats.NA_A7_CARD, mm(6.35))).startsWith(Formats.NA_A7_ENVELOPE);
        // Judged inside, the same envelope is too small.
        assertThat(Formats.envelopesTaking(inches(5), inches(7), mm(6.35), mm(1)))
                .doesNotContain(Formats.NA_A7_ENVELOPE);
        assertThat(Formats.envelopesTaking(mm(105), mm(148), mm(0)))
                .allMatch(f -> f.use() == Format.Use.ENVELOPE_OUTSIDE);
    }

    @Test
    void ownFormats() {
        Format own = Format.of("harbour card", FormatSystem.TRADITIONAL, Format.Use.CARD, mm(170), mm(120));
        assertThat(own.width().in("mm")).isEqualTo(120);
        assertThat(own.height().in("mm")).isEqualTo(170);
        assertThat(own.country()).isEmpty();
        assertThat(own.year()).isEmpty();
        assertThat(own).hasToString("harbour card, 120 mm × 170 mm");
        assertThat(own.outline().area().in("mm2")).isCloseTo(120 * 170, within(1e-9));
        assertThatThrownBy(() -> Format.of(" ", FormatSystem.TRADITIONAL, Format.Use.CARD, mm(1), mm(2)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Format.of("x", FormatSystem.TRADITIONAL, Format.Use.CARD, mm(0), mm(2)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("above zero");
        assertThat(Formats.ISO_C6).hasToString("ISO C6, 114 mm × 162 mm outside");
    }
}
