package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mils;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class CaliperCheckValuesTest {
    static List<Row> bulks() {
        return CheckValues.read("caliper_bulk");
    }

    @ParameterizedTest
    @MethodSource("bulks")
    void densityAndBulk(Row row) {
        Caliper caliper = Caliper.of(micrometres(row.number("caliper_um")), Caliper.FIFTY_KILOPASCALS);
        double density = row.number("density_g_per_cm3");
        double bulk = row.number("bulk_cm3_per_g");
        assertThat(caliper.density(Grammage.gsm(row.number("grammage_g_per_m2")))
                        .in("g/cm3"))
                .isCloseTo(density, relative(density, 1e-5));
        assertThat(caliper.bulk(Grammage.gsm(row.number("grammage_g_per_m2"))).in("cm3/g"))
                .isCloseTo(bulk, relative(bulk, 1e-5));
    }

    @Test
    void aMilIsAPointOfPaperAndNotOfType() {
        assertThat(mils(10).in("um")).isCloseTo(254, within(1e-9));
        assertThat(Kinds.LENGTH.of(10, "pt_paper").in("um")).isCloseTo(254, within(1e-9));
        assertThat(Kinds.LENGTH.of(10, "pt_type").in("um")).isCloseTo(3527.78, within(0.01));
        assertThatThrownBy(() -> Kinds.LENGTH.read("10 pt")).isInstanceOf(org.papermath.quantity.Unclear.class);
    }

    @Test
    void books() {
        Caliper leaf = Caliper.of(micrometres(86), Caliper.BOOK_BULK);
        assertThat(leaf.ofPages(840).in("mm")).isCloseTo(36.12, within(1e-9));
        assertThat(leaf.ofPages(840).in("in")).isCloseTo(1.422, within(5e-4));
        assertThat(leaf.ofPages(839)).isEqualTo(leaf.ofPages(840));
        assertThat(leaf.pagesPerInch()).isCloseTo(590.70, within(0.005));
        Caliper four = Caliper.ofPack(inches(0.016), 4, Caliper.BOOK_BULK);
        assertThat(four.pagesPerInch()).isCloseTo(500, within(1e-9));
        assertThat(four.ofPages(320).in("in")).isCloseTo(0.64, within(1e-12));
        assertThat(four.ofSheets(4).in("in")).isCloseTo(0.016, within(1e-15));
    }

    @Test
    void forceOnTheFoot() {
        assertThat(Caliper.of(mm(0.2), Caliper.FIFTY_KILOPASCALS)
                        .footForce(Kinds.AREA.of(200, "mm2"))
                        .in("N"))
                .isCloseTo(10, within(1e-12));
        assertThat(Caliper.of(mm(0.2), Caliper.HUNDRED_KILOPASCALS)
                        .footForce(Kinds.AREA.of(200, "mm2"))
                        .in("N"))
                .isCloseTo(20, within(1e-12));
    }

    /** Ten sheets of 206 g/m², a loose pile of 3.4 mm: 606 kg/m³, 1.65 cm³/g. */
    @Test
    void aLoosePile() {
        Caliper pile = Caliper.ofPack(mm(3.4), 10, SheetPressure.kilopascals(0));
        Amount<Grammage> found = Grammage.gsm(206);
        assertThat(pile.density(found).in("kg/m3")).isCloseTo(606, within(0.2));
        assertThat(pile.bulk(found).in("cm3/g")).isCloseTo(1.65, within(0.005));
        assertThat(pile.atGrammage(found, Grammage.gsm(103)).thickness().in("um"))
                .isCloseTo(170, within(0.01));
    }

    @Test
    void differentMeasuringIsNotMixedInSilence() {
        Caliper soft = Caliper.of(micrometres(240), Caliper.FIFTY_KILOPASCALS);
        Caliper hard = Caliper.of(micrometres(232), Caliper.HUNDRED_KILOPASCALS);
        Caliper pack = Caliper.ofPack(mm(2.4), 10, Caliper.FIFTY_KILOPASCALS);
        assertThat(soft.besides(soft)).isEmpty();
        assertThat(soft.besides(hard)).extracting(Notice::code).containsExactly("caliper.pressure");
        assertThat(soft.besides(pack)).extracting(Notice::code).containsExactly("caliper.pack");
        assertThat(hard.besides(pack)).extracting(Notice::code).containsExactly("caliper.pressure", "caliper.pack");
        assertThat(soft.besides(Caliper.of(micrometres(240), SheetPressure.psi(7.3))))
                .isEmpty();
        assertThat(pack).hasToString("240 µm at 50 kPa, from a pack of 10");
    }

    @Test
    void impossibleOnesAreRefused() {
        assertThatThrownBy(() -> Caliper.of(mm(0), Caliper.BOOK_BULK)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Caliper.ofPack(mm(1), 0, Caliper.BOOK_BULK)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Caliper.of(mm(1), Caliper.BOOK_BULK).ofSheets(-1))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Caliper.of(mm(1), Caliper.BOOK_BULK).ofPages(-1))
                .isInstanceOf(Refused.class);
    }
}
