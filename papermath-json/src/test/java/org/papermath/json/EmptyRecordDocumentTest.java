package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.networknt.schema.InputFormat;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.EmptyRecord;
import org.papermath.plan.MakingPlan;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

/** From a plan to an empty record, filled in, and back to the plan. */
class EmptyRecordDocumentTest {
    private static final LocalDate DAY = LocalDate.of(2027, 3, 11);
    private static final Pattern BLANK = Pattern.compile("\"read\": \"\",(\\s*)\"planned\": (\"[^\"]*\")");

    private static final Order ORDER = Concert.read().value().order();
    private static final Studio STUDIO = Concert.read().value().studio();
    private static final MakingPlan PLAN = MakingPlan.of(ORDER, STUDIO);

    private static EmptyRecord empty() {
        return PLAN.emptyRecord(PLAN.piece("programme").batch(), "programme", DAY);
    }

    /** Fills in every blank with what is planned, and keeps that beside it. */
    private static String filled(String text) {
        return BLANK.matcher(text)
                .replaceAll("\"read\": $2,$1\"planned\": $2")
                .replaceAll("\"(sheets|handled|count)\": \"\"", "\"$1\": 50")
                .replaceAll("\"(rejected|good)\": \"\"", "\"$1\": 2");
    }

    @Test
    void anUnfilledBlankIsNoReading() {
        EmptyRecord empty = empty();
        String text = PapermathDocuments.writeEmptyRecord(empty);
        assertThat(text).contains("\"read\": \"\"", "\"rejected\": \"\"", "\"lot\": \"\"");
        assertThat(Judged.schema("record").validate(text, InputFormat.JSON)).isEmpty();
        Document<BatchRecord> read = PapermathDocuments.readRecord(text);
        assertThat(read.notes()).isEmpty();
        assertThat(read.value().measurements()).isEmpty();
        assertThat(read.value().fibreLots()).isEmpty();
        assertThat(read.value()).isEqualTo(empty.record());
    }

    @Test
    void whatIsFilledInIsReadAndRepeatsThePlanToTheBit() {
        String text = PapermathDocuments.writeEmptyRecord(empty());
        Matcher blank = BLANK.matcher(text);
        assertThat(blank.results().count()).isGreaterThan(20);
        BatchRecord record = PapermathDocuments.readRecord(filled(text)).value();
        assertThat(record.measurements()).hasSameSizeAs(empty().blanks());
        String name = record.recipe().orElseThrow();
        Recipe made = record.recipeAsMade();
        assertThat(made).isEqualTo(PLAN.batch(name).recipe());
        String again = PapermathDocuments.writeRecord(Document.of(record));
        assertThat(PapermathDocuments.readRecord(again).value()).isEqualTo(record);
        MakingPlan second = MakingPlan.of(
                ORDER.withRecipe(name, planned -> made.toBuilder()),
                STUDIO.withAssumptions(record.assumptions().orElseThrow()));
        assertThat(PapermathDocuments.writePlan(second, "test", "1"))
                .isEqualTo(PapermathDocuments.writePlan(PLAN, "test", "1"));
        assertThat(PLAN.changesSince(record).changes()).isEmpty();
    }

    @Test
    void aFormFilledInHalfIsReadAsFarAsItGoes() {
        String text = PapermathDocuments.writeEmptyRecord(empty());
        // Only the first thing: a fibre.
        String first = BLANK.matcher(text).replaceFirst("\"read\": \"600 g\",$1\"planned\": $2");
        first = first.replaceFirst("\"lot\": \"\"", "\"lot\": \"bale 3\"");
        BatchRecord record = PapermathDocuments.readRecord(first).value();
        assertThat(record.measurements()).singleElement().isInstanceOf(Measurement.FibreWeighed.class);
        assertThat(record.fibreLots()).hasSize(1).containsValue("bale 3");
        // A sheet of which one mass is left out, though it has to be there.
        int sheet = text.indexOf("\"what\": \"weighed sheet\"");
        String half = text.substring(0, sheet)
                + BLANK.matcher(text.substring(sheet)).replaceFirst("\"read\": $2,$1\"planned\": $2");
        DocumentException refused =
                catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readRecord(half));
        assertThat(refused.faults())
                .isNotEmpty()
                .allSatisfy(fault -> assertThat(fault.code()).isEqualTo(FaultCodes.UNFILLED))
                .extracting(Fault::pointer)
                .allMatch(pointer -> pointer.matches("/measured/\\d+/(ovenDry|width|height)"));
        assertThat(refused.faults().get(0).line()).isGreaterThan(1);
    }

    @Test
    void whatIsPlannedBesideAReadingHasToBeOfItsKind() {
        String text = Batch.RECORD.replace("\"planned\": \"23.5 g\"", "\"planned\": \"23.5 mm\"");
        DocumentException refused =
                catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readRecord(text));
        assertThat(refused.faults()).extracting(Fault::pointer).allMatch(at -> at.endsWith("/product/planned"));
    }

    @Test
    void membersOfOthersStayWithTheirReading() {
        String text = PapermathDocuments.writeEmptyRecord(empty());
        int beaten = text.indexOf("\"what\": \"beaten\"");
        String some = text.substring(0, beaten) + "\"x-by\": \"me\", "
                + BLANK.matcher(text.substring(beaten)).replaceFirst("\"read\": \"3 h\",$1\"planned\": $2");
        Document<BatchRecord> read = PapermathDocuments.readRecord(some);
        assertThat(read.value().measurements()).singleElement().isInstanceOf(Measurement.Beaten.class);
        Document<BatchRecord> again = PapermathDocuments.readRecord(PapermathDocuments.writeRecord(read));
        assertThat(again.keptMembers().keySet()).isEqualTo(java.util.Set.of("/measured/0/x-by"));
        assertThat(List.of(again.value())).containsExactly(read.value());
    }
}
