package org.papermath.examples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.papermath.card.MakingCard;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.json.Document;
import org.papermath.json.DocumentException;
import org.papermath.json.Fault;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.PapermathException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * An order as it is typed into a form. It is made into an order document, so that what is wrong comes back with the place of a
 * value, and each place belongs to a field.
 */
final class OrderForm {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Pattern SIDES = Pattern.compile("(.+?)\\s*(?:×|\\bx\\b|\\bby\\b)\\s*(.+)");
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    /** A field: its name in the form, what stands before it, what it holds at first, and where its value goes. */
    private enum Field {
        ORDER("order", "Order", "winter cards", "/name"),
        DUE("due", "The parcel leaves on (may be left out)", "", "/due"),
        PIECE("piece", "Piece", "card", "/pieces/0/name"),
        COUNT("count", "How many", "40", "/pieces/0/count"),
        SIZE("size", "Size: a format, or two sides", "ISO A6", "/pieces/0/size"),
        GRAMMAGE("grammage", "Weight", "220 g/m2", "/pieces/0/grammage"),
        FIBRE("fibre", "Fibre", "cotton rag", "/recipes/0/furnish"),
        BEATING("beating", "Beaten for", "3 h", "/recipes/0/beating"),
        ENVELOPE("envelope", "Envelope for each", "", "/pieces/1");

        private final String id;
        private final String label;
        private final String first;
        private final String pointer;

        Field(String id, String label, String first, String pointer) {
            this.id = id;
            this.label = label;
            this.first = first;
            this.pointer = pointer;
        }
    }

    private final Map<Field, String> typed;
    private final Map<Field, List<String>> faults = new LinkedHashMap<>();
    private final List<String> ofAll = new ArrayList<>();

    private OrderForm(Map<Field, String> typed) {
        this.typed = typed;
    }

    /** The form with an order to change. */
    static OrderForm empty() {
        Map<Field, String> first = new LinkedHashMap<>();
        for (Field field : Field.values()) {
            first.put(field, field.first);
        }
        return new OrderForm(first);
    }

    /** The form as it was sent; a field that was not sent is empty. */
    static OrderForm of(Map<String, String> sent) {
        Map<Field, String> typed = new LinkedHashMap<>();
        for (Field field : Field.values()) {
            typed.put(field, sent.getOrDefault(field.id, "").strip());
        }
        return new OrderForm(typed);
    }

    /** The making card as a page; empty if the order cannot be read or planned, and {@link #page()} then says why. */
    Optional<String> card() {
        try {
            OrderDocument read = PapermathDocuments.readOrder(document()).value();
            return Optional.of(
                    MakingCard.of(MakingPlan.of(read.order(), read.studio())).page());
        } catch (DocumentException e) {
            e.faults().forEach(this::add);
        } catch (PapermathException e) {
            ofAll.add(e.getMessage());
        }
        return Optional.empty();
    }

    private void add(Fault fault) {
        for (Field field : Field.values()) {
            if (fault.pointer().equals(field.pointer) || fault.pointer().startsWith(field.pointer + "/")) {
                faults.computeIfAbsent(field, one -> new ArrayList<>()).add(fault.text());
                return;
            }
        }
        // What is missing has the place of what it is missing in.
        ofAll.add(fault.text());
    }

    private String document() {
        ObjectNode order = JSON.createObjectNode();
        order.put("format", "papermath/order").put("version", "1.0");
        put(order, "name", Field.ORDER);
        put(order, "due", Field.DUE);
        ObjectNode recipe = order.putArray("recipes").addObject();
        recipe.put("name", "the stuff");
        recipe.putArray("furnish").addObject().put("fibre", typed(Field.FIBRE)).put("share", "100 %");
        put(recipe, "beating", Field.BEATING);
        order.set("studio", studio());
        ArrayNode pieces = order.putArray("pieces");
        ObjectNode piece = pieces.addObject();
        put(piece, "name", Field.PIECE);
        boolean whole = WHOLE.matcher(typed(Field.COUNT)).matches();
        if (whole) {
            piece.put("count", Integer.parseInt(typed(Field.COUNT)));
        } else {
            put(piece, "count", Field.COUNT);
        }
        piece.put("recipe", "the stuff");
        Matcher sides = SIDES.matcher(typed(Field.SIZE));
        if (sides.matches()) {
            piece.putArray("size").add(sides.group(1)).add(sides.group(2));
        } else {
            put(piece, "size", Field.SIZE);
        }
        put(piece, "grammage", Field.GRAMMAGE);
        // A count that is wrong is said once.
        if (whole && !typed(Field.ENVELOPE).isEmpty()) {
            ObjectNode envelope = pieces.addObject();
            envelope.put("name", typed(Field.PIECE) + " envelope");
            envelope.set("count", piece.get("count"));
            envelope.put("recipe", "the stuff").put("grammage", "95 g/m2");
            envelope.put("envelopeFor", typed(Field.PIECE)).put("style", typed(Field.ENVELOPE));
        }
        return JSON.writeValueAsString(order);
    }

