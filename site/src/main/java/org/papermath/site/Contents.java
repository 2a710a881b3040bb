package org.papermath.site;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.seconds;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.papermath.card.MakingCard;
import org.papermath.cost.Costing;
import org.papermath.cost.Margin;
import org.papermath.cost.Money;
import org.papermath.cost.PostageTable;
import org.papermath.cost.PriceList;
import org.papermath.cost.PricePoint;
import org.papermath.cost.Pricing;
import org.papermath.cost.Quotation;
import org.papermath.drawing.DaysDrawing;
import org.papermath.drawing.SvgDrawing;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Code;
import org.papermath.evidence.Codes;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.format.Format;
import org.papermath.format.Formats;
import org.papermath.format.ReamBasis;
import org.papermath.json.Document;
import org.papermath.json.DocumentReader;
import org.papermath.json.FaultCodes;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.json.PapermathSchemas;
import org.papermath.json.RecordLines;
import org.papermath.mail.MailLimits;
import org.papermath.mould.FormingLayout;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.Caution;
import org.papermath.plan.ClassDay;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.Stage;
import org.papermath.plan.WorkStep;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Units;
import org.papermath.shape.Shrinkage;
import org.papermath.whatif.Answer;
import org.papermath.whatif.Input;
import org.papermath.whatif.Outcome;
import org.papermath.whatif.WhatIf;

/**
 * What the pages show of the library.
 *
 * @param figures figures by name, as text
 * @param blocks blocks by name, as HTML
 * @param pictures files beside the pages, by name
 */
record Contents(Map<String, String> figures, Map<String, String> blocks, Map<String, String> pictures) {
    private static final String SAMPLE = "examples/src/main/resources/org/papermath/examples/midwinter-concert/";
    private static final String OTHER = "examples/src/main/resources/org/papermath/examples/estuary-prints/";
    private static final String PIECE = "programme";
    private static final Pattern LINES = Pattern.compile("(?s) *// guide: ([a-z-]+)\n(.*?) *// end\n");

    private static final Pattern ASKED =
            Pattern.compile("(?s)    /\\*\\* ([^*]*?) \\*/\n    @Question\\(number = \"(G\\d+)\""
                    + "[^\n]*\n    public static [^\n]*\\{\n(.*?)\n    \\}\n");

    private static Quotation quotation(MakingPlan plan, PriceList prices) {
        return Quotation.from(
                        Pricing.of(Costing.of(plan, prices), Margin.percent(30))
                                .at(PricePoint.every(Money.of("0.10 EUR"))),
                        prices.date(),
                        30)
                .secondsLess(BigDecimal.valueOf(15))
                .deposit(BigDecimal.valueOf(40))
                .build();
    }

