package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;

class ReadingTest {
    @Test
    void aReadingTellsValueErrorAndDay() {
        Reading<?> reading = Reading.of(Amounts.grams(4.92), Amounts.grams(0.05));
        assertThat(reading).hasToString("4.92 g ± 0.05 g");
        assertThat(reading.date()).isEmpty();
        Reading<?> dated = reading.on(LocalDate.of(2026, 3, 14));
        assertThat(dated).hasToString("4.92 g ± 0.05 g (2026-03-14)");
        assertThat(dated.date()).contains(LocalDate.of(2026, 3, 14));
        assertThat(dated.value()).isEqualTo(Amounts.grams(4.92));
        assertThat(dated.error()).isEqualTo(Amounts.grams(0.05));
    }

    @Test
    void anErrorOfZeroIsWellAndBelowZeroIsNot() {
        Amount<Grammage> grammage = Grammage.gsm(80);
        assertThat(Reading.of(grammage, grammage.subtract(grammage))).hasToString("80 g/m² ± 0 g/m²");
        Refused refused = catchThrowableOfType(
                Refused.class,
                () -> Reading.of(Amounts.grams(5), Amounts.grams(1).negate()));
        assertThat(refused.code()).isEqualTo("reading.error");
        assertThat(refused).hasMessage("error of the reading: -1 g given; it must be zero or more.");
    }

    @Test
    void theErrorOfATemperatureIsAWidthInKelvin() {
        assertThat(Reading.of(Amounts.celsius(21), Kinds.TEMPERATURE.of(0.5, "K")))
                .hasToString("21 °C ± 0.5 K");
        Refused refused =
                catchThrowableOfType(Refused.class, () -> Reading.of(Amounts.celsius(21), Amounts.celsius(0.5)));
        assertThat(refused.code()).isEqualTo("reading.temperature-error");
        assertThat(refused)
                .hasMessage("error of the reading: 0.5 °C given; the error of a temperature is given in kelvin.");
    }

    @Test
    @SuppressWarnings("unchecked")
    void anErrorOfAnotherKindIsRefused() {
        Amount<Consistency> slipped = (Amount<Consistency>) (Quantity<?>) Moisture.percent(1);
        assertThat(catchThrowableOfType(Refused.class, () -> Reading.of(Consistency.percent(2), slipped))
                        .code())
                .isEqualTo("quantity.kind");
    }

    @Test
    void equalityIsOfAllItsParts() {
        Reading<?> reading = Reading.of(Amounts.grams(4.92), Amounts.grams(0.05));
        assertThat(reading)
                .isEqualTo(Reading.of(Amounts.grams(4.92), Amounts.grams(0.05)))
                .hasSameHashCodeAs(Reading.of(Amounts.grams(4.92), Amounts.grams(0.05)));
        assertThat((Object) reading)
                .isNotEqualTo(Reading.of(Amounts.grams(4.92), Amounts.grams(0.06)))
                .isNotEqualTo(reading.on(LocalDate.of(2026, 3, 14)));
    }
}
