package org.papermath.json;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.card.MakingCard;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.order.Recipe;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.PressingPlan;
import org.papermath.plan.Stage;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * The lines the guide and the comments show to whoever embeds the library. The pages are made from this file: what
 * stands between {@code // guide: name} and {@code // end} is shown under that name.
 */
final class Guide {
    private Guide() {}

    static List<PlanDocument.Moved> plan(Path folder, PrintStream out) throws IOException {
        // guide: plan
        Document<OrderDocument> read = PapermathDocuments.readOrder(folder.resolve("order.json"));
        MakingPlan plan = MakingPlan.of(read.value().order(), read.value().studio());
        out.println(MakingCard.of(plan));
        String text = PapermathDocuments.writePlan(plan, "studio notebook", "2.1");
        DocumentFiles.save(folder.resolve("plan.json"), text);
        // end

        // guide: compare
        PlanDocument then =
                PapermathDocuments.readPlan(folder.resolve("plan.json")).value();
        for (PlanDocument.Moved one : then.moved()) {
            out.println(one.pointer() + ": " + one.before() + ", now " + one.after());
        }
        // end
        return newest(then);
    }

    static List<PlanDocument.Moved> newest(PlanDocument then) {
        // guide: newest
        Assumptions newest = Assumptions.standard();
        for (Assumption own : then.studio().assumptions().own()) {
            newest = newest.with(own);
        }
        MakingPlan now = MakingPlan.of(then.order(), then.studio().withAssumptions(newest));
        List<PlanDocument.Moved> moved = then.moved(now);
        // end
        return moved;
    }

    static void faults(Path folder, PrintStream out) throws IOException {
        // guide: faults
        try {
            PapermathDocuments.readRecipe(folder.resolve("tide-grey.json"));
        } catch (DocumentException e) {
            for (Fault fault : e.faults()) {
                out.println(fault.line() + ":" + fault.column() + " " + fault.pointer() + " " + fault.code());
                out.println("  found " + fault.found() + ", accepted " + fault.accepted());
                out.println("  " + fault.text());
            }
        }
        // end
    }

    static void change(Path folder) throws IOException {
        // guide: change
        Document<Recipe> read = PapermathDocuments.readRecipe(folder.resolve("tide-grey.json"));
        Recipe longer = Recipe.of(read.value().name(), read.value().furnish())
                .beating(Amounts.hours(4))
                .build();
        DocumentFiles.save(folder.resolve("tide-grey.json"), PapermathDocuments.writeRecipe(read.with(longer)));
        // end
    }

    static RecordLines.Progress records(Path folder, Stream<Document<BatchRecord>> records, PrintStream out)
            throws IOException {
        // guide: save-records
        RecordLines.save(folder.resolve("batches.jsonl"), records);
        // end

        List<BatchRecord> batches = new ArrayList<>();
        // guide: records
        RecordLines.Progress all = RecordLines.reader()
                .reportingEvery(10_000, soFar -> out.println(soFar.records() + " records"))
                .read(
                        folder.resolve("batches.jsonl"),
                        one -> batches.add(one.value()),
                        bad -> out.println(bad.getMessage()));
        // end
        return all;
    }

    // guide: swatch
    record Swatch(String name, Amount<Grammage> grammage, Amount<Length> side) {}
    // end

    static Swatch module(PrintStream out) {
        // guide: module
        JsonMapper mapper = JsonMapper.builder().findAndAddModules().build();
        String text = mapper.writeValueAsString(new Swatch("tide grey", Grammage.gsm(260), Amounts.mm(105)));
        out.println(text); // {"name":"tide grey","grammage":"260 g/m2","side":"105 mm"}
        Swatch swatch = mapper.readValue(text.replace("105 mm", "4.5 in"), Swatch.class);
        out.println(swatch.side().to("mm")); // 114.3 mm
        // end
        // guide: module-faults
        try {
            mapper.readValue(text.replace("260 g/m2", "260"), Swatch.class);
        } catch (JacksonException e) {
            out.println(e.getOriginalMessage());
        }
        // end
        return swatch;
    }

    // guide: told
    record Told(Estimate<Grammage> grammage, Stage<PressingPlan> press, List<Notice> notices) {}
    // end

    static String told(MakingPlan plan) {
        JsonMapper mapper = JsonMapper.builder().findAndAddModules().build();
        // guide: forecasts
        PiecePlan piece = plan.pieces().get(0);
        String text =
                mapper.writeValueAsString(new Told(piece.finished().grammage(), piece.pressStage(), plan.notices()));
        // end
        return text;
    }

    record Felt(String name, Amount<Mass> mass, int count, Optional<String> note) {
        Felt(String name, Amount<Mass> mass, int count) {
            this(name, mass, count, Optional.empty());
        }
    }

    // guide: felt-read
    static ReadResult<Felt> felt(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<Amount<Mass>> mass = in.required("mass").quantity(Kinds.MASS);
        ReadResult<Integer> count = in.optional("count").count(1, 1000);
        return in.make(() -> new Felt(name.get(), mass.get(), count.orElse(1)));
    }
    // end

    // guide: felt-write
    static void felt(ObjectWriter out, Felt felt) {
        out.member("name").text(felt.name());
        out.member("mass").quantity(felt.mass());
        felt.note().ifPresent(note -> out.member("note").text(note));
    }
    // end
}