    /** Runs the library for everything the pages show. */
    static Contents of(Path top) throws IOException {
        OrderDocument sample =
                PapermathDocuments.readOrder(top.resolve(SAMPLE + "order.json")).value();
        MakingPlan plan = MakingPlan.of(sample.order(), sample.studio());
        Map<String, String> blocks = new LinkedHashMap<>();
        blocks.put("card", code(MakingCard.of(plan).toString()));
        OrderDocument other =
                PapermathDocuments.readOrder(top.resolve(OTHER + "order.json")).value();
        blocks.put(
                "other-card",
                "<pre><code>"
                        + escape(MakingCard.of(MakingPlan.of(other.order(), other.studio()))
                                .toString()) + "</code></pre>");
        String card = MakingCard.of(plan).toString();
        blocks.put("card-head", code(Tutorial.firstPage(card)));
        blocks.put("facts", facts(plan));
        blocks.put("days", code(plan.schedule().timetable().text()));
        blocks.put("order-json", code(Files.readString(top.resolve(SAMPLE + "order.json"))));
        blocks.put("recipe-json", code(Files.readString(top.resolve(SAMPLE + "tide-grey.json"))));
        blocks.put("studio-json", code(Files.readString(top.resolve(SAMPLE + "studio.json"))));
        blocks.put("record-json", code(Files.readString(top.resolve(SAMPLE + "record.json"))));
        blocks.put("prices-json", code(Files.readString(top.resolve(SAMPLE + "prices.json"))));
        Quotation quotation = quotation(
                plan,
                PapermathDocuments.readPrices(top.resolve(SAMPLE + "prices.json"))
                        .value());
        blocks.put("quotation-json", code(PapermathDocuments.writeQuotation(Document.of(quotation))));
        blocks.put("quotation", "<pre><code>" + escape(quotation.toString()) + "</code></pre>");
        blocks.put("plan-json", code(beginning(PapermathDocuments.writePlan(plan, "studio notebook", "2.1"))));
        PapermathSchemas.names().forEach(name -> blocks.put("members-of-" + name, MemberTables.of(name)));
        blocks.put("faults", faults());
        for (Code.Use use : Code.Use.values()) {
            blocks.put("codes-" + use.name().toLowerCase(Locale.ROOT), codes(use));
        }
        blocks.putAll(lines(top));
        blocks.putAll(asked(top));
        blocks.put("assumptions", assumptions());
        blocks.put("assumptions-used", used(plan));
        blocks.put("sensitivity", sensitivity(plan));
        blocks.put("what-if", whatIf(sample));
        blocks.put("what-if-solved", solved(sample));
        blocks.put("more-pieces", code(morePieces(sample, plan)));
        blocks.put("at-the-vat", code(atTheVat(plan)));
        blocks.put("left-over", code(leftOver(plan)));
        blocks.put("class-day", code(classDay(sample)));
        Checks checks = Checks.of(top);
        blocks.put("worth-of-rows", worthOfRows(checks));
        blocks.put("outside-figures", outsideFigures(checks));
        blocks.put("paint-colours", paintColours(checks));
        blocks.put("held-by-none", heldByNone(checks));
        blocks.put("units", units());
        blocks.put("reams", reams());
        blocks.put("formats", formats());
        blocks.put("mail", mail());
        blocks.put("postage", postage());
        blocks.put("cautions", cautions());
        blocks.put("words", words(top.resolve("site/words.csv"), List.of("type", "label")));
        blocks.put("members", words(top.resolve("site/words.csv"), List.of("member")));
        Map<String, String> figures = figures(plan);
        figures.putAll(figures(checks));
        ColourPage colour = ColourPage.of(top);
        blocks.put("colour-ladder", list(colour.ladderWords()));
        blocks.put("colour-match", list(colour.matchWords()));
        figures.putAll(colour.figures());
        Map<String, String> pictures = pictures(plan);
        pictures.putAll(colour.pictures());
        Tutorial tutorial = Tutorial.of(top);
        blocks.putAll(tutorial.blocks());
        pictures.putAll(tutorial.files());
        pictures.put("midwinter-concert-card.html", MakingCard.of(plan).page());
        blocks.put("questions", QuestionPage.html());
        figures.put("questions", Integer.toString(QuestionPage.count()));
        Glossary glossary = Glossary.of(top.resolve("site/words.csv"));
        blocks.put("glossary", glossary.html());
        figures.put("glossary", Integer.toString(glossary.size()));
        Reference reference = Reference.of(top);
        blocks.put("packages", reference.packages());
        figures.put("reference", reference.whereItIs());
        for (Picture one : JobPictures.of(sample, plan, PIECE, top.resolve(SAMPLE + "record.json"))) {
            pictures.put(one.file(), one.svg());
            blocks.put("picture-" + one.name(), one.html());
        }
        blocks.put(
                "shown",
                "<div class=\"three\">\n"
                        + shown(
                                "vat-run.svg",
                                "At the vat: the mass of each sheet, from recharge to recharge",
                                "job.html#the-vat")
                        + shown("wet-to-dry.svg", "From the wet sheet to the dry one", "job.html#which-mould")
                        + shown(
                                "bands.svg",
                                "What one measured making does to the forecasts",
                                "job.html#what-to-measure-first")
                        + "</div>");
        return new Contents(figures, blocks, pictures);
    }

    /** The figures of the sample that people ask for first. */
    private static String facts(MakingPlan plan) {
        PiecePlan piece = plan.piece(PIECE);
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("weigh, oven-dry", plan.batches().get(0).fibre().ovenDry().toString());
        facts.put("pull", piece.counts().sheets() + " sheets");
        facts.put("lift a sheet", piece.vat().lift().toString());
        facts.put("recharge after every", piece.vat().every() + " sheets");
        facts.put("set the press to", piece.press().force().toString());
        facts.put("dry after", band(piece.drying().time()));
        facts.put("it will weigh", band(piece.finished().grammage()));
        facts.put("begin on", plan.schedule().start().orElseThrow().toString());
        return facts.entrySet().stream()
                .map(one -> "<div><dt>" + one.getKey() + "</dt><dd>" + escape(one.getValue()) + "</dd></div>\n")
                .collect(Collectors.joining("", "<dl class=\"facts\">\n", "</dl>"));
    }

