package org.papermath.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.plan.MakingCard;

/** The pages that are written. */
class SiteBuilderTest {
    private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"]+)\"");

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
        return Files.readString(out.resolve(name + ".html"));
    }

    @Test
    void everyPageOfTheMenuIsWrittenAndNothingIsLeftToFillIn() throws IOException {
        for (SiteBuilder.Page page : SiteBuilder.pages()) {
            assertThat(html(page.name())).contains("<h1").doesNotContain("{{", "<!-- ", "NaN");
        }
    }

    @Test
    void everyFigureOfTheSampleCouldBePlanned() throws IOException {
        assertThat(Contents.of(top()).figures().values()).hasSizeGreaterThan(40)
                .allSatisfy(figure -> assertThat(figure).isNotBlank().doesNotContain("not done", "null"));
    }

    @Test
    void everyLinkLeadsToAPageAPictureOrAHeading() throws IOException {
        List<String> links = new ArrayList<>();
        for (SiteBuilder.Page page : SiteBuilder.pages()) {
            Matcher link = LINK.matcher(html(page.name()));
            while (link.find()) {
                links.add(link.group(1));
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
    void everyAssumptionIsShownWithBasisAndSource() throws IOException {
        String page = html("assumptions").replace("<wbr>", "");
        for (Assumption one : Assumptions.standard().all()) {
            String source = one.source().text().replace("&", "&amp;");
            assertThat(page).contains("<td><code>" + one.key() + "</code></td>").contains("<td>" + one.basis().word() + "</td>")
                    .contains("<td>" + source + "</td>");
        }
    }

    @Test
    void theCardOfTheSampleIsShown() throws IOException {
        String page = html("index");
        assertThat(page).contains("MAKING CARD");
        assertThat(MakingCard.labels().stream().filter(page::contains).count()).isGreaterThan(30);
    }

    @Test
    void aQuotedCellMayHoldACommaAndQuotes() {
        assertThat(Contents.cells("a,\"b, c\",\"say \"\"d\"\"\",")).containsExactly("a", "b, c", "say \"d\"", "");
    }
}
