package org.papermath.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import org.papermath.cost.PriceList;
import org.papermath.cost.Quotation;
import org.papermath.json.mapping.OrderMapping;
import org.papermath.json.mapping.PlanMapping;
import org.papermath.json.mapping.PricesMapping;
import org.papermath.json.mapping.QuotationMapping;
import org.papermath.json.mapping.RecipeMapping;
import org.papermath.json.mapping.RecordMapping;
import org.papermath.json.mapping.StudioMapping;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.EmptyRecord;
import org.papermath.plan.MakingPlan;
import org.papermath.record.BatchRecord;

/**
 * Reads and writes the documents of the library: orders, recipes, studios, records, plans, lists of
 * prices and quotations.
 *
 * <p>All faults of a document, and of those it refers to, are reported at once. What is read can be written again:
 * references stay references, and members of others, whose names begin with {@code x-}, stay where they were. Amounts
 * are written with the unit they were read in. What could not be read again is not written: a name longer than 200
 * characters or with a control character or one of the signs {@code [ ] @} in it, or more than 1000 of one thing, is
 * refused with a {@link org.papermath.quantity.Refused}.
 *
 * <pre>{@code
 * Document<OrderDocument> read = PapermathDocuments.readOrder(folder.resolve("order.json"));
 * MakingPlan plan = MakingPlan.of(read.value().order(), read.value().studio());
 * out.println(MakingCard.of(plan));
 * String text = PapermathDocuments.writePlan(plan, "studio notebook", "2.1");
 * DocumentFiles.save(folder.resolve("plan.json"), text);
 * }</pre>
 */
public final class PapermathDocuments {
    private static final DocumentReader<OrderDocument> ORDERS =
            DocumentReader.of(OrderMapping.ORDER, OrderMapping::read).withShortLists(list -> true);
    private static final DocumentReader<MakingPlan> PLANNED =
            DocumentReader.of(OrderMapping.ORDER, OrderMapping::planned).withShortLists(list -> true);
    private static final DocumentReader<Recipe> RECIPES =
            DocumentReader.of(OrderMapping.RECIPE, RecipeMapping::read).withShortLists(list -> true);
    private static final DocumentReader<Studio> STUDIOS =
            DocumentReader.of(OrderMapping.STUDIO, StudioMapping::read).withShortLists(list -> true);
    private static final DocumentReader<BatchRecord> RECORDS = DocumentReader.of(
                    RecordMapping.RECORD, RecordMapping::read)
            .withShortLists(list -> !list.startsWith("/measured"));
    private static final DocumentReader<PlanDocument> PLANS = DocumentReader.of(
                    PlanMapping.PLAN, in -> PlanMapping.read(in).map(PlanDocument::new))
            .withShortLists(list -> list.startsWith("/order/") || list.startsWith("/studio/"));

    private static final DocumentReader<PriceList> PRICES =
            DocumentReader.of(PricesMapping.PRICES, PricesMapping::read).withShortLists(list -> true);
    private static final DocumentReader<Quotation> QUOTATIONS = DocumentReader.of(
                    QuotationMapping.QUOTATION, QuotationMapping::read)
            .withShortLists(list -> true);

    private PapermathDocuments() {}

    /**
     * Reads an order that refers to no other document.
     *
     * @param text the document
     * @return the order and its studio
     * @throws DocumentException if the document has faults
     */
    public static Document<OrderDocument> readOrder(String text) {
        Objects.requireNonNull(text, "text");
        return ORDERS.read(text);
    }

    /**
     * Reads an order.
     *
     * @param text the document
     * @param resolver finds the recipes and the studio it refers to
     * @return the order and its studio
     * @throws DocumentException if a document has faults
     */
    public static Document<OrderDocument> readOrder(String text, DocumentResolver resolver) {
        Objects.requireNonNull(text, "text");
        return readOrder(text.getBytes(StandardCharsets.UTF_8), "", resolver);
    }