    /** The studio as it stands inside another document: without the head of its own. */
    private static JsonNode studio() {
        ObjectNode studio = (ObjectNode) JSON.readTree(PapermathDocuments.writeStudio(Document.of(Embed.studio())));
        studio.remove("format");
        studio.remove("version");
        return studio;
    }

    private String typed(Field field) {
        return typed.getOrDefault(field, "");
    }

    private void put(ObjectNode into, String member, Field field) {
        if (!typed(field).isEmpty()) {
            into.put(member, typed(field));
        }
    }

    /** The form as a page, with what is wrong beside its field. */
    String page() {
        StringBuilder out = new StringBuilder("""
                <!DOCTYPE html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <title>An order for paper</title>
                <style>
                body { font: 1rem/1.5 sans-serif; max-width: 40rem; margin: 2rem auto; padding: 0 1rem; color: #222 }
                label { display: block; margin-top: 1rem; font-weight: bold }
                input, select { font: inherit; width: 100%; box-sizing: border-box; padding: .4rem; border: 1px solid #666 }
                .fault { color: #a00; margin: .2rem 0 0 }
                [aria-invalid] { border: 2px solid #a00 }
                button { font: inherit; margin: 1.5rem 0; padding: .5rem 1.5rem }
                </style>
                </head>
                <body>
                <h1>An order for paper</h1>
                <p>It is planned for an invented studio of one room, and comes back as a making card to print.</p>
                """);
        ofAll.forEach(text -> out.append("<p class=\"fault\" role=\"alert\">")
                .append(escaped(text))
                .append("</p>\n"));
        out.append("<form method=\"post\" action=\"/card\">\n");
        for (Field field : Field.values()) {
            List<String> wrong = faults.getOrDefault(field, List.of());
            out.append("<label for=\"")
                    .append(field.id)
                    .append("\">")
                    .append(escaped(field.label))
                    .append("</label>\n");
            String marks = wrong.isEmpty() ? "" : " aria-invalid=\"true\" aria-describedby=\"" + field.id + "-fault\"";
            if (field == Field.ENVELOPE) {
                select(field, marks, out);
            } else {
                out.append("<input id=\"")
                        .append(field.id)
                        .append("\" name=\"")
                        .append(field.id)
                        .append("\" value=\"")
                        .append(escaped(typed(field)))
                        .append('"')
                        .append(marks)
                        .append(">\n");
            }
            if (!wrong.isEmpty()) {
                out.append("<div id=\"").append(field.id).append("-fault\">\n");
                wrong.forEach(text ->
                        out.append("<p class=\"fault\">").append(escaped(text)).append("</p>\n"));
                out.append("</div>\n");
            }
        }
        return out.append("<button>Plan it</button>\n</form>\n</body>\n</html>\n")
                .toString();
    }

    private void select(Field field, String marks, StringBuilder out) {
        out.append("<select id=\"")
                .append(field.id)
                .append("\" name=\"")
                .append(field.id)
                .append('"')
                .append(marks)
                .append(">\n");
        option("", "none", typed(field), out);
        for (EnvelopeStyle style : EnvelopeStyle.values()) {
            option(style.words(), style.words(), typed(field), out);
        }
        out.append("</select>\n");
    }

    private static void option(String value, String words, String chosen, StringBuilder out) {
        out.append("<option value=\"")
                .append(escaped(value))
                .append('"')
                .append(value.equals(chosen) ? " selected" : "")
                .append('>')
                .append(escaped(words))
                .append("</option>\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
