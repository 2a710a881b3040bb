package org.papermath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.format.ReamBasis;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;

/** Texts and numbers are the same wherever the machine stands. */
class LocaleTest {
    private Locale localeBefore;
    private TimeZone zoneBefore;

    @BeforeEach
    void remember() {
        localeBefore = Locale.getDefault();
        zoneBefore = TimeZone.getDefault();
    }

    @AfterEach
    void restore() {
        Locale.setDefault(localeBefore);
        TimeZone.setDefault(zoneBefore);
    }

    private static List<String> texts() {
        List<String> texts = new ArrayList<>();
        for (Kind<?> kind : Kinds.all()) {
            texts.add(kind.toString());
            for (String code : kind.codes()) {
                var amount = kind.ofSi(0.123456789, code);
                texts.add(amount.toString());
                texts.add(Units.print(amount));
                texts.add(kind.read(Units.print(amount)).toString());
            }
            texts.add(catchThrowable(() -> kind.read("1,5 INCI")).getMessage());
            texts.add(catchThrowable(() -> kind.read("1.5 INCI")).getMessage());
            texts.add(catchThrowable(() -> kind.of(Double.NaN, kind.codes().get(0)))
                    .getMessage());
        }
        texts.add(catchThrowable(() -> Dose.percent(1234567.891)).getMessage());
        texts.add(catchThrowable(() -> Amounts.celsius(-1234.5)).getMessage());
        texts.add(catchThrowable(() -> Kinds.FORCE.read("1.5 ton")).getMessage());
        texts.add(catchThrowable(() -> Kinds.GRAMMAGE.read("80.5 lb")).getMessage());
        texts.add(Kinds.MASS.read("1.5 KILOGRAMS").toString());
        texts.add(Kinds.TIME.read("1.5 MINUTES").toString());
        texts.add(catchThrowable(() -> ReamBasis.ofUnknownCount(80.5, Amounts.inches(22.5), Amounts.mm(1234.5)))
                .getMessage());
        texts.add(ReamBasis.BRISTOL.withCount(12345).toString());
        texts.add(ReamBasis.COVER.pounds(1234.5).toString());
        texts.add(CanadianFreeness.millilitres(456.7).toString());
        texts.add(Amounts.kilonewtons(1234.567)
                .to(tech.units.indriya.unit.Units.NEWTON)
                .toString());
        texts.add(Units.number(1234567.25) + Units.number(1.5e-9) + Units.number(-1e20) + Units.fourDigits(1234.5));
        texts.add(Reading.of(Amounts.grams(1234.5), Amounts.grams(0.5))
                .on(LocalDate.of(2026, 12, 31))
                .toString());
        texts.add(Estimate.of(Grammage.gsm(1214.5), Grammage.gsm(1203), Grammage.gsm(1226), List.of())
                .withScatter(0.085)
                .toString());
        texts.add(Notice.warning("a.code", "A sentence.").toString());
        for (Basis basis : Basis.values()) {
            texts.add(basis.word());
        }
        for (Assumption row : Assumptions.standard().all()) {
            texts.add(row.toString());
        }
        texts.add(Assumptions.standard().toString());
        texts.add(catchThrowable(() -> Assumptions.standard().get("a.missing", Scope.at("IĞDIR")))
                .getMessage());
        return texts;
    }

    @ParameterizedTest
    @CsvSource({
        "de-DE, Europe/Berlin",
        "tr-TR, Europe/Istanbul",
        "ar-EG-u-nu-arab, Africa/Cairo",
        "hi-IN-u-nu-deva, Asia/Kolkata",
        "fr-CH, Pacific/Apia"
    })
    void textsAreTheSameEverywhere(String tag, String zone) {
        Locale.setDefault(Locale.ROOT);
        TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
        List<String> expected = texts();
        Locale.setDefault(Locale.forLanguageTag(tag));
        TimeZone.setDefault(TimeZone.getTimeZone(zone));
        assertThat(texts()).isEqualTo(expected);
    }

    @Test
    void theLocalesOfThisTestDoMatterElsewhere() {
        Locale.setDefault(Locale.forLanguageTag("de-DE"));
        assertThat(String.format("%.1f", 1.5)).isEqualTo("1,5");
        Locale.setDefault(Locale.forLanguageTag("tr-TR"));
        assertThat("I".toLowerCase()).isEqualTo("ı");
        Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
        assertThat(String.format("%d", 15)).isEqualTo("١٥");
    }
}