    /**
     * Reads an order.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @param resolver finds the recipes and the studio it refers to
     * @return the order and its studio
     * @throws DocumentException if a document has faults
     */
    public static Document<OrderDocument> readOrder(byte[] bytes, String name, DocumentResolver resolver) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(resolver, "resolver");
        return ORDERS.following(resolver).read(bytes, name);
    }

    /**
     * Reads an order from a file. References are followed in its folder and below.
     *
     * @param file the file
     * @return the order and its studio
     * @throws DocumentException if a document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<OrderDocument> readOrder(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return ORDERS.read(file);
    }

    /**
     * Reads an order and plans it. What {@link MakingPlan#of(org.papermath.order.Order, org.papermath.order.Studio)} refuses
     * is a fault too, with the place of what it is refused for: the member of the recipe or piece, the fibre, the value of the
     * studio's own, or else the recipe, the piece or the order.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @param resolver finds the recipes and the studio it refers to
     * @return the plan, with bands
     * @throws DocumentException if a document has faults or the order cannot be planned
     */
    public static MakingPlan planOrder(byte[] bytes, String name, DocumentResolver resolver) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(resolver, "resolver");
        return PLANNED.following(resolver).read(bytes, name).value();
    }

    /**
     * Reads an order from a file and plans it, as {@link #planOrder(byte[], String, DocumentResolver)} does. References are
     * followed in its folder and below.
     *
     * @param file the file
     * @return the plan, with bands
     * @throws DocumentException if a document has faults or the order cannot be planned
     * @throws IOException if the file cannot be opened
     */
    public static MakingPlan planOrder(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return PLANNED.read(file).value();
    }

    /**
     * Reads a recipe.
     *
     * @param text the document
     * @return the recipe
     * @throws DocumentException if the document has faults
     */
    public static Document<Recipe> readRecipe(String text) {
        Objects.requireNonNull(text, "text");
        return RECIPES.read(text);
    }

    /**
     * Reads a recipe.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @return the recipe
     * @throws DocumentException if the document has faults
     */
    public static Document<Recipe> readRecipe(byte[] bytes, String name) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        return RECIPES.read(bytes, name);
    }

    /**
     * Reads a recipe from a file.
     *
     * @param file the file
     * @return the recipe
     * @throws DocumentException if the document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<Recipe> readRecipe(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return RECIPES.read(file);
    }

    /**
     * Reads a studio.
     *
     * @param text the document
     * @return the studio
     * @throws DocumentException if the document has faults
     */
    public static Document<Studio> readStudio(String text) {
        Objects.requireNonNull(text, "text");
        return STUDIOS.read(text);
    }

    /**
     * Reads a studio.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @return the studio
     * @throws DocumentException if the document has faults
     */
    public static Document<Studio> readStudio(byte[] bytes, String name) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        return STUDIOS.read(bytes, name);
    }

    /**
     * Reads a studio from a file.
     *
     * @param file the file
     * @return the studio
     * @throws DocumentException if the document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<Studio> readStudio(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return STUDIOS.read(file);
    }

    /**
     * Reads a record. Many of them in one file are read by {@link RecordLines}.
     *
     * @param text the document
     * @return the record
     * @throws DocumentException if the document has faults
     */
    public static Document<BatchRecord> readRecord(String text) {
        Objects.requireNonNull(text, "text");
        return RECORDS.read(text);
    }

    /**
     * Reads a record.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @return the record
     * @throws DocumentException if the document has faults
     */
    public static Document<BatchRecord> readRecord(byte[] bytes, String name) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        return RECORDS.read(bytes, name);
    }

    /**
     * Reads a record from a file.
     *
     * @param file the file
     * @return the record
     * @throws DocumentException if the document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<BatchRecord> readRecord(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return RECORDS.read(file);
    }

    /**
     * Reads a plan: what it was made from and the figures it gave. {@link PlanDocument#moved()} makes it again and says
     * which figures are others now.
     *
     * @param text the document
     * @return the plan
     * @throws DocumentException if the document has faults
     */
    public static Document<PlanDocument> readPlan(String text) {
        Objects.requireNonNull(text, "text");
        return PLANS.read(text);
    }

    /**
     * Reads a plan.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @return the plan
     * @throws DocumentException if the document has faults
     */
    public static Document<PlanDocument> readPlan(byte[] bytes, String name) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        return PLANS.read(bytes, name);
    }

    /**
     * Reads a plan from a file.
     *
     * @param file the file
     * @return the plan
     * @throws DocumentException if the document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<PlanDocument> readPlan(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return PLANS.read(file);
    }

    /**
     * Reads a list of prices.
     *
     * @param text the document
     * @return the list of prices
     * @throws DocumentException if the document has faults
     */
    public static Document<PriceList> readPrices(String text) {
        Objects.requireNonNull(text, "text");
        return PRICES.read(text);
    }

    /**
     * Reads a list of prices.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @return the list of prices
     * @throws DocumentException if the document has faults
     */
    public static Document<PriceList> readPrices(byte[] bytes, String name) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        return PRICES.read(bytes, name);
    }

    /**
     * Reads a list of prices from a file.
     *
     * @param file the file
     * @return the list of prices
     * @throws DocumentException if the document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<PriceList> readPrices(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return PRICES.read(file);
    }

    /**
     * Reads a quotation.
     *
     * @param text the document
     * @return the quotation
     * @throws DocumentException if the document has faults
     */
    public static Document<Quotation> readQuotation(String text) {
        Objects.requireNonNull(text, "text");
        return QUOTATIONS.read(text);
    }

    /**
     * Reads a quotation.
     *
     * @param bytes the document, in UTF-8
     * @param name its name, for messages
     * @return the quotation
     * @throws DocumentException if the document has faults
     */
    public static Document<Quotation> readQuotation(byte[] bytes, String name) {
        Objects.requireNonNull(bytes, "bytes");
        Objects.requireNonNull(name, "name");
        return QUOTATIONS.read(bytes, name);
    }

    /**
     * Reads a quotation from a file.
     *
     * @param file the file
     * @return the quotation
     * @throws DocumentException if the document has faults
     * @throws IOException if the file cannot be opened
     */
    public static Document<Quotation> readQuotation(Path file) throws IOException {
        Objects.requireNonNull(file, "file");
        return QUOTATIONS.read(file);
    }

    /**
     * Writes an order. Recipes and a studio that were read from other documents are written as references to them.
     *
     * @param document the order and its studio
     * @return the text, with a line break at its end
     */
    public static String writeOrder(Document<OrderDocument> document) {
        Objects.requireNonNull(document, "document");
        return DocumentWriter.write(OrderMapping.ORDER, document, OrderMapping::write);
    }

    /**
     * Writes a recipe.
     *
     * @param document the recipe
     * @return the text, with a line break at its end
     */
    public static String writeRecipe(Document<Recipe> document) {
        Objects.requireNonNull(document, "document");
        return DocumentWriter.write(OrderMapping.RECIPE, document, RecipeMapping::write);
    }

    /**
     * Writes a studio.
     *
     * @param document the studio
     * @return the text, with a line break at its end
     */
    public static String writeStudio(Document<Studio> document) {
        Objects.requireNonNull(document, "document");
        return DocumentWriter.write(OrderMapping.STUDIO, document, StudioMapping::write);
    }

    /**
     * Writes a record. What was planned and what was measured stand apart.
     *
     * @param document the record
     * @return the text, with a line break at its end
     */
    public static String writeRecord(Document<BatchRecord> document) {
        Objects.requireNonNull(document, "document");
        return DocumentWriter.write(RecordMapping.RECORD, document, RecordMapping::write);
    }

    /**
     * Writes an empty record to fill in: what is to be read stands blank, and what is planned beside it under
     * {@code "planned"}. Filled in, it is read by {@link #readRecord(String)}; what is left blank is no reading.
     *
     * @param empty the empty record
     * @return the text, with a line break at its end
     */
    public static String writeEmptyRecord(EmptyRecord empty) {
        Objects.requireNonNull(empty, "empty");
        return RecordMapping.emptied(writeRecord(Document.of(RecordMapping.patterns(empty))));
    }

    /**
     * Writes a plan: the order and the studio it was made from, the edition of the assumptions, every setting and every
     * forecast with its band, these to twelve digits. There is no time of writing in it: the same plan gives the same
     * text. References and the members of others are not kept; a plan stands alone.
     *
     * @param plan the plan
     * @param program the program that writes, for whoever reads it later
     * @param version the version of that program
     * @return the text, with a line break at its end
     */
    public static String writePlan(MakingPlan plan, String program, String version) {
        Objects.requireNonNull(program, "program");
        Objects.requireNonNull(version, "version");
        Objects.requireNonNull(plan, "plan");
        return DocumentWriter.write(
                PlanMapping.PLAN, Document.of(plan).writtenBy(program, version), PlanMapping::write);
    }

    /**
     * Writes a plan that was read, with the figures it had then.
     *
     * @param document the plan
     * @return the text, with a line break at its end
     * @throws IllegalArgumentException if it is not stated who wrote it
     */
    public static String writePlan(Document<PlanDocument> document) {
        Objects.requireNonNull(document, "document");
        if (document.writtenBy().isEmpty()) {
            throw new IllegalArgumentException("a plan says who wrote it: use writtenBy(program, version)");
        }
        return DocumentWriter.write(PlanMapping.PLAN, document, (out, plan) -> PlanMapping.write(out, plan.written()));
    }

    /**
     * Writes a list of prices.
     *
     * @param document the list
     * @return the text, with a line break at its end
     */
    public static String writePrices(Document<PriceList> document) {
        Objects.requireNonNull(document, "document");
        return DocumentWriter.write(PricesMapping.PRICES, document, PricesMapping::write);
    }

    /**
     * Writes a quotation. Its sums follow from its lines and are not written.
     *
     * @param document the quotation
     * @return the text, with a line break at its end
     */
    public static String writeQuotation(Document<Quotation> document) {
        Objects.requireNonNull(document, "document");
        return DocumentWriter.write(QuotationMapping.QUOTATION, document, QuotationMapping::write);
    }
}
