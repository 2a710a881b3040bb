package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

class RecordDocumentTest {
    private static List<Fault> faults(String text) {
        return catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readRecord(text))
                .faults();
    }

    @Test
    void everyMeasurementIsReadAndWrittenTheSame() {
        Document<BatchRecord> read = PapermathDocuments.readRecord(Batch.RECORD);
        assertThat(read.value().measurements())
                .extracting(one -> (Object) one.getClass())
                .contains(Arrays.stream(Measurement.class.getPermittedSubclasses())
                        .toArray());
        String written = PapermathDocuments.writeRecord(read);
        Document<BatchRecord> again = PapermathDocuments.readRecord(written);
        assertThat(again.value()).isEqualTo(read.value());
        assertThat(PapermathDocuments.writeRecord(again)).isEqualTo(written);
        assertThat(again.keptMembers())
                .isEqualTo(read.keptMembers())
                .containsOnlyKeys("/measured/3/x-by", "/measured/4/freeness/x-cup", "/x-weather");
        assertThat(again.writtenBy()).contains(new WrittenBy("notebook", "0.9"));
    }

    @Test
    void plannedAndMeasuredStandApart() {
        BatchRecord record = PapermathDocuments.readRecord(Batch.RECORD).value();
        assertThat(record.planned()).containsEntry(BatchRecord.SHEET_SOLIDS, Kinds.MASS.of(4.2, "g"));
        assertThat(record.planned().get("drainability").kind()).isSameAs(Kinds.SCHOPPER_RIEGLER);
        assertThat(record.measurements(Measurement.NumberRead.class)
                        .get(0)
                        .number()
                        .value())
                .isEqualTo(Kinds.SCHOPPER_RIEGLER.of(33, "SR"));
    }

    @Test
    void faultsAreReportedWhereTheyStand() {
        String text = Batch.RECORD
                .replace("\"what\": \"vat filled\"", "\"what\": \"vat fillled\"")
                .replace("\"2.5 h\", \"error\": \"2 min\"},\n", "\"2.5 h\", \"error\": \"2 g\"},\n")
                .replace("\"handled\": 60, \"rejected\": 3", "\"handled\": 60, \"rejected\": 63")
                .replace("\"kind\": \"mass\"", "\"kind\": \"massive\"")
                .replace("\"restraint\": \"blotters\"", "\"restraint\": \"pegs\"")
                .replace("\"press\": \"long press\"", "\"press\": \"long @ press\"");
        List<Fault> faults = faults(text);
        assertThat(faults)
                .extracting(Fault::pointer)
                .containsExactly(
                        "/press",
                        "/planned/0/kind",
                        "/measured/3/beating/error",
                        "/measured/6/what",
                        "/measured/10",
                        "/measured/13/restraint");
        assertThat(faults.get(3).nearest()).isEqualTo("vat filled");
        assertThat(faults)
                .extracting(Fault::text)
                .allSatisfy(line -> assertThat(line).endsWith("."));
    }

    @Test
    void aReadingSaysHowFarOffItMayBe() {
        List<Fault> faults = faults("""
                {"format": "papermath/record", "version": "1.0", "name": "n", "date": "2027-03-11",
                 "measured": [{"what": "vat filled", "volume": "68 L"},
                              {"what": "vat filled", "volume": {"read": "68 L"}}]}
                """);
        assertThat(faults).extracting(Fault::code).containsExactly(FaultCodes.TYPE, FaultCodes.MISSING);
    }
}
