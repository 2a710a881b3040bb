package org.papermath.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.card.MakingCard;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Code;
import org.papermath.evidence.Codes;
import org.papermath.evidence.Scope;
import org.papermath.json.FaultCodes;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.json.PapermathSchemas;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Units;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The pages that are written. */
class SiteBuilderTest {
    private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"]+)\"");

    private static final String SAMPLE = "examples/src/main/resources/org/papermath/examples/midwinter-concert/";

    private static final Map<String, String> READ = new HashMap<>();

    @TempDir
    static Path out;

    @BeforeAll
    static void build() throws IOException {
        SiteBuilder.build(top(), out);
    }

    private static Path top() {
        Path here = Path.of("").toAbsolutePath();
        return Files.exists(here.resolve("LICENSE")) ? here : here.getParent();
    }

    private static String html(String name) throws IOException {
        String page = READ.get(name);
        if (page == null) {
            // Whether a listing can be reached by the keyboard is no part of its text.
            page = Files.readString(out.resolve(name + ".html")).replace("<pre tabindex=\"0\">", "<pre>");
            READ.put(name, page);
        }
        return page;
    }

    @Test
    void everyPageOfTheMenuIsWrittenAndNothingIsLeftToFillIn() throws IOException {
        for (SiteBuilder.Page page : SiteBuilder.pages()) {
            assertThat(html(page.name())).contains("<h1").doesNotContain("{{", "<!-- ", "NaN");
        }
    }

    @Test
    void everyFigureOfTheSampleCouldBePlanned() throws IOException {
        assertThat(Contents.of(top()).figures().values())
                .hasSizeGreaterThan(40)
                .allSatisfy(figure -> assertThat(figure).isNotBlank().doesNotContain("not done", "null"));
    }

    @Test
    void everyLinkLeadsToAPageAPictureOrAHeading() throws IOException {
        List<String> links = new ArrayList<>();
        for (SiteBuilder.Page page : SiteBuilder.pages()) {
            Matcher link = LINK.matcher(html(page.name()));
            while (link.find()) {
                links.add(link.group(1).startsWith("#") ? page.name() + ".html" + link.group(1) : link.group(1));
            }
        }
        assertThat(links).hasSizeGreaterThan(100);
        for (String link : links) {
            String[] parts = link.split("#", 2);
            assertThat(out.resolve(parts[0])).as(link).exists();
            if (parts.length == 2) {
                assertThat(Files.readString(out.resolve(parts[0]))).as(link).contains("id=\"" + parts[1] + '"');
            }
        }
    }

    @Test
    void theColourPageShowsTheLadderAndItsLimits() throws IOException {
        ColourPage colour = ColourPage.of(top());
        String page = html("colour").replaceAll("\\s+", " ");
        for (String words : colour.matchWords()) {
            assertThat(page).contains("<li>" + words + "</li>");
        }
        assertThat(colour.ladderWords())
                .hasSize(4)
                .allSatisfy(words -> assertThat(page).contains(words));
        assertThat(page)
                .contains("a mixture comes out off by ΔE00 "
                        + Units.fourDigits(Assumptions.standard().si("colour.mixture-departure", Scope.GENERAL)))
                .contains(
                        "Three bands see less",
                        "Only what stays in the sheet",
                        "A wet sheet is not",
                        "A thin sheet shows");
        assertThat(Files.readString(out.resolve("ladder.svg")))
                .isEqualTo(colour.pictures().get("ladder.svg"));
    }

    @Test
    void everyPictureSaysWhatItShows() throws IOException {
        List<String> pictures = Contents.of(top()).pictures().keySet().stream()
                .filter(name -> name.endsWith(".svg"))
                .toList();
        assertThat(pictures)
                .contains(
                        "vat-run.svg",
                        "fibre.svg",
                        "wet-to-dry.svg",
                        "drying-curve.svg",
                        "days.svg",
                        "bands.svg",
                        "shrinkage.svg");
        for (String name : pictures) {
            String svg = Files.readString(out.resolve(name));
            assertThat(svg).as(name).contains("<title").doesNotContain("<!DOCTYPE", "NaN");
        }
        for (String name : List.of("vat-run", "fibre", "wet-to-dry", "drying-curve", "bands", "shrinkage")) {
            String svg = Files.readString(out.resolve(name + ".svg"));
            assertThat(svg).as(name).contains("role=\"img\"", "<title>", "<desc>", "viewBox=\"0 0 ");
            String title = svg.substring(svg.indexOf("<title>") + 7, svg.indexOf("</title>"));
            assertThat(html("job")).as(name).contains("<img src=\"" + name + ".svg\" alt=\"" + title + ". ");
        }
    }

    /** A tooth for each recharge, within what the plan says of the fibre; additives shift a sheet by less than half a per cent. */
    @Test
    void theVatRunIsThatOfThePlan() throws IOException {
        OrderDocument sample = PapermathDocuments.readOrder(top().resolve(SAMPLE + "order.json"))
                .value();
        MakingPlan plan = MakingPlan.of(sample.order(), sample.studio());
        Picture run = JobPictures.of(sample, plan, "programme", top().resolve(SAMPLE + "record.json"))
                .get(0);
        assertThat(run.rows()).hasSize(plan.piece("programme").counts().sheets());
        double wanted = plan.piece("programme").forming().solids().in("g");
        int teeth = 0;
        double before = 0;
        for (List<String> row : run.rows()) {
            double mass = Double.parseDouble(row.get(1).replace(" g", ""));
            assertThat(mass / wanted)
                    .as(row.toString())
                    .isBetween(
                            plan.piece("programme").vat().lightest().si() - 5e-3,
                            plan.piece("programme").vat().heaviest().si() + 5e-3);
            assertThat(row.get(2).isEmpty()).as(row.toString()).isEqualTo(before == 0 || mass < before);
            teeth += row.get(2).isEmpty() ? 0 : 1;
            before = mass;
        }
        assertThat(teeth).isEqualTo(plan.piece("programme").vat().recharges().size());
    }

    @Test
    void everyAssumptionIsShownWithBasisAndSource() throws IOException {
        String page = html("assumptions").replace("<wbr>", "");
        for (Assumption one : Assumptions.standard().all()) {
            String source = one.source().text().replace("&", "&amp;");
            assertThat(page)
                    .contains("<td><code>" + one.key() + "</code></td>")
                    .contains("<td>" + one.basis().word() + "</td>")
                    .contains("<td>" + source + "</td>");
        }
    }

    @Test
    void theAccuracyPageSaysWhatTheRowsAreWorthAndWhatNoFigureHolds() throws IOException {
        Checks checks = Checks.of(top());
        assertThat(checks.rows()).containsOnlyKeys("measured outside", "standard", "identity", "regression");
        assertThat(3 * (checks.rows().get("measured outside") + checks.rows().get("standard")))
                .isGreaterThanOrEqualTo(checks.all());
        String page = html("accuracy").replace("<wbr>", "");
        checks.rows().values().forEach(count -> assertThat(page).contains("<td>" + count + "</td>"));
        checks.figures().forEach(one -> assertThat(page).contains("<td>" + one.name() + "</td>"));
        assertThat(checks.heldByNone()).isNotEmpty();
        checks.scopesById()
                .forEach((id, scopes) -> assertThat(page)
                        .contains("<td><code>" + id + "</code></td><td>" + String.join(", ", scopes) + "</td>"));
        assertThat(page).contains(", missed</td>");
        List<Checks.Figure> outside = checks.figures().stream()
                .filter(one -> !one.isFitted() && one.hasBand())
                .toList();
        long inside = outside.stream()
                .filter(one -> Double.parseDouble(one.published()) >= end(one.low())
                        && Double.parseDouble(one.published()) <= end(one.high()))
                .count();
        assertThat(page.replaceAll("\\s+", " "))
                .contains("Of the " + outside.size() + " figures no default was made from that have a band, " + inside
                        + " lie inside");
        checks.figures().stream()
                .filter(Checks.Figure::hasBand)
                .forEach(one -> assertThat(page).contains("<td>" + one.low() + " – " + one.high()));
    }

    /** The number at an end of a band, open or not. */
    private static double end(String text) {
        return Double.parseDouble(text.replaceAll(" or (less|more)$", ""));
    }

    @Test
    void theCardOfTheSampleIsShown() throws IOException {
        String page = html("index");
        assertThat(page).contains("MAKING CARD");
        assertThat(MakingCard.labels().stream().filter(page::contains).count()).isGreaterThan(30);
    }

    @Test
    void everyMemberOfEverySchemaStandsOnThePageOfItsDocument() throws IOException {
        int members = 0;
        for (String name : PapermathSchemas.names()) {
            // Recipes and studios inside others have pages of their own, and so has the order in a plan.
            String page = html(name)
                    + (List.of("order", "plan", "record").contains(name)
                            ? html("recipe") + html("studio") + html("order")
                            : "");
            Set<String> all = new TreeSet<>();
            members(JsonMapper.builder().build().readTree(PapermathSchemas.text(name)), all);
            for (String member : all) {
                assertThat(page).as(name).contains("<td data-head=\"member\"><code>" + member + "</code>");
                members++;
            }
        }
        assertThat(members).isGreaterThan(250);
    }

    /** Gathers the names of members, but for the two forms of a quantity, which are the same everywhere. */
    private static void members(JsonNode schema, Set<String> all) {
        if (schema.isObject()
                && schema.path("description").asString("").startsWith("A number and its unit, one of: ")) {
            return;
        }
        schema.path("properties").properties().forEach(member -> {
            if (member.getValue().has("description") && !member.getKey().equals("ref")) {
                all.add(member.getKey());
            }
        });
        schema.forEach(one -> members(one, all));
    }

    @Test
    void everyRowOfMembersSaysWhatItIsAndHowItIsWritten() throws IOException {
        int rows = 0;
        for (String name : PapermathSchemas.names()) {
            Matcher row = Pattern.compile("<tr><td data-head=\"member\">.*").matcher(html(name));
            while (row.find()) {
                assertThat(row.group())
                        .contains("data-head=\"what it is\"")
                        .contains("data-head=\"how it is written\"")
                        .doesNotContain(
                                "data-head=\"what it is\"></td>",
                                "data-head=\"how it is written\"></td>",
                                "data-head=\"if left out\"></td>");
                rows++;
            }
        }
        assertThat(rows).isGreaterThan(350);
    }

    @Test
    void theExamplesOfThePagesAreRead() throws IOException {
        Path folder = top().resolve("examples/src/main/resources/org/papermath/examples/midwinter-concert");
        assertThat(PapermathDocuments.readOrder(folder.resolve("order.json"))
                        .value()
                        .order()
                        .pieces())
                .hasSize(3);
        assertThat(PapermathDocuments.readRecipe(folder.resolve("tide-grey.json"))
                        .notes())
                .isEmpty();
        assertThat(PapermathDocuments.readRecord(folder.resolve("record.json"))
                        .value()
                        .measurements())
                .hasSize(12);
        String page = Files.readString(top().resolve("site/pages/studio.md")).replace("\r\n", "\n");
        String own = page.substring(page.indexOf("```json\n") + 8, page.lastIndexOf("\n```"));
        String studio = Files.readString(folder.resolve("studio.json"));
        assertThat(PapermathDocuments.readStudio(studio.substring(0, studio.lastIndexOf('}')) + "," + own + "}")
                        .value()
                        .assumptions()
                        .own())
                .hasSize(1);
    }

    @Test
    void everySchemaIsServedUnderTheIdThatIsSaid() throws IOException {
        for (String name : PapermathSchemas.names()) {
            // The id is relative, so it resolves from the file it stands in to that file.
            String file = PapermathSchemas.fileName(name);
            String served = Files.readString(out.resolve(file));
            String id = JsonMapper.builder().build().readTree(served).get("$id").asString();
            assertThat(id).isEqualTo(name + "-1.0.schema.json");
            assertThat(out.resolve(file).toUri().resolve(id))
                    .isEqualTo(out.resolve(file).toUri());
            assertThat(served.replace('"' + id + '"', "\"urn:papermath:" + name + ":1.0\""))
                    .isEqualTo(PapermathSchemas.text(name));
            assertThat(html("documents")).contains("<td><code>" + id + "</code></td>");
            assertThat(html(name)).contains("href=\"" + id + "\"");
        }
    }

    @Test
    void everyFaultCodeAndAllLinesForEmbeddersAreShown() throws IOException {
        String faults = html("faults").replace("<wbr>", "");
        assertThat(FaultCodes.meanings())
                .hasSizeGreaterThan(60)
                .allSatisfy((code, meaning) ->
                        assertThat(faults).contains("<td><code>" + code + "</code></td><td>" + meaning + "</td>"));
        String programs = html("programs");
        assertThat(Contents.lines(top())).hasSizeGreaterThan(8).allSatisfy((name, block) -> {
            assertThat(block).startsWith("<pre><code>").doesNotContain("guide:").doesNotStartWith("<pre><code> ");
            assertThat(programs).contains(block);
        });
    }

    @Test
    void everyQuestionOfSmallArithmeticIsShownWithItsAnswer() throws IOException {
        String page = html("small");
        assertThat(Contents.asked(top())).hasSize(13).allSatisfy((name, block) -> {
            assertThat(block).startsWith("<p>").contains("<pre><code>").contains("&gt; ");
            assertThat(page).as(name).contains(block);
        });
    }

    @Test
    void everyQuestionIsShownWithItsTestedAnswer() throws IOException {
        String page = html("questions");
        String answers = Files.readString(top().resolve("examples/src/test/resources/questions/answers.txt"))
                .replace("\r\n", "\n");
        int shown = 0;
        for (String one : answers.split("\n(?=[BFG]\\d)")) {
            int line = one.indexOf('\n');
            String number = one.substring(0, one.indexOf(' '));
            int at = page.indexOf("<h3 id=\"" + number.toLowerCase(java.util.Locale.ROOT) + "\">");
            assertThat(at).as(number).isPositive();
            String question = page.substring(at, page.indexOf("</div>", at));
            assertThat(question)
                    .contains(Html.escape(one.substring(number.length() + 1, line)) + "</h3>")
                    .contains(
                            Html.escape(one.substring(line + 1).stripTrailing().replaceAll("(?m)^ {4}", "> ")));
            shown++;
        }
        assertThat(shown).isEqualTo(QuestionPage.count()).isGreaterThan(100);
    }

    @Test
    void theWordsOfTheTradeAreThereForPeople() throws IOException {
        String page = html("glossary");
        for (String word : List.of("furnish", "felts", "recharge", "apparent density", "daylight", "caliper")) {
            assertThat(page).contains("<dt id=\"" + word.replace(' ', '-') + "\">" + word + "</dt>");
        }
        Set<String> seen = new TreeSet<>();
        Matcher id = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
        while (id.find()) {
            assertThat(seen.add(id.group(1))).as(id.group(1)).isTrue();
        }
        assertThat(Glossary.written("beaterConsistency", "member")).isEqualTo("beater consistency");
        assertThat(Glossary.written("sheet.DensityModel", "type")).isEqualTo("density");
    }

    @Test
    void everyPageIsSearchedAndKnowsItsNeighbours() throws IOException {
        String index = Files.readString(out.resolve("search-index.js"));
        assertThat(index)
                .startsWith("window.papermathIndex=[\n{u:\"index.html\"")
                .endsWith("}\n];\n");
        List<SiteBuilder.Page> pages = SiteBuilder.pages();
        for (int i = 0; i < pages.size(); i++) {
            String page = html(pages.get(i).name());
            assertThat(index).contains("{u:\"" + pages.get(i).name() + ".html");
            assertThat(page)
                    .contains("<script src=\"site.js\" defer></script>", "<main id=\"text\">")
                    .doesNotContain("http-equiv", "src=\"http", "@import");
            if (i > 0) {
                assertThat(page)
                        .contains("<a rel=\"prev\" href=\"" + pages.get(i - 1).name() + ".html\">");
            }
            if (i + 1 < pages.size()) {
                assertThat(page)
                        .contains("<a rel=\"next\" href=\"" + pages.get(i + 1).name() + ".html\">");
            }
        }
        assertThat(html("job")).contains("<nav class=\"toc\"", "<li><a href=\"#the-vat\">The vat</a></li>");
        Matcher link = Pattern.compile("\\{u:\"([^\"]+)\"").matcher(index);
        int parts = 0;
        while (link.find()) {
            String[] at = link.group(1).split("#", 2);
            assertThat(at.length == 1 || html(at[0].replace(".html", "")).contains(" id=\"" + at[1] + '"'))
                    .as(link.group(1))
                    .isTrue();
            parts++;
        }
        assertThat(parts).isGreaterThan(400);
    }

    @Test
    void theTextOfAPartHasNoTags() {
        assertThat(SearchIndex.plain("<p>a <code>b.<wbr>c</code> &lt; d</p><p>e</p>"))
                .isEqualTo("a b.c < d e");
    }

    @Test
    void everyCodeIsShownUnderEachOfItsUses() throws IOException {
        String page = html("codes").replace("<wbr>", "");
        List<Code> all = new ArrayList<>(Codes.all());
        all.addAll(FaultCodes.ofModule());
        int rows = 0;
        for (Code code : all) {
            String cells = "<tr><td><code>" + code.name() + "</code></td><td>" + code.meaning() + "</td><td>";
            assertThat(page.split(Pattern.quote(cells), -1))
                    .as(code.name())
                    .hasSize(code.uses().size() + 1);
            rows += code.uses().size();
        }
        assertThat(page.split("<tr><td><code>", -1)).hasSize(rows + 1);
        assertThat(page)
                .contains("<td>mass, limit, guidance, (piece)</td><td></td>")
                .contains("<td></td><td>notice</td>")
                .contains("There are " + all.size() + " codes.");
        for (Code.Use use : Code.Use.values()) {
            assertThat(all).as(use.words()).anyMatch(code -> code.uses().contains(use));
        }
    }

    @Test
    void aQuotedCellMayHoldACommaAndQuotes() {
        assertThat(Contents.cells("a,\"b, c\",\"say \"\"d\"\"\",")).containsExactly("a", "b, c", "say \"d\"", "");
    }
}
