package org.papermath.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.ounces;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Notice;
import org.papermath.format.Formats;
import org.papermath.quantity.Refused;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class MailLimitsCheckValuesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 12);
    private static final MailLimits US = MailLimits.of("United States");

    static List<Row> rules() {
        return CheckValues.read("postal_rules");
    }

    private static String country(String service) {
        if (service.startsWith("US")) {
            return "United States";
        }
        return service.equals("UK") ? "United Kingdom" : service;
    }

    @ParameterizedTest
    @MethodSource("rules")
    void outcome(Row row) {
        MailLimits.Verdict verdict = MailLimits.of(country(row.text("service")))
                .check(
                        mm(row.number("item_h_mm")),
                        mm(row.number("item_w_mm")),
                        mm(row.number("thickness_mm")),
                        grams(row.number("mass_g")),
                        DAY);
        String outcome = row.text("outcome");
        if (outcome.startsWith("non-machinable")) {
            assertThat(verdict.service()).contains("letter");
            assertThat(verdict.notices()).extracting(Notice::code).contains("mail.aspect");
            assertThat(verdict.notices()).anyMatch(notice -> notice.text().contains("non-machinable"));
        } else if (outcome.equals("not letter")) {
            assertThat(verdict.service()).contains("large letter");
            assertThat(verdict.failures("letter"))
                    .singleElement()
                    .hasToString("letter: thickness 5.1 mm is 0.1 mm over the limit of 5 mm");
        } else if (outcome.startsWith("ok as card")) {
            assertThat(verdict.service()).contains("postcard");
        } else {
            assertThat(outcome).startsWith(verdict.service().orElseThrow());
            assertThat(verdict.notices()).extracting(Notice::code).doesNotContain("mail.aspect");
        }
    }

    @Test
    void theVerdictSaysWhichLimitFailsByHowMuch() {
        MailLimits.Verdict thick = US.check(inches(5.25), inches(7.25), mm(6.6), grams(20), DAY);
        assertThat(thick.service()).contains("large envelope");
        assertThat(thick.failures("letter")).singleElement().satisfies(failure -> {
            assertThat(failure.limit()).isEqualTo("thickness");
            assertThat(failure.allowed()).isEqualTo("6.35 mm");
            assertThat(failure.by()).isEqualTo("0.25 mm");
            assertThat(failure.direction()).isEqualTo("over");
        });
        // A quarter of an inch and a hundredth more.
        assertThat(US.check(inches(5.25), inches(7.25), inches(0.26), grams(20), DAY)
                        .failures("letter"))
                .singleElement()
                .satisfies(failure -> assertThat(failure.by()).isEqualTo("0.254 mm"));
        MailLimits.Verdict thin = US.check(inches(5), inches(7), mm(0.2), grams(5), DAY);
        assertThat(thin.failures("letter"))
                .singleElement()
                .hasToString("letter: thickness for this size 0.2 mm is 0.029 mm under the limit of 0.229 mm");
        assertThat(US.check(mm(80), mm(120), mm(1), grams(5), DAY).failures("letter"))
                .extracting(MailLimits.Failure::limit)
                .containsExactly("short side", "long side");
        MailLimits.Verdict none = US.check(mm(400), mm(500), mm(30), grams(500), DAY);
        assertThat(none.service()).isEmpty();
        assertThat(none.step()).isEmpty();
        assertThat(none).asString().contains("no service takes it");
    }

    @Test
    void aBoundaryBelongsToTheLowerClass() {
        assertThat(US.check(mm(121), mm(165), mm(1.1), grams(24), DAY).step()).hasValue(1);
        assertThat(US.check(mm(121), mm(165), mm(1.1), ounces(1), DAY).step()).hasValue(1);
        assertThat(US.check(mm(121), mm(165), mm(1.1), ounces(1.0001), DAY).step())
                .hasValue(2);
        assertThat(US.check(mm(121), mm(165), mm(1.1), ounces(3), DAY).step()).hasValue(3);
        assertThat(US.check(mm(121), mm(165), mm(1.1), ounces(3.5), DAY).step()).hasValue(4);
        assertThat(US.check(mm(121), mm(165), mm(1.1), ounces(3.51), DAY).service())
                .contains("large envelope");
        assertThat(US.check(inches(6.125), inches(11.5), inches(0.25), grams(20), DAY)
                        .service())
                .contains("letter");
        assertThat(US.check(inches(3.5), inches(5), inches(0.007), grams(3), DAY)
                        .service())
                .contains("postcard");
        MailLimits germany = MailLimits.of("germany");
        assertThat(germany.check(mm(114), mm(162), mm(5), grams(20), DAY).service())
                .contains("standard");
        assertThat(germany.check(mm(114), mm(162), mm(5.01), grams(20), DAY).service())
                .contains("compact");
        assertThat(germany.check(mm(114), mm(162), mm(5), grams(20.01), DAY).service())
                .contains("compact");
        assertThat(germany.services()).containsExactly("standard", "compact", "large", "maxi");
    }

    @Test
    void theUnionCountsTheSumOfSides() {
        MailLimits union = MailLimits.of("Universal Postal Union");
        assertThat(union.check(mm(500), mm(390), mm(10), grams(100), DAY).service())
                .contains("letter");
        assertThat(union.check(mm(500), mm(391), mm(10), grams(100), DAY).failures())
                .singleElement()
                .satisfies(failure -> assertThat(failure.by()).isEqualTo("1 mm"));
        assertThat(union.check(mm(88), mm(138), mm(1), grams(5), DAY).service()).contains("letter");
        assertThat(union.check(mm(87), mm(138), mm(1), grams(5), DAY).service()).isEmpty();
        assertThat(union.check(mm(601), mm(200), mm(10), grams(100), DAY).service())
                .isEmpty();
    }

    @Test
    void oldLimitsAreNoted() {
        assertThat(US.check(mm(121), mm(165), mm(1), grams(20), DAY).notices())
                .extracting(Notice::code)
                .containsExactly("mail.old");
        assertThat(US.check(mm(121), mm(165), mm(1), grams(20), LocalDate.of(2015, 12, 31))
                        .notices())
                .isEmpty();
        assertThat(US.check(mm(121), mm(165), mm(1), grams(20), LocalDate.of(2016, 1, 1))
                        .notices())
                .hasSize(1);
        assertThat(MailLimits.of("Belgium")
                        .check(mm(121), mm(165), mm(1), grams(20), DAY)
                        .notices())
                .extracting(Notice::code)
                .containsExactly("mail.undated");
    }

    @Test
    void ownLimits() {
        String head = "country;service;dated;min-short;min-long;max-short;max-long;max-sum;min-thick;max-thick;"
                + "max-mass;steps;"
                + "min-aspect;max-aspect;plus-short;plus-long;plus-thick;note\n";
        MailLimits own = MailLimits.read("# a remark\n" + head + "Utopia;small;2026;;;100;200;;;3;50;20|50;;;;;;\n"
                + "Utopia;big;2026;;;200;300;;;;;;;;;;;\n");
        assertThat(own.country()).isEqualTo("Utopia");
        MailLimits.Verdict verdict = own.check(mm(90), mm(150), mm(1), grams(21), DAY);
        assertThat(verdict.service()).contains("small");
        assertThat(verdict.step()).hasValue(2);
        assertThat(verdict.notices()).isEmpty();
        assertThat(own.check(mm(90), mm(250), mm(1), grams(21), DAY).service()).contains("big");
        assertThatThrownBy(() -> MailLimits.read(head + "Utopia;small\n"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("line 2");
        assertThatThrownBy(() -> MailLimits.read(head + "Utopia;small;2026;;;wide;200;;;3;50;;;;;;;\n"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("wide");
        assertThatThrownBy(() -> MailLimits.read("country;service\n")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> MailLimits.read(head)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> MailLimits.of("Utopia"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Belgium");
        assertThat(MailLimits.countries()).contains("United States", "Canada");
    }

    @Test
    void aspectsOfEnvelopes() {
        assertThat(Formats.NA_A7_ENVELOPE.aspect()).isBetween(1.38094, 1.38096);
        for (String name : List.of(
                "NA A1 envelope",
                "NA A2 envelope",
                "NA A6 envelope",
                "NA A7 envelope",
                "NA A9 envelope",
                "NA A10 envelope",
                "ISO C6",
                "ISO DL",
                "NA No. 10 envelope")) {
            assertThat(Formats.find(name).aspect()).as(name).isBetween(1.3, 2.5);
        }
        assertThat(US.check(mm(150), mm(150), mm(1), grams(20), DAY).notices())
                .extracting(Notice::code)
                .contains("mail.aspect");
    }
}
