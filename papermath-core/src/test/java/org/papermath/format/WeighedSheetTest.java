package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;
import org.papermath.shape.Caliper;

class WeighedSheetTest {
    private static final Assumptions STORE = Assumptions.standard();

    private static Caliper thick(double micrometres) {
        return Caliper.of(micrometres(micrometres), SheetPressure.kilopascals(100));
    }

    @Test
    void theVerdictComesFirst() {
        WeighedSheet sheet = WeighedSheet.of(mm(211), mm(296), grams(5.6));
        assertThat(sheet.verdict(STORE)).startsWith("paper of 89.66 g/m²: ISO A4");
        assertThat(sheet.thick(thick(120)).verdict(STORE))
                .startsWith("paper of 89.66 g/m², 120 µm, 747.2 kg/m³: ISO A4");
        assertThat(WeighedSheet.of(mm(100), mm(333), grams(16)).verdict(STORE))
                .isEqualTo("card of 480.5 g/m²: 100 mm × 333 mm, no named format");
    }

    @Test
    void aDensityOutsideNatureIsDoubtedOrRefused() {
        WeighedSheet tissue = WeighedSheet.of(mm(500), mm(800), grams(0.64));
        assertThat(tissue.notices(STORE)).isEmpty();
        WeighedSheet thin = tissue.thick(thick(20));
        assertThat(thin.density().orElseThrow().si()).isCloseTo(80, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(thin.notices(STORE)).hasSize(1);
        assertThat(thin.verdict(STORE)).startsWith("doubtful, measure again: paper of 1.6 g/m², 20 µm, 80 kg/m³");
        assertThat(catchThrowableOfType(
                        Refused.class,
                        () -> WeighedSheet.of(mm(210), mm(297), grams(5.6)).thick(thick(50))))
                .isNotNull();
    }
}
