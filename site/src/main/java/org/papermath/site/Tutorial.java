package org.papermath.site;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.papermath.card.MakingCard;
import org.papermath.json.DocumentException;
import org.papermath.json.DocumentResolver;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;

/** What the page "your own order" shows: its documents as they stand in files, and what comes of them. */
record Tutorial(Map<String, String> blocks, Map<String, String> files) {
    static final String FOLDER = "site/tutorial/first-frost/";

    private static final String RECIPE = "quince-white.json";
    /** What the tutorial adds to its recipe. */
    private static final String ADDED = """
                {
                  "name": "retention aid",
                  "purpose": "retention aid",
                  "dose": "0.1 %"
                },
            """;

    private static final Pattern SECOND_PAGE = Pattern.compile("(?m)^[^\n]*, page 2 of \\d+ ");

    private static final String BEFORE_IT = "\"additives\": [\n";

    static Tutorial of(Path top) throws IOException {
        Path folder = top.resolve(FOLDER);
        String order = text(folder, "order.json");
        String recipe = text(folder, RECIPE);
        MakingPlan first = plan(folder, order, recipe);
        MakingPlan second = plan(folder, order, withAid(recipe));
        Map<String, String> blocks = new LinkedHashMap<>();
        blocks.put("tutorial-order", Html.code(order));
        blocks.put("tutorial-recipe", Html.code(recipe));
        blocks.put("tutorial-studio", Html.code(text(folder, "studio.json")));
        blocks.put("tutorial-added", Html.code(ADDED.stripIndent()));
        String card = MakingCard.of(first).toString();
        blocks.put("tutorial-card", Html.code(firstPage(card)));
        blocks.put("tutorial-look-out", Html.code(part(card, "LOOK OUT ")));
        blocks.put("tutorial-changed", Html.code(second.comparedWith(first).toString()));
        blocks.put("tutorial-slip", Html.code(slip(folder, order)));
        return new Tutorial(
                blocks,
                Map.of(
                        "first-frost-card.html",
                        MakingCard.of(second).page(),
                        "first-frost-deckle.svg",
                        second.piece("envelope")
                                .forming()
                                .shapedDeckle()
                                .orElseThrow()
                                .drawing()
                                .svg()));
    }

    private static String text(Path folder, String name) throws IOException {
        return Files.readString(folder.resolve(name)).replace("\r\n", "\n");
    }

    /** The recipe as the tutorial mends it. */
    static String withAid(String recipe) {
        return recipe.replace(BEFORE_IT, BEFORE_IT + ADDED);
    }

    private static MakingPlan plan(Path folder, String order, String recipe) {
        OrderDocument read =
                PapermathDocuments.readOrder(order, besideIt(folder, recipe)).value();
        return MakingPlan.of(read.order(), read.studio());
    }

    private static DocumentResolver besideIt(Path folder, String recipe) {
        return reference -> new DocumentResolver.Found(
                reference,
                reference.equals(RECIPE)
                        ? recipe.getBytes(StandardCharsets.UTF_8)
                        : Files.readAllBytes(folder.resolve(reference)),
                besideIt(folder, recipe));
    }

    /** What is said of a slip of the pen. */
    private static String slip(Path folder, String order) throws IOException {
        try {
            plan(folder, order.replace("\"edge\": \"shaped\"", "\"edge\": \"shape\""), text(folder, RECIPE));
        } catch (DocumentException e) {
            return e.faults().stream()
                    .map(fault -> "first-frost/order.json:" + fault.line() + ":" + fault.column() + ": " + fault.text())
                    .collect(Collectors.joining("\n"));
        }
        throw new IllegalStateException("the slip of the tutorial is not seen");
    }

    /** The first page of a card, which says how the second begins. */
    static String firstPage(String card) {
        Matcher second = SECOND_PAGE.matcher(card);
        if (!second.find()) {
            throw new IllegalStateException("the card has no second page");
        }
        return card.substring(0, second.start()).stripTrailing();
    }

    /** One part of the card, from its head to the next. */
    private static String part(String card, String head) {
        int from = card.indexOf("\n" + head) + 1;
        int end = card.indexOf("\n\n", from);
        if (from == 0 || end < 0) {
            throw new IllegalStateException("the card has no part " + head);
        }
        return card.substring(from, end);
    }
}