    /** An estimate in three digits, as the card has it. */
    private static String band(Estimate<?> one) {
        return digits(one.likely().value()) + " (" + digits(one.low().value()) + "–"
                + digits(one.high().value()) + ") " + one.likely().toString().replaceFirst("^\\S+ ", "");
    }

    private static String digits(double value) {
        return new BigDecimal(value).round(new MathContext(3)).toPlainString();
    }

    private static String shown(String file, String words, String leadsTo) {
        return "<figure><img src=\"" + file + "\" alt=\"" + words + "\"><figcaption><a href=\"" + leadsTo + "\">"
                + words + "</a></figcaption></figure>\n";
    }

    /** What more of one piece changes. */
    private static String morePieces(OrderDocument sample, MakingPlan plan) {
        return MakingPlan.of(sample.order().with(PIECE, piece -> piece.count(110)), sample.studio())
                .comparedWith(plan)
                .toString();
    }

    /** A couched sheet that is too light, and what to give. */
    private static String atTheVat(MakingPlan plan) {
        return plan.atTheVat(PIECE).after(12).couched(grams(58)).toString();
    }

    /** What the making leaves for the next. */
    private static String leftOver(MakingPlan plan) {
        return String.join(
                "\n",
                plan.leaves(LocalDate.of(2027, 1, 2)).stuff().stream()
                        .map(Object::toString)
                        .toList());
    }

    /** Eight people at two moulds, and what they hold in their hands. */
    private static String classDay(OrderDocument sample) {
        ClassDay day = ClassDay.of(sample.studio(), sample.order().recipes().get(0))
                .people(8)
                .sheetsEach(3)
                .size(mm(148), mm(210))
                .grammage(Grammage.gsm(120))
                .within(hours(3))
                .moulds(2)
                .plan();
        return day + "\n\n" + day.handout();
    }

    /** What other beating would do, as a table in text. */
    private static String whatIf(OrderDocument sample) {
        return code(WhatIf.decidedAnew(sample.order(), sample.studio())
                .vary(Input.beating("tide grey"), hours(1), hours(6), 6)
                .show(
                        Outcome.drainability("tide grey"),
                        Outcome.drainTime(PIECE),
                        Outcome.caliper(PIECE),
                        Outcome.dryingTime(PIECE))
                .withBands()
                .table()
                .toString());
    }

    /** What is answered where an input is looked for. */
    private static String solved(OrderDocument sample) {
        WhatIf anew = WhatIf.decidedAnew(sample.order(), sample.studio());
        WhatIf held = WhatIf.settingsHeld(sample.order(), sample.studio());
        List<Answer<?, ?>> answers = List.of(
                anew.solve(
                        Input.vatConsistency("tide grey"),
                        Consistency.percent(0.3),
                        Consistency.percent(1),
                        Outcome.lift(PIECE),
                        kilograms(2)),
                anew.solve(Input.beating("tide grey"), hours(0), hours(10), Outcome.drainTime(PIECE), seconds(30)),
                held.solve(Input.lift(), percent(80), percent(130), Outcome.grammage(PIECE), Grammage.gsm(135)),
                held.solve(Input.lift(), percent(80), percent(130), Outcome.grammage(PIECE), Grammage.gsm(180)),
                anew.solve(
                        Input.pressure(),
                        SheetPressure.kilopascals(100),
                        SheetPressure.kilopascals(900),
                        Outcome.pressure(PIECE),
                        SheetPressure.kilopascals(500)),
                anew.mostThatFits(Input.count(PIECE), 1, 1000, Outcome.timeAtVat(PIECE), hours(6)));
        return "<ul>"
                + answers.stream()
                        .map(one -> "<li>" + escape(one.toString()) + "</li>")
                        .collect(Collectors.joining())
                + "</ul>";
    }

    private static String list(List<String> lines) {
        return lines.stream()
                .map(line -> "<li>" + escape(line) + "</li>\n")
                .collect(Collectors.joining("", "<ul>\n", "</ul>"));
    }

