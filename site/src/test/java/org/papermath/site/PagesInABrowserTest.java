package org.papermath.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The pages as a real browser has them, from their files, in light and in dark, on a telephone and on a desk: nothing that
 * axe-core finds against WCAG 2.0 to 2.2 at level A or AA, and no page that scrolls sideways.
 */
@Tag("browser")
class PagesInABrowserTest {
    private static final List<Integer> WIDTHS = List.of(360, 1280);
    private static final int AT_ONCE = 7;

    /** Runs in the page: opens what is folded, asks axe-core, and tells what it says and how wide the page came out. */
    private static final String ASK = """
            <script src="axe.js"></script>
            <script>addEventListener("load", function () {
              document.querySelectorAll("details").forEach(function (one) { one.open = true; });
              axe.run(document, {runOnly: {type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}})
                .then(function (found) {
                  parent.postMessage({
                    width: innerWidth,
                    page: location.pathname.replace(/.*asked-(.*)\\.html/, "$1"),
                    over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
                    passes: found.passes.length,
                    violations: found.violations.map(function (one) {
                      return one.id + ": " + one.nodes.length + " × " + one.help + "; " + one.nodes.slice(0, 4)
                        .map(function (node) { return node.target.join(" ") + " " + node.html.slice(0, 120); }).join(" | ");
                    })
                  }, "*");
                }, function (error) { parent.postMessage({error: String(error)}, "*"); });
            });</script>
            """;

    @TempDir
    static Path out;

    @BeforeAll
    static void build() throws IOException {
        Path here = Path.of("").toAbsolutePath();
        SiteBuilder.build(Files.exists(here.resolve("LICENSE")) ? here : here.getParent(), out);
        try (InputStream axe = PagesInABrowserTest.class.getResourceAsStream("/axe.min.js")) {
            assertThat(axe).isNotNull();
            Files.write(out.resolve("axe.js"), axe.readAllBytes());
        }
    }

    /** The pages of the menu, and the making cards to print that they lead to. */
    @ParameterizedTest(name = "dark {0}")
    @ValueSource(booleans = {false, true})
    void nothingIsFoundAgainstThePages(boolean dark) throws IOException, InterruptedException {
        List<String> pages = new ArrayList<>(List.of("midwinter-concert-card", "first-frost-card"));
        SiteBuilder.pages().forEach(page -> pages.add(page.name()));
        int asked = 0;
        for (int from = 0; from < pages.size(); from += AT_ONCE) {
            List<String> some = pages.subList(from, Math.min(from + AT_ONCE, pages.size()));
            for (String page : some) {
                Files.writeString(
                        out.resolve("asked-" + page + ".html"),
                        Files.readString(out.resolve(page + ".html")).replace("</body>", ASK + "</body>"));
            }
            for (JsonNode one : ask(some, dark)) {
                assertThat(one.has("error")).as(one.toString()).isFalse();
                String page =
                        one.get("page").asString() + " at " + one.get("width").asInt();
                assertThat(one.get("passes").asInt()).as(page).isGreaterThan(5);
                assertThat(violations(one)).as(page).isEmpty();
                assertThat(one.get("over").asInt())
                        .as(page + " scrolls sideways")
                        .isZero();
                asked++;
            }
        }
        assertThat(asked).isEqualTo(WIDTHS.size() * pages.size());
    }

    /** What is wrong is seen: the checker is not asleep. */
    @ParameterizedTest(name = "dark {0}")
    @ValueSource(booleans = {false, true})
    void whatIsWrongIsFound(boolean dark) throws IOException, InterruptedException {
        String grey = dark ? "#444" : "#ccc";
        Files.writeString(
                out.resolve("asked-wrong.html"),
                Files.readString(out.resolve("index.html"))
                        .replace(
                                "</body>",
                                "<p style=\"color:" + grey + "\">faint</p><img src=\"days.svg\">"
                                        + "<p style=\"width:90rem\">wide</p>" + ASK + "</body>"));
        List<JsonNode> found = ask(List.of("wrong"), dark);
        assertThat(found).hasSize(WIDTHS.size());
        for (JsonNode one : found) {
            assertThat(violations(one)).hasSize(2).anyMatch(text -> text.startsWith("color-contrast"));
            assertThat(violations(one)).anyMatch(text -> text.startsWith("image-alt"));
            assertThat(one.get("over").asInt()).isPositive();
        }
    }

