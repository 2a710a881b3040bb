package org.papermath.json;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A document as the reader judges it, and as its schema does by an independent validator. */
final class Judged {
    private static final Map<String, Schema> SCHEMAS = new TreeMap<>();

    static {
        SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
        PapermathSchemas.names()
                .forEach(name -> SCHEMAS.put(name, registry.getSchema(PapermathSchemas.text(name), InputFormat.JSON)));
    }

    private Judged() {}

    static Schema schema(String name) {
        return SCHEMAS.get(name);
    }

    /** Reads a document of a format; an order may refer to the files of the concert. */
    static List<Fault> faults(String name, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        try {
            switch (name) {
                case "order" -> PapermathDocuments.readOrder(bytes, "", Concert.FILES);
                case "recipe" -> PapermathDocuments.readRecipe(bytes, "");
                case "studio" -> PapermathDocuments.readStudio(bytes, "");
                case "record" -> PapermathDocuments.readRecord(bytes, "");
                case "prices" -> PapermathDocuments.readPrices(bytes, "");
                case "quotation" -> PapermathDocuments.readQuotation(bytes, "");
                default -> PapermathDocuments.readPlan(bytes, "");
            }
            return List.of();
        } catch (DocumentException e) {
            return e.faults();
        }
    }
}
