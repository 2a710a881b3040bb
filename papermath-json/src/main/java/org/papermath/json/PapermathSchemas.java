package org.papermath.json;

import java.util.List;
import java.util.Objects;
import org.papermath.json.mapping.OrderMapping;
import org.papermath.json.mapping.PlanMapping;
import org.papermath.json.mapping.PricesMapping;
import org.papermath.json.mapping.QuotationMapping;
import org.papermath.json.mapping.RecordMapping;
import org.papermath.json.schema.DocumentSchemas;
import org.papermath.json.schema.PriceSchemas;
import org.papermath.json.schema.RecordSchemas;
import org.papermath.json.schema.SchemaText;
import org.papermath.json.schema.StudioSchemas;

/**
 * JSON Schemas of the documents, in draft 2020-12, for editors and other programs.
 *
 * <p>Whatever the reader accepts, the schema accepts. Whatever is wrong with the structure of a document both refuse.
 * Faults with one of the codes {@link FaultCodes#seenByTheReaderOnly()} are seen by the reader only: they concern the
 * text before it is JSON, other files, names given elsewhere, and what the values mean.
 */
public final class PapermathSchemas {
    private static final List<String> NAMES =
            List.of("order", "recipe", "studio", "record", "plan", "prices", "quotation");

    private PapermathSchemas() {}

    /**
     * Returns the documents that have a schema.
     *
     * @return an unmodifiable list of their names, as they stand after {@code papermath/} in the head
     */
    public static List<String> names() {
        return NAMES;
    }

    /**
     * Returns the schema of a document.
     *
     * @param name one of {@link #names()}
     * @return the schema, as JSON with a line break at its end
     * @throws IllegalArgumentException if there is no such document
     */
    public static String text(String name) {
        Objects.requireNonNull(name, "name");
        return switch (name) {
            case "order" -> SchemaText.of(OrderMapping.ORDER, DocumentSchemas.order(), DocumentSchemas::definition);
            case "recipe" -> SchemaText.of(OrderMapping.RECIPE, DocumentSchemas.recipe(), DocumentSchemas::definition);
            case "studio" -> SchemaText.of(OrderMapping.STUDIO, StudioSchemas.studio(), DocumentSchemas::definition);
            case "record" -> SchemaText.of(RecordMapping.RECORD, RecordSchemas.record(), DocumentSchemas::definition);
            case "plan" -> SchemaText.of(PlanMapping.PLAN, DocumentSchemas.plan(), DocumentSchemas::definition);
            case "prices" -> SchemaText.of(PricesMapping.PRICES, PriceSchemas.prices(), DocumentSchemas::definition);
            case "quotation" ->
                SchemaText.of(QuotationMapping.QUOTATION, PriceSchemas.quotation(), DocumentSchemas::definition);
            default ->
                throw new IllegalArgumentException(
                        "no document is called \"" + name + "\"; there are " + String.join(", ", NAMES));
        };
    }
}
