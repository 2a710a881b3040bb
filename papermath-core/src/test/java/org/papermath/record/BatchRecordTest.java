package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;

class BatchRecordTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 14);
    private static final Measurement READ = new Measurement.NumberRead(
            Reading.of(hours(3), minutes(5)), Reading.of(SchopperRiegler.degrees(52), SchopperRiegler.degrees(2)));
    private static final Measurement LOAD =
            new Measurement.Load(Reading.of(litres(25), litres(1)), Reading.of(hours(3), minutes(5)));

    private static BatchRecord.Builder tideGrey() {
        return BatchRecord.builder("tide grey, first", DAY)
                .recipe("tide grey", Furnish.of(Fibres.ABACA))
                .beater("big beater")
                .vat("long vat")
                .press("green press")
                .dryer("the boards")
                .note("rainy")
                .planned(BatchRecord.SHEET_SOLIDS, grams(12))
                .add(READ, LOAD);
    }

    @Test
    void holdsWhatWasSaid() {
        BatchRecord record = tideGrey().build();
        assertThat(record.name()).isEqualTo("tide grey, first");
        assertThat(record.date()).isEqualTo(DAY);
        assertThat(record.recipe()).contains("tide grey");
        assertThat(record.furnish()).contains(Furnish.of(Fibres.ABACA));
        assertThat(record.beater()).contains("big beater");
        assertThat(record.vat()).contains("long vat");
        assertThat(record.press()).contains("green press");
        assertThat(record.dryer()).contains("the boards");
        assertThat(record.note()).isEqualTo("rainy");
        assertThat(record.planned()).containsOnlyKeys("sheet.oven-dry");
        assertThat(record.measurements()).containsExactly(READ, LOAD);
        assertThat(record.measurements(Measurement.Load.class)).containsExactly((Measurement.Load) LOAD);
        assertThat(record.measurements(Measurement.Marks.class)).isEmpty();
        assertThat(record).hasToString("tide grey, first (2026-03-14), 2 measurements");
    }

    @Test
    void holdsNothingElse() {
        BatchRecord record = BatchRecord.builder("bare", DAY).build();
        assertThat(record.recipe()).isEmpty();
        assertThat(record.furnish()).isEmpty();
        assertThat(record.beater()).isEmpty();
        assertThat(record.vat()).isEmpty();
        assertThat(record.press()).isEmpty();
        assertThat(record.dryer()).isEmpty();
        assertThat(record.note()).isEmpty();
        assertThat(record.planned()).isEmpty();
        assertThat(record.measurements()).isEmpty();
    }

    @Test
    void staysAsItIsWhenItsBuilderGoesOn() {
        BatchRecord.Builder builder = tideGrey();
        BatchRecord record = builder.build();
        builder.note("later").add(LOAD);
        BatchRecord more = record.toBuilder().add(READ).build();
        assertThat(record.note()).isEqualTo("rainy");
        assertThat(record.measurements()).hasSize(2);
        assertThat(more.measurements()).hasSize(3);
        assertThat(record)
                .isEqualTo(tideGrey().build())
                .hasSameHashCodeAs(tideGrey().build())
                .isNotEqualTo(more);
        assertThatThrownBy(() -> record.measurements().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> record.planned().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> BatchRecord.builder(" ", DAY))
                .isInstanceOf(Refused.class)
                .hasMessage("batch record: no name given. Give the batch a name.");
        assertThatThrownBy(() -> BatchRecord.builder("a", DAY).vat("vat [1]"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("cannot be the name of a scope");
        assertThatThrownBy(() -> new Measurement.Hours(Measurement.Work.SORTING, Reading.of(hours(1), minutes(1)), 0))
                .isInstanceOf(Refused.class)
                .hasMessage("sorting: 0 given; must be 1 or more.");
        assertThatThrownBy(() -> new Measurement.Hours(
                        Measurement.Work.SORTING, Reading.of(Kinds.TIME.ofSi(0, "h"), minutes(1)), 3))
                .isInstanceOf(Refused.class);
    }
}