    private static String code(String text) {
        return "<pre><code>" + escape(text) + "</code></pre>";
    }

    /** The head of a plan and the figures of its first batch, without what it was made from. */
    private static String beginning(String plan) {
        int order = plan.indexOf("\n  \"order\"");
        int batches = plan.indexOf("\n  \"batches\"");
        int stock = plan.indexOf("\n      \"stock\"", batches);
        return plan.substring(0, order) + "\n  \"order\": …\n  \"studio\": …" + plan.substring(batches, stock)
                + "\n      …\n";
    }

    private static Map<String, String> figures(Checks checks) {
        long physical = Assumptions.standard().all().stream()
                .filter(one -> one.role() == Role.PHYSICAL)
                .count();
        long outside = checks.figures().stream().filter(one -> !one.isFitted()).count();
        Map<String, String> figures = new LinkedHashMap<>(Map.of(
                "check-rows", Integer.toString(checks.all()),
                "outside-figures", Integer.toString(checks.figures().size()),
                "outside-figures-not-fitted", Long.toString(outside),
                "outside-figures-missed",
                        Long.toString(checks.figures().stream()
                                .filter(Checks.Figure::isMissed)
                                .count()),
                "physical", Long.toString(physical),
                "held-from-outside", checks.heldFromOutside(),
                "held-by-none", Integer.toString(checks.heldByNone().size()),
                "held", Long.toString(physical - checks.heldByNone().size())));
        figures.put("postage-countries", String.join(", ", PostageTable.countries()));
        figures.put("paint-colours", Integer.toString(checks.paints().size()));
        figures.put("paint-colours-inside", inside(checks.paints()));
        figures.put("paint-colours-mean", mean(checks.paints(), "difference"));
        figures.put("moist-soils", Integer.toString(checks.soils().size()));
        figures.put("moist-soils-inside", inside(checks.soils()));
        figures.put("moist-soils-scattering", mean(checks.soils(), "scattering"));
        figures.put("moist-soils-film", mean(checks.soils(), "film"));
        for (boolean fitted : new boolean[] {false, true}) {
            List<Checks.Figure> banded = checks.figures().stream()
                    .filter(one -> one.isFitted() == fitted && one.hasBand())
                    .toList();
            long inside = banded.stream().filter(Checks.Figure::isInside).count();
            String of = fitted ? "-fitted" : "-not-fitted";
            figures.put("outside-figures-banded" + of, Integer.toString(banded.size()));
            figures.put("outside-figures-inside" + of, Long.toString(inside));
            figures.put("outside-figures-inside-share" + of, Math.round(100.0 * inside / banded.size()) + " %");
        }
        return figures;
    }

    private static String worthOfRows(Checks checks) {
        Map<String, String> meanings = Map.of(
                "measured outside", "measured and published by others",
                "standard", "by a standard, a printed list or the code of others",
                "identity", "worked out again another way: the arithmetic is right",
                "regression", "what the library gave before: it still does");
        List<List<String>> rows = new ArrayList<>();
        checks.rows().entrySet().stream()
                .sorted(Comparator.comparingInt(one -> List.of("measured outside", "standard", "identity", "regression")
                        .indexOf(one.getKey())))
                .forEach(one -> rows.add(List.of(
                        one.getKey(),
                        meanings.getOrDefault(one.getKey(), ""),
                        one.getValue().toString(),
                        Math.round(100.0 * one.getValue() / checks.all()) + " %")));
        return table(List.of("class", "shows", "rows", "share"), rows);
    }

    private static String outsideFigures(Checks checks) {
        List<List<String>> rows = new ArrayList<>();
        for (Checks.Figure one : checks.figures()) {
            String unit = one.unit().equals("1") ? "" : " " + one.unit();
            rows.add(List.of(
                    one.name(),
                    one.published() + " ± " + one.within() + unit,
                    one.model() + unit,
                    one.error() + unit + (one.isMissed() ? ", missed" : ""),
                    one.hasBand()
                            ? one.low() + " – " + one.high() + unit + (one.isInside() ? "" : ", outside")
                            : "none",
                    one.isFitted() ? "yes" : "no",
                    one.source()));
        }
        return table(
                List.of("figure", "published", "library", "error", "band", "default made from it", "source"), rows);
    }

