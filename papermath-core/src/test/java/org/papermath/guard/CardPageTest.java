package org.papermath.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.card.MakingCard;
import org.papermath.plan.EmptyRecord;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.xml.sax.InputSource;

/** The card as a page says what the card as text says, and stands by itself. */
class CardPageTest {
    private static final Pattern PICTURE = Pattern.compile("data:image/svg\\+xml;base64,([A-Za-z0-9+/=]+)");

    static List<MakingPlan> plans() {
        List<MakingPlan> plans = new ArrayList<>();
        GuardCases.all().forEach((name, plan) -> {
            if (plans.size() < 24 || name.contains("colours") || name.contains("shaped")) {
                try {
                    plans.add(plan.get());
                } catch (org.papermath.quantity.Refused refused) {
                    assertThat(refused.getMessage()).isNotEmpty();
                }
            }
        });
        return plans;
    }

    private static String words(String html) {
        return html.replaceAll("<style>[^<]*</style>", "")
                .replaceAll("</?(b|small)>", "")
                .replaceAll("<[^>]*>", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&apos;", "'")
                .replace("&amp;", "&")
                .replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @MethodSource("plans")
    void everyWordOfTheTextStandsOnThePage(MakingPlan plan) {
        MakingCard card = MakingCard.of(plan);
        String page = words(card.page());
        for (String line : card.lines()) {
            if (line.matches(".*, page \\d+ of \\d+.*")) {
                continue;
            }
            for (String part : line.split("\\s+")) {
                String word = part.replaceAll("[;,:.]+$", "");
                if (word.matches(".*[\\p{L}0-9].*") && !word.equals(word.toUpperCase(java.util.Locale.ROOT))) {
                    assertThat(page).contains(word);
                }
            }
        }
        for (PiecePlan piece : plan.pieces()) {
            for (EmptyRecord.Blank blank : plan.emptyRecord(
                            piece.piece().recipe(),
                            piece.name(),
                            plan.schedule().start().orElse(java.time.LocalDate.EPOCH))
                    .blanks()) {
                assertThat(page)
                        .contains(blank.what()
                                .replaceAll("\\s+", " ")
                                .replaceAll("(sheet|finished piece) \\d+\\b", "each $1")
                                .replaceAll("(rejects of) .*", "$1"));
                blank.toFill().forEach(line -> assertThat(page).contains(line.what()));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void itStandsByItselfAndIsWellFormed(MakingPlan plan) throws Exception {
        String page = MakingCard.of(plan).page();
        assertThat(page).doesNotContain("<script", "http:", "https:", "NaN", "Infinity");
        String tree = page.replace("<!DOCTYPE html>", "").replaceAll("<(meta|img)([^>]*)>", "<$1$2/>");
        var document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(tree)));
        assertThat(document.getElementsByTagName("h1").getLength()).isEqualTo(1);
        for (int i = 0; i < document.getElementsByTagName("img").getLength(); i++) {
            assertThat(document.getElementsByTagName("img")
                            .item(i)
                            .getAttributes()
                            .getNamedItem("alt")
                            .getNodeValue())
                    .isNotBlank();
        }
        Matcher picture = PICTURE.matcher(page);
        while (picture.find()) {
            String svg =
                    new String(Base64.getDecoder().decode(picture.group(1)), java.nio.charset.StandardCharsets.UTF_8);
            assertThat(svg).contains("<svg", "<title>");
        }
    }
}
