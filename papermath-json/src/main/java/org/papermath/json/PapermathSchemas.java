package org.papermath.json;

import java.net.URI;
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
 *
 * <p>The {@code $id} of a text is a name that needs no place, {@code urn:papermath:order:1.0}, so that a validator can take the
 * text alone. A file that is published has its own name for an {@code $id} ({@link #published}), which leads to it.
 */
public final class PapermathSchemas {
    private static final List<String> NAMES =
            List.of("order", "recipe", "studio", "record", "plan", "prices", "quotation");

    private static final String ID = "\"$id\": \"";

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

    /**
     * Returns the name of the file a schema is published in, with the version it is for.
     *
     * @param name one of {@link #names()}
     * @return for example {@code order-1.0.schema.json}
     * @throws IllegalArgumentException if there is no such document
     */
    public static String fileName(String name) {
        return name + "-" + idOf(text(name)).substring(idOf(text(name)).lastIndexOf(':') + 1) + ".schema.json";
    }

    /**
     * Returns the schema of a document as it is published in the file {@link #fileName} says: its {@code $id} leads to that file.
     *
     * @param name one of {@link #names()}
     * @param base the address of the folder the file stands in, with a slash at its end; empty for an {@code $id} that is
     *     relative, and resolves to the file wherever it was taken from
     * @return the schema, as JSON with a line break at its end
     * @throws IllegalArgumentException if there is no such document, or the base is no address
     */
    public static String published(String name, String base) {
        Objects.requireNonNull(base, "base");
        String text = text(name);
        String id = URI.create(base).resolve(fileName(name)).toString();
        if (!id.equals(base + fileName(name))) {
            throw new IllegalArgumentException("base: \"" + base
                    + "\" is no address of a folder; it ends with a slash, as in https://example.org/schemas/");
        }
        return text.replace('"' + idOf(text) + '"', '"' + id + '"');
    }

    private static String idOf(String text) {
        int from = text.indexOf(ID) + ID.length();
        return text.substring(from, text.indexOf('"', from));
    }
}
