package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mils;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.ounces;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.pounds;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.papermath.format.ReamBasis;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class StatedTwiceTest {
    @Test
    void aPoundIsNotSoManyWholeGrams() {
        assertThat(StatedTwice.compare("bale", pounds(80), kilograms(36))).hasValueSatisfying(notice -> {
            assertThat(notice)
                    .hasToString("warning: bale: 80 lb and 36 kg are given for one thing, but 80 lb is"
                            + " 36.29 kg; they differ by 0.792 %. Find out which is right.");
            assertThat((double) notice.arguments().get("apart")).isCloseTo(1 - 36 / 36.2873896, within(1e-9));
        });
        assertThat(StatedTwice.compare("bale", pounds(80), kilograms(36.3))).isEmpty();
        assertThat(StatedTwice.compare("pound", pounds(1), grams(450))).isPresent();
        assertThat(StatedTwice.compare("pound", pounds(1), grams(454))).isEmpty();
        assertThat(StatedTwice.compare("ounce", ounces(1), grams(30))).isPresent();
        assertThat(StatedTwice.compare("nothing", grams(0), ounces(0))).isEmpty();
        assertThat(StatedTwice.compare("nothing", grams(0), ounces(1))).isPresent();
    }

    @Test
    void milsAndMicrometres() {
        assertThat(StatedTwice.compare("caliper", mils(12), micrometres(293), StatedTwice.CALIPER))
                .hasValueSatisfying(notice -> assertThat(notice.text()).contains("12 mil is 304.8 µm", "3.871 %"));
        assertThat(StatedTwice.compare("caliper", mils(12), micrometres(302), StatedTwice.CALIPER))
                .isEmpty();
        assertThat(StatedTwice.compare("caliper", mils(12), micrometres(302))).isPresent();
    }

    @Test
    void aLabelWithPoundsAndGrams() {
        assertThat(StatedTwice.compare("label", ReamBasis.TAG.pounds(80), Grammage.gsm(130)))
                .isEmpty();
        assertThat(StatedTwice.compare("label", ReamBasis.TAG.withCount(480).pounds(80), Grammage.gsm(130)))
                .hasValueSatisfying(notice -> assertThat(notice.text()).contains("480 sheets) is 135.6 g/m²"));
    }

    @Test
    void theLimitItselfIsAllowed() {
        assertThat(StatedTwice.compare("side", mm(200), mm(199))).isEmpty();
        assertThat(StatedTwice.compare("side", mm(199), mm(200))).isEmpty();
        assertThat(StatedTwice.compare("side", mm(200), mm(198.99))).isPresent();
        assertThat(StatedTwice.compare("side", inches(1), mm(25.4), percent(0))).isEmpty();
    }

    @Test
    void whatCannotBeCompared() {
        assertThatThrownBy(() -> StatedTwice.compare("bath", celsius(40), celsius(41)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("40 °C and 41 °C");
        assertThatThrownBy(() -> StatedTwice.compare("side", mm(1), mm(2), percent(101)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void figuresAreComparedByTheirPrintedDigits() {
        assertThat(StatedTwice.inPrint("bale", Kinds.MASS, List.of("80 lb", "36 kg")))
                .isEmpty();
        assertThat(StatedTwice.inPrint("bale", Kinds.MASS, List.of("80 lb", "36.1 kg")))
                .isEmpty();
        assertThat(StatedTwice.inPrint("bale", Kinds.MASS, List.of("80.0 lb", "36.0 kg")))
                .extracting(Notice::code)
                .containsExactly("stated.apart");
        assertThat(StatedTwice.inPrint("side", Kinds.LENGTH, List.of("5 1/2 in", "140 mm", "13.97 cm")))
                .isEmpty();
        assertThat(StatedTwice.inPrint("side", Kinds.LENGTH, List.of("5½\"", "150 mm")))
                .hasSize(1);
        assertThat(StatedTwice.inPrint("load", Kinds.MASS, List.of("2 lb 3 oz", "0.99 kg", "992 g")))
                .isEmpty();
        assertThat(catchThrowableOfType(Refused.class, () -> StatedTwice.inPrint("x", Kinds.MASS, List.of("1 g")))
                        .code())
                .isEqualTo("stated.once");
    }

    @Test
    void theOddOneIsNamed() {
        Notice odd = StatedTwice.inPrint("caliper", Kinds.LENGTH, List.of("0.305 mm", "12.0 mil", "293 um"))
                .get(0);
        assertThat(odd.code()).isEqualTo("stated.odd");
        assertThat(odd.arguments()).containsEntry("odd", "293 um").containsEntry("by", "305 µm");
        // Of four that fall into two pairs none is the odd one.
        assertThat(StatedTwice.inPrint("x", Kinds.LENGTH, List.of("10.0 mm", "1.00 cm", "11.0 mm", "1.10 cm"))
                        .get(0)
                        .code())
                .isEqualTo("stated.apart");
        Map<String, List<String>> rows = new LinkedHashMap<>();
        rows.put("bale", List.of("80 lb", "36 kg"));
        rows.put("drum", List.of("25.0 lb", "13.1 kg"));
        assertThat(StatedTwice.inPrint(Kinds.MASS, rows))
                .extracting(Notice::text)
                .containsExactly("drum: 25.0 lb, 13.1 kg are given for one thing and differ by more than their last"
                        + " digits. Find out which is right.");
    }
}