    private static List<String> violations(JsonNode one) {
        List<String> violations = new ArrayList<>();
        one.get("violations").forEach(text -> violations.add(text.asString()));
        return violations;
    }

    private static List<JsonNode> ask(List<String> pages, boolean dark) throws IOException, InterruptedException {
        StringBuilder around =
                new StringBuilder("<!doctype html><meta charset=\"utf-8\"><pre id=\"told\"></pre><script>"
                        + "var all=[];addEventListener(\"message\",function(e){all.push(e.data);"
                        + "document.getElementById(\"told\").textContent=JSON.stringify(all)});</script>");
        for (String page : pages) {
            for (int width : WIDTHS) {
                around.append("<iframe src=\"asked-")
                        .append(page)
                        .append(".html\" style=\"border:0;height:900px;width:")
                        .append(width)
                        .append("px\"></iframe>");
            }
        }
        Files.writeString(out.resolve("around.html"), around);
        String dom = browse("around.html", "--blink-settings=preferredColorScheme=" + (dark ? 0 : 1));
        Matcher told = Pattern.compile("(?s)<pre id=\"told\">(.*?)</pre>").matcher(dom);
        assertThat(told.find()).as(dom).isTrue();
        List<JsonNode> found = new ArrayList<>();
        if (!told.group(1).isEmpty()) {
            JsonMapper.builder()
                    .build()
                    .readTree(told.group(1)
                            .replace("&lt;", "<")
                            .replace("&gt;", ">")
                            .replace("&nbsp;", " ")
                            .replace("&amp;", "&"))
                    .forEach(found::add);
        }
        return found;
    }

    /** Words typed into the field find the part that answers them, and a filter leaves the rows that have them. */
    @Test
    void searchAndFiltersFind() throws IOException, InterruptedException {
        String typing = """
                <script>addEventListener("load", function () {
                  var field = document.getElementById("seek");
                  field.value = "couched recharge";
                  field.dispatchEvent(new Event("input"));
                  var filter = document.querySelector(".filter input");
                  filter.value = "loft rejects";
                  filter.dispatchEvent(new Event("input"));
                });</script>
                """;
        String html = Files.readString(out.resolve("assumptions.html"));
        Files.writeString(out.resolve("typed.html"), html.replace("</body>", typing + "</body>"));
        String dom = browse("typed.html", "--disable-gpu");
        String found = dom.substring(dom.indexOf("<div id=\"found\""), dom.indexOf("<div class=\"frame\""));
        assertThat(found).contains("href=\"questions.html#g1\"", "<mark>").doesNotContain("Nothing has all");
        assertThat(dom).doesNotContain("id=\"search\" role=\"search\" hidden");
        Matcher left =
                Pattern.compile("<span role=\"status\">(\\d+) of (\\d+)</span>").matcher(dom);
        assertThat(left.find()).isTrue();
        assertThat(Integer.parseInt(left.group(1))).isLessThan(Integer.parseInt(left.group(2)));
    }

    private static String browse(String file, String option) throws IOException, InterruptedException {
        Path dom = out.resolve("dom.txt");
        Process process = new ProcessBuilder(
                        browser(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--virtual-time-budget=60000",
                        "--window-size=1700,1000",
                        "--user-data-dir=" + out.resolve("profile"),
                        option,
                        "--dump-dom",
                        out.resolve(file).toUri().toString())
                .redirectError(out.resolve("log").toFile())
                .redirectOutput(dom.toFile())
                .start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS))
                .as("the browser came to an end")
                .isTrue();
        return Files.readString(dom, StandardCharsets.UTF_8);
    }

    private static String browser() {
        String named = System.getProperty("papermath.browser", "");
        if (!named.isEmpty()) {
            return named;
        }
        for (String place : System.getenv("PATH").split(File.pathSeparator)) {
            for (String name : List.of("chromium", "chromium-browser", "google-chrome")) {
                Path file = Path.of(place, name);
                if (Files.isExecutable(file)) {
                    return file.toString();
                }
            }
        }
        throw new AssertionError("no browser on the path; name one with -Dpapermath.browser=…");
    }
}
