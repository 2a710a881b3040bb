package org.papermath.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.vat.Vat;

/** What stands on a card, whatever the studio has and however many pieces there are. */
class CardContentTest {
    private static Order order(int pieces) {
        Recipe grey = Recipe.of("grey", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(3))
                .additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                .build();
        Order.Builder order = Order.of("spring").recipe(grey).due(LocalDate.of(2027, 3, 5));
        for (int i = 1; i <= pieces; i++) {
            order.piece(Piece.of("card number " + i, 10 * i, "grey")
                    .size(mm(100 + 5 * i), mm(150))
                    .grammage(Grammage.gsm(100 + 20 * i))
                    .build());
        }
        return order.build();
    }

    private static Studio.Builder bare() {
        return Studio.of("shed")
                .beater(Beater.of("beater", litres(45), grams(900)))
                .mould(Mould.of("folio", mm(320), mm(420)));
    }

    private static Studio whole() {
        return bare().vat(Vat.of("vat", litres(70)))
                .press(Press.of("press", shortTons(20), mm(450), mm(600)))
                .felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 25))
                .dryer(Dryer.stack("stack", 40).inLayers(mm(450), mm(620)))
                .build();
    }

    private static MakingCard card(int pieces, Studio studio) {
        return MakingCard.of(MakingPlan.of(order(pieces), studio));
    }

    private static String joined(MakingCard card) {
        return card.toString().replaceAll("\\s+", " ");
    }

    private static int count(String text, String regex) {
        Matcher matcher = Pattern.compile(regex).matcher(text);
        int count = 0;
        while (matcher.find()) {
            count++;
        }
        return count;
    }

    @Test
    void piecesHaveLettersInTheOrderOfTheVatAndStandThreeToARow() {
        MakingPlan plan = MakingPlan.of(order(6), whole());
        MakingCard card = MakingCard.of(plan);
        List<String> rows = card.lines().stream()
                .filter(line -> line.matches(" {4}[A-F] card number \\d .*"))
                .toList();
        assertThat(rows).hasSize(6);
        for (int i = 0; i < 6; i++) {
            String name = rows.get(i).substring(6, 19);
            assertThat(plan.piece(name).vat().turn()).as(name).isEqualTo(i + 1);
        }
        assertThat(card.lines())
                .filteredOn(line -> line.matches("\\s+the trials .*A card.*B card.*C card.*"))
                .hasSize(1);
        assertThat(card.lines())
                .filteredOn(line -> line.matches("\\s+D card.*E card.*F card.*"))
                .isNotEmpty();
        assertThat(card.lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void aPieceThatIsAloneHasNoLetter() {
        MakingCard card = card(1, whole());
        assertThat(joined(card))
                .contains("card number 1 10 12 ")
                .doesNotContain(" A card number 1", "in the order of the vat")
                .contains("? whole, dried hot: ")
                .contains("reads: __________");
    }

    @Test
    void eachLineIsOfOneKind() {
        for (String line : card(3, whole()).lines()) {
            assertThat(line).matches("|={80}|\\[ ] .*| [~?!-]  .*| {4}.*|\\S.*");
            assertThat(line).doesNotEndWith(" ");
        }
    }

    @Test
    void aStudioWithoutVatPressOrDryerIsToldWhatItCanDo() {
        String card = joined(card(3, bare().build()));
        assertThat(card)
                .contains("3 POUR ---", "4 POST AND PRESS ---", "stock a sheet ")
                .contains("press load: ")
                .doesNotContain("recharge now", "dip by so much", "null", "NaN");
        String page = card(3, bare().build()).page();
        assertThat(page).doesNotContain("sheets by the vat alone", "felts white");
    }

    @Test
    void aDoseBelowTheScaleIsGivenAsASolution() {
        MakingPlan plan = MakingPlan.of(order(2), whole());
        double dose = plan.batch("grey").additives().get(0).productEach().in("g");
        assertThat(dose).isLessThan(1);
        Matcher said = Pattern.compile("1\\. ([0-9.]+) g \\(as ([0-9.]+) g of a 1 % solution\\) aid")
                .matcher(joined(MakingCard.of(plan)));
        assertThat(said.find()).isTrue();
        assertThat(Double.parseDouble(said.group(1))).isCloseTo(dose, within(1e-9));
        assertThat(Double.parseDouble(said.group(2))).isCloseTo(100 * dose, within(0.5));
    }

    @Test
    void trialsHaveTheirAimAndToleranceAndAPressedSheetItsBand() {
        MakingPlan plan = MakingPlan.of(order(1), whole());
        PiecePlan piece = plan.pieces().get(0);
        double solids = piece.forming().solids().in("g");
        Matcher trial =
                Pattern.compile("whole, dried hot: ([0-9.]+) g ±([0-9.]+)").matcher(joined(MakingCard.of(plan)));
        assertThat(trial.find()).isTrue();
        assertThat(Double.parseDouble(trial.group(1))).isCloseTo(solids, within(0.01 * solids));
        assertThat(Double.parseDouble(trial.group(2))).isCloseTo(0.05 * solids, within(0.05 * 0.05 * solids));
        Matcher pressed = Pattern.compile("a pressed sheet: ([0-9.]+) \\(([0-9.]+)–([0-9.]+)\\) g")
                .matcher(joined(MakingCard.of(plan)));
        assertThat(pressed.find()).isTrue();
        assertThat(Double.parseDouble(pressed.group(2)))
                .isCloseTo(solids / piece.solids().high().si(), within(0.05 * solids));
        assertThat(Double.parseDouble(pressed.group(3)))
                .isCloseTo(solids / piece.solids().low().si(), within(0.1 * solids));
    }

    @Test
    void theFibreThatIsToldIsAllOfIt() {
        MakingPlan plan = MakingPlan.of(order(3), whole());
        String card = joined(MakingCard.of(plan));
        String told = card.substring(card.indexOf("WHERE THE FIBRE GOES"), card.indexOf("kept in the vat:"));
        double parts = 0;
        Matcher part = Pattern.compile("([0-9.]+) % \\(").matcher(told);
        while (part.find()) {
            parts += Double.parseDouble(part.group(1));
        }
        assertThat(parts).isCloseTo(100, within(1.5));
    }

    @Test
    void daysAreThoseOfTheCalendar() {
        MakingPlan plan = MakingPlan.of(order(3), whole());
        MakingCard card = MakingCard.of(plan);
        assertThat(card.lines())
                .filteredOn(line -> line.matches("\\[ ] (Mon|Tue|Wed|Thu|Fri|Sat|Sun) \\d+ [A-Z][a-z]{2} .*"))
                .hasSameSizeAs(plan.schedule().calendar());
    }

    /** Many pieces make sections longer than a page; they go on on the next. */
    @Test
    void noPageIsLongerThanItsPaper() {
        MakingCard card = card(14, whole());
        int page = 0;
        int longest = 0;
        int pages = 1;
        for (String line : card.lines()) {
            boolean isHead = line.startsWith("spring, page ");
            page = isHead ? 0 : page + 1;
            pages += isHead ? 1 : 0;
            longest = Math.max(longest, page);
            assertThat(line.length()).isLessThanOrEqualTo(80);
        }
        assertThat(longest).isLessThanOrEqualTo(70);
        int all = pages;
        assertThat(card.lines()).anyMatch(line -> line.startsWith("spring, page " + all + " of " + all));
        assertThat(card.lines())
                .filteredOn(line -> line.contains(" N card number "))
                .isNotEmpty();
    }

    /** Each sheet has its dot and each recharge its triangle. */
    @Test
    void theRunOfTheVatIsDrawnSheetBySheet() {
        MakingPlan plan = MakingPlan.of(order(2), whole());
        String page = MakingCard.of(plan).page();
        assertThat(count(page, "<circle fill=\"#000\"[^>]*r=\"0\\.45\""))
                .isEqualTo(plan.pieces().stream()
                        .mapToInt(piece -> piece.counts().sheets())
                        .sum());
        Matcher run = Pattern.compile("recharged (\\d+) times").matcher(page);
        int recharges = 0;
        while (run.find()) {
            recharges += Integer.parseInt(run.group(1));
        }
        assertThat(recharges)
                .isPositive()
                .isEqualTo(plan.pieces().stream()
                        .mapToInt(piece -> piece.vat().recharges().size())
                        .sum());
    }

    /** Rules and patterns of a picture hold for that picture alone. */
    @Test
    void picturesOfAPageDoNotMixTheirStyles() {
        String page = card(3, whole()).page();
        Matcher name = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
        List<String> names = name.results().map(found -> found.group(1)).toList();
        assertThat(names).isNotEmpty().doesNotHaveDuplicates();
        int pictures = count(page, "<svg ");
        assertThat(pictures).isGreaterThan(8);
        assertThat(count(page, "<svg class=\"picture\\d+\" role=\"img\"")).isEqualTo(pictures);
        assertThat(count(page, "<desc>")).isEqualTo(pictures);
        String body = page.substring(page.indexOf("<main>"));
        Matcher style = Pattern.compile("<style>([^<]*)</style>").matcher(body);
        while (style.find()) {
            for (String rule : style.group(1).split("}")) {
                assertThat(rule).matches("\\.picture\\d+ [^,{]+(,\\.picture\\d+ [^,{]+)*\\{[^}]*");
            }
        }
        assertThat(page).doesNotContain("\uE002", "\uE003", "\uE004", "\uE006", "\uE007");
        assertThat(count(page, "<b>")).isPositive().isEqualTo(count(page, "</b>"));
        assertThat(count(page, "<small>")).isEqualTo(count(page, "</small>"));
    }

    /** Folds are told from the corner of the blank where they run along its sides; the pocket lies between them. */
    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void foldsOfAnEnvelopeAreToldWhereTheyRunStraight(EnvelopeStyle style) {
        Order order = order(1).toBuilder()
                .piece(Piece.of("envelope", 12, "grey")
                        .grammage(Grammage.gsm(90))
                        .envelopeFor("card number 1", style)
                        .build())
                .build();
        MakingPlan plan = MakingPlan.of(order, whole());
        EnvelopePlan envelope = plan.piece("envelope").envelope();
        String card = joined(MakingCard.of(plan));
        boolean isAslant = envelope.folds().stream()
                .anyMatch(fold -> Math.abs(fold.from().across().si()
                                        - fold.to().across().si())
                                > 1e-4
                        && Math.abs(fold.from().along().si() - fold.to().along().si()) > 1e-4);
        if (isAslant) {
            assertThat(card).contains("folds run aslant: take them from the drawing");
            return;
        }
        Matcher left = Pattern.compile("folds at ([0-9.]+) and ([0-9.]+) mm from the left")
                .matcher(card);
        assertThat(left.find()).as(card).isTrue();
        assertThat(Double.parseDouble(left.group(2)) - Double.parseDouble(left.group(1)))
                .isCloseTo(envelope.outsideWidth().in("mm"), within(1.0));
        assertThat(card).containsPattern("flap scored at [0-9.]+ mm from (below|the left)");
    }
}