    private static String paintColours(Checks checks) {
        return table(
                List.of("mixture", "off by ΔE00", "nine in ten told within"),
                checks.paints().stream()
                        .map(one -> List.of(
                                cell(one, "case"),
                                cell(one, "difference"),
                                cell(one, "band") + (cell(one, "inside").equals("yes") ? "" : ", outside")))
                        .toList());
    }

    private static String inside(List<Map<String, String>> rows) {
        return Long.toString(
                rows.stream().filter(one -> cell(one, "inside").equals("yes")).count());
    }

    private static String mean(List<Map<String, String>> rows, String column) {
        return String.format(
                Locale.ROOT,
                "%.1f",
                rows.stream()
                        .mapToDouble(one -> Double.parseDouble(cell(one, column)))
                        .average()
                        .orElseThrow());
    }

    private static String cell(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static String heldByNone(Checks checks) {
        List<List<String>> rows = new ArrayList<>();
        checks.scopesById().forEach((id, scopes) -> rows.add(List.of("`" + id, String.join(", ", scopes))));
        return table(List.of("value", "of"), rows);
    }

    private static String faults() {
        List<List<String>> rows = new ArrayList<>();
        FaultCodes.meanings()
                .forEach((code, meaning) -> rows.add(List.of(
                        "`" + code,
                        meaning,
                        FaultCodes.seenByTheReaderOnly().contains(code)
                                ? "the reader only"
                                : code.equals(FaultCodes.RENAMED) ? "a note of the reader" : "both")));
        return table(List.of("code", "what it means", "seen by"), rows);
    }

    /** The lines that are compiled and run by the tests of the json module, by their names. */
    static Map<String, String> lines(Path top) throws IOException {
        Map<String, String> blocks = new LinkedHashMap<>();
        String source = Files.readString(top.resolve("papermath-json/src/test/java/org/papermath/json/Guide.java"))
                .replace("\r\n", "\n");
        Matcher part = LINES.matcher(source);
        while (part.find()) {
            blocks.put(
                    "lines-" + part.group(1), code(part.group(2).stripTrailing().stripIndent() + "\n"));
        }
        return blocks;
    }

    /** The questions of small arithmetic, each with its lines and its answer, which the tests of the examples compare. */
    static Map<String, String> asked(Path top) throws IOException {
        String source = Files.readString(
                        top.resolve("examples/src/main/java/org/papermath/examples/questions/SmallQuestions.java"))
                .replace("\r\n", "\n");
        String answers = Files.readString(top.resolve("examples/src/test/resources/questions/answers.txt"))
                .replace("\r\n", "\n");
        Map<String, String> blocks = new LinkedHashMap<>();
        Matcher part = ASKED.matcher(source);
        while (part.find()) {
            String number = part.group(2);
            Matcher answer =
                    Pattern.compile("(?m)^" + number + " .*\n((?: {4}.*\n)+)").matcher(answers);
            if (!answer.find()) {
                throw new IllegalStateException(number + " has no answer");
            }
            blocks.put(
                    "asked-" + number.toLowerCase(Locale.ROOT),
                    "<p>" + escape(part.group(1)) + "</p>\n"
                            + code(part.group(3).stripIndent() + "\n\n"
                                    + answer.group(1).replaceAll("(?m)^ {4}", "> ")));
        }
        return blocks;
    }

    private static Map<String, String> figures(MakingPlan plan) {
        Map<String, String> out = new LinkedHashMap<>();
        BatchPlan batch = plan.batches().get(0);
        PiecePlan piece = plan.piece(PIECE);
        out.put("edition", Assumptions.standard().edition());
        out.put(
                "codes",
                Integer.toString(Codes.all().size() + FaultCodes.ofModule().size()));
        out.put("values", Integer.toString(Assumptions.standard().all().size()));
        for (Basis basis : Basis.values()) {
            out.put(
                    "values-" + basis.word().replace(' ', '-'),
                    Long.toString(Assumptions.standard().all().stream()
                            .filter(one -> one.basis() == basis)
                            .count()));
        }
        out.put("most-bytes", DocumentReader.MOST_BYTES / 1024 / 1024 + " MiB");
        out.put("most-levels", Integer.toString(DocumentReader.MOST_LEVELS));
        out.put("most-line-bytes", RecordLines.MOST_LINE_BYTES / 1024 / 1024 + " MiB");
        out.put("used", Integer.toString(plan.assumptionsUsed().size()));
        out.put(
                "used-uncalibrated",
                Long.toString(plan.assumptionsUsed().stream()
                        .filter(one -> one.basis().isUncalibrated())
                        .count()));
        out.put("order", plan.order().toString());
        out.put("wanted", Integer.toString(piece.counts().wanted()));
        out.put("ordered", Integer.toString(piece.counts().ordered()));
        out.put("sheets", Integer.toString(piece.counts().sheets()));
        out.put("trials", Integer.toString(piece.counts().trials()));
        out.put("per-sheet", Integer.toString(piece.counts().perSheet()));
        out.put("good", piece.counts().good().toString());
        out.put("opening", piece.forming().opening().toString());
        out.put("fibre-a-sheet", piece.forming().fibre().toString());
        out.put("solids-a-sheet", piece.forming().solids().toString());
        out.put("oven-dry", batch.fibre().ovenDry().toString());
        out.put("as-bought", batch.fibre().asBought().toString());
        out.put("soak", batch.soak().water() + " for " + batch.soak().time());
        out.put(
                "loads",
                text(
                        batch.beatingStage(),
                        one -> one.loads() + " loads of " + one.runs().get(0).ovenDryEach() + " oven-dry fibre"));
        out.put(
                "beating",
                text(batch.beatingStage(), one -> one.runs().get(0).timeEach().toString()));
        out.put(
                "beater-consistency",
                text(batch.beatingStage(), one -> one.consistency().toString()));
        out.put("stock", batch.stock().volume() + " at " + batch.stock().consistency());
        out.put("lift", text(piece.vatStage(), one -> one.lift().toString()));
        out.put(
                "vat-consistency",
                text(piece.vatStage(), one -> one.consistency().toString()));
        out.put("every", text(piece.vatStage(), one -> Integer.toString(one.every())));
        out.put(
                "first-recharge",
                text(piece.vatStage(), one -> one.recharges().get(0).toString()));
        out.put("lightest", text(piece.vatStage(), one -> one.lightest().to("%").toString()));
        out.put("heaviest", text(piece.vatStage(), one -> one.heaviest().to("%").toString()));
        out.put("drain-time", text(piece.drainTimeStage(), Object::toString));
        out.put("mat", piece.matThickness().toString());
        out.put("couched", piece.couchedMass().toString());
        out.put(
                "posts",
                text(piece.postsStage(), one -> one.posts() + " posts of up to " + one.sheetsInPost() + " sheets"));
        out.put("post-mass", text(piece.postsStage(), one -> one.mass().toString()));
        out.put("force", text(piece.pressStage(), one -> one.force().toString()));
        out.put("pressure", text(piece.pressStage(), one -> one.pressure().toString()));
        out.put("weakest", text(piece.pressStage(), one -> one.weakest().toString()));
        out.put("solids", piece.solids().toString());
        out.put("dryer", text(piece.dryingStage(), one -> one.dryer().name()));
        out.put("drying", text(piece.dryingStage(), one -> one.time().toString()));
        out.put("water", text(piece.dryingStage(), one -> one.water().toString()));
        out.put("width", piece.finished().width().toString());
        out.put("height", piece.finished().height().toString());
        out.put("grammage", piece.finished().grammage().toString());
        out.put("caliper", text(piece.finished().caliperStage(), Object::toString));
        out.put("mass", piece.finished().mass().toString());
        PiecePlan envelope = plan.piece("envelope");
        out.put(
                "play",
                text(envelope.envelopeStage(), one -> one.playAlong() + " along, " + one.playAcross() + " across"));
        out.put("mailed", text(envelope.mailStage(), one -> one.mass() + ", " + one.thickness()));
        out.put("start", plan.schedule().start().map(Object::toString).orElse("no date given"));
        out.put("days", Integer.toString(plan.schedule().days().orElseThrow()));
        out.put("hours", plan.workingHours().toString());
        return out;
    }

    private static <T> String text(Stage<T> stage, java.util.function.Function<T, String> done) {
        return stage.isDone() ? done.apply(stage.get()) : stage.toString();
    }

    private static Map<String, String> pictures(MakingPlan plan) {
        Map<String, String> out = new LinkedHashMap<>();
        PapermathSchemas.names()
                .forEach(name -> out.put(PapermathSchemas.fileName(name), PapermathSchemas.published(name, "")));
        Envelope envelope =
                Envelope.forCard(EnvelopeStyle.SIDE_SEAM, mm(148), mm(105), micrometres(500), Assumptions.standard());
        out.put(
                "envelope.svg",
                SvgDrawing.of("Side-seam envelope for a folded programme", envelope)
                        .svg());
        Envelope diamond =
                Envelope.forCard(EnvelopeStyle.DIAMOND, mm(148), mm(105), micrometres(500), Assumptions.standard());
        out.put(
                "diamond.svg",
                SvgDrawing.of("Diamond envelope for the same", diamond).svg());
        out.put(
                "days.svg",
                DaysDrawing.of("Days of " + plan.order().name(), plan.schedule().timetable())
                        .svg());
        PiecePlan piece = plan.piece("seat card");
        FormingLayout layout = FormingLayout.on(
                piece.forming().mould().orElseThrow(),
                piece.piece().width().orElseThrow(),
                piece.piece().height().orElseThrow(),
                Shrinkage.across(piece.finished().shrinkageAcross().likely())
                        .along(piece.finished().shrinkageAlong().likely()),
                Assumptions.standard()
                        .amount("order.trim", Scope.GENERAL, Kinds.LENGTH)
                        .multiply(2),
                mm(0));
        if (layout.count() != piece.forming().perSheet()) {
            throw new IllegalStateException("the picture shows " + layout.count() + " pieces, the plan has "
                    + piece.forming().perSheet());
        }
        out.put(
                "layout.svg",
                layout.drawing("Seat cards on one mould, before shrinkage").svg());
        return out;
    }

    /** All codes that are used in one way; those of one matter stand together under its word. */
    private static String codes(Code.Use use) {
        StringBuilder out = new StringBuilder("<table class=\"codes\">\n<thead><tr><th>code</th><th>what it means</th>"
                + "<th>values</th><th>also</th></tr></thead>\n");
        String room = "";
        for (Code code : Stream.concat(Codes.all().stream(), FaultCodes.ofModule().stream())
                .filter(one -> one.uses().contains(use))
                .sorted(Comparator.comparing(Code::room).thenComparing(Code::name))
                .toList()) {
            if (!code.room().equals(room)) {
                out.append(room.isEmpty() ? "" : "</tbody>\n");
                room = code.room();
                out.append("<tbody><tr><th colspan=\"4\" scope=\"rowgroup\">")
                        .append(room)
                        .append("</th></tr>\n");
            }
            Stream<String> always = code.arguments().stream();
            Stream<String> sometimes = code.sometimes().stream().map(name -> "(" + name + ")");
            String also = code.uses().stream()
                    .filter(other -> other != use)
                    .map(Code.Use::words)
                    .collect(Collectors.joining(", "));
            out.append("<tr><td><code>")
                    .append(breakable(code.name()))
                    .append("</code></td><td>")
                    .append(escape(code.meaning()))
                    .append("</td><td>")
                    .append(
                            use == Code.Use.STAGE
                                    ? ""
                                    : Stream.concat(always, sometimes).collect(Collectors.joining(", ")))
                    .append("</td><td>")
                    .append(also)
                    .append("</td></tr>\n");
        }
        return out.append("</tbody>\n</table>\n").toString();
    }

    private static String assumptions() {
        return assumptions(Assumptions.standard().all());
    }

    private static String used(MakingPlan plan) {
        return assumptions(plan.assumptionsUsed());
    }

    private static String assumptions(Iterable<Assumption> all) {
        List<List<String>> rows = new ArrayList<>();
        for (Assumption one : all) {
            rows.add(List.of(
                    "`" + one.key(),
                    one.meaning(),
                    band(one),
                    one.role().name().toLowerCase(java.util.Locale.ROOT),
                    one.basis().word(),
                    one.source().text()));
        }
        return table(List.of("id and scope", "meaning", "likely (5 %–95 %)", "role", "basis", "source"), rows);
    }

    private static String band(Assumption one) {
        String unit = one.unit().equals("1") ? "" : " " + one.unit();
        String likely = Units.fourDigits(one.likely());
        return one.low() == one.high()
                ? likely + unit
                : likely + " (" + Units.fourDigits(one.low()) + "–" + Units.fourDigits(one.high()) + ")" + unit;
    }

    private static String sensitivity(MakingPlan plan) {
        List<List<String>> rows = new ArrayList<>();
        plan.sensitivity().stream()
                .limit(10)
                .forEach(one -> rows.add(List.of(
                        "`" + one.assumption().key(),
                        one.widens(),
                        Math.round(100 * one.share()) + " %",
                        one.measurement())));
        return table(List.of("assumption", "the band it widens most", "of that band", "measurement"), rows);
    }

    private static String units() {
        List<List<String>> rows = new ArrayList<>();
        for (Kind<?> kind : Kinds.all()) {
            rows.add(List.of(kind.name(), "`" + String.join(", ", kind.codes())));
        }
        return table(List.of("kind", "codes it accepts"), rows);
    }

    private static String reams() {
        List<List<String>> rows = new ArrayList<>();
        for (ReamBasis basis : ReamBasis.grades()) {
            rows.add(List.of(
                    basis.name(),
                    basis.width().to("in") + " × " + basis.length().to("in"),
                    Integer.toString(basis.count()),
                    basis.pounds(1).to(Units.GSM).toString(),
                    basis.pounds(80).to(Units.GSM).toString()));
        }
        return table(List.of("grade", "sheet", "sheets", "1 lb is", "80 lb is"), rows);
    }

    private static String formats() {
        List<List<String>> rows = new ArrayList<>();
        for (Format format : Formats.all()) {
            rows.add(List.of(
                    format.name(),
                    format.system().words(),
                    format.use().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
                    format.width().to("mm") + " × " + format.height().to("mm"),
                    format.width().to("in") + " × " + format.height().to("in")));
        }
        return table(List.of("name", "system", "use", "metric", "inch"), rows);
    }

    private static String mail() {
        List<List<String>> rows = new ArrayList<>();
        for (String country : MailLimits.countries()) {
            rows.add(List.of(
                    country,
                    MailLimits.of(country).toString(),
                    String.join(", ", MailLimits.of(country).services())));
        }
        return table(List.of("country", "limits", "services"), rows);
    }

    private static String postage() {
        List<List<String>> rows = new ArrayList<>();
        for (String country : PostageTable.countries()) {
            for (PostageTable.Rate rate : PostageTable.ofCountry(country).rates()) {
                rows.add(List.of(
                        country,
                        rate.service(),
                        rate.upTo().toString(),
                        rate.price().toString(),
                        rate.from().toString(),
                        rate.source()));
            }
        }
        return table(List.of("country", "service", "up to", "price", "from", "read in"), rows);
    }

    private static String cautions() {
        List<List<String>> rows = new ArrayList<>();
        for (WorkStep step : WorkStep.values()) {
            for (Caution caution : step.cautions()) {
                rows.add(List.of(step.words(), caution.text(), caution.basis()));
            }
        }
        return table(List.of("step", "caution", "rests on"), rows);
    }

    private static String words(Path list, List<String> kinds) throws IOException {
        List<List<String>> rows = new ArrayList<>();
        for (String line : Files.readAllLines(list)) {
            List<String> cells = cells(line);
            if (kinds.contains(cells.get(1))) {
                rows.add(List.of("`" + cells.get(0), cells.get(2), cells.get(3)));
            }
        }
        return table(List.of("word", "origin", "means"), rows);
    }

    /** Splits a line of comma-separated values. */
    static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    /** Writes a table; a cell that begins with a grave accent is set as code. */
    private static String table(List<String> head, List<List<String>> rows) {
        StringBuilder out = new StringBuilder("<table>\n<thead><tr>");
        head.forEach(one -> out.append("<th>").append(escape(one)).append("</th>"));
        out.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : rows) {
            out.append("<tr>");
            for (String cell : row) {
                boolean code = cell.startsWith("`");
                out.append(
                        code
                                ? "<td><code>" + breakable(escape(cell.substring(1))) + "</code></td>"
                                : "<td>" + escape(cell) + "</td>");
            }
            out.append("</tr>\n");
        }
        return out.append("</tbody>\n</table>\n").toString();
    }

    /** Lets a long name break where its parts meet. */
    private static String breakable(String name) {
        return name.replace(".", ".<wbr>").replace("[", "<wbr>[").replace("@", "<wbr>@");
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
