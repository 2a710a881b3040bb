package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.plan.MakingPlan;
import org.papermath.record.BatchRecord;

/** What the guide shows to embedders, compiled and run; the page is looked at for the same lines. */
class GuideTest {
    @TempDir
    Path folder;

    private final List<String> printed = new ArrayList<>();

    @Test
    void theLinesOfTheGuideRun() throws IOException {
        Files.writeString(folder.resolve("order.json"), Concert.ORDER);
        Files.createDirectories(folder.resolve("papers"));
        Files.writeString(folder.resolve("papers/reed.json"), Concert.RECIPE);
        Files.writeString(folder.resolve("studio.json"), Concert.STUDIO);

        Document<OrderDocument> read = PapermathDocuments.readOrder(folder.resolve("order.json"));
        MakingPlan plan = MakingPlan.of(read.value().order(), read.value().studio());
        DocumentFiles.save(folder.resolve("plan.json"), PapermathDocuments.writePlan(plan, "studio notebook", "2.1"));

        PlanDocument then = PapermathDocuments.readPlan(folder.resolve("plan.json")).value();
        for (PlanDocument.Moved one : then.moved()) {
            printed.add(one.pointer() + ": " + one.before() + ", now " + one.after());
        }
        assertThat(printed).isEmpty();

        RecordLines.save(folder.resolve("batches.jsonl"), List.of(PapermathDocuments.readRecord(Batch.RECORD)).stream());
        List<BatchRecord> used = new ArrayList<>();
        RecordLines.Progress all = RecordLines.reader()
                .reportingEvery(10_000, soFar -> printed.add(soFar.records() + " records"))
                .read(folder.resolve("batches.jsonl"), one -> used.add(one.value()), bad -> printed.add(bad.getMessage()));
        assertThat(all.records()).isEqualTo(1);
        assertThat(used).hasSize(1);
        assertThat(printed).containsExactly("1 records");
    }

    @Test
    void everyExampleOfAQuantityIsRead() {
        String recipe = Concert.RECIPE.replace("\"2.5 h\"", "{\"value\": 2.5, \"unit\": \"h\"}");
        assertThat(PapermathDocuments.readRecipe(recipe).value())
                .isEqualTo(PapermathDocuments.readRecipe(Concert.RECIPE).value());
    }
}
