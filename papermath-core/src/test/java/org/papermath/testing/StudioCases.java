package org.papermath.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.assertj.core.data.Offset;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Cook;
import org.papermath.fibre.Fibres;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.AdditiveSolution;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeaterGeometry;
import org.papermath.pulp.BeaterLoad;
import org.papermath.pulp.BeatingRecord;
import org.papermath.pulp.BeatingTime;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.RollLowering;
import org.papermath.pulp.SpoonMeasure;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;
import org.papermath.quantity.Unclear;
import org.papermath.shape.CutLayout;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.Extra;
import org.papermath.sheet.SheetCounts;
import org.papermath.sheet.Yield;
import org.papermath.vat.DrainageModel;
import org.papermath.vat.FormingMethod;
import org.papermath.vat.Recharge;
import org.papermath.vat.VatCharge;
import org.papermath.vat.WhiteWater;

/**
 * Questions of a studio kept as tables: what is asked, what is given, and the answer, or the code of the refusal,
 * question or notice that must come instead.
 */
public final class StudioCases {
    private static final Map<String, Function<Given, Object>> QUESTIONS = new LinkedHashMap<>();
    private static final BoughtFibre BARK = BoughtFibre.of(Fibres.KOZO, BoughtFibre.Form.RAW);
    /** Three cards of 100 mm by 150 mm from a parent of 150 mm by 300 mm. */
    private static final CutLayout CARDS = CutLayout.best(
            Kinds.LENGTH.of(150, "mm"),
            Kinds.LENGTH.of(300, "mm"),
            Kinds.LENGTH.of(100, "mm"),
            Kinds.LENGTH.of(150, "mm"),
            Kinds.LENGTH.of(0, "mm"),
            Kinds.LENGTH.of(0, "mm"),
            Set.of());

    private static final Beater STUDY_BEATER =
            Beater.of("study beater", Kinds.VOLUME.of(28, "L"), Kinds.MASS.of(700, "g"));

    private StudioCases() {}

    /** What a case gives: amounts by name. */
    static final class Given {
        private final Map<String, String> values = new LinkedHashMap<>();

        Given(String text) {
            for (String part : text.split(";")) {
                if (!part.isBlank()) {
                    String[] pair = part.split("=", 2);
                    values.put(pair[0].strip(), pair[1].strip());
                }
            }
        }

        boolean has(String name) {
            return values.containsKey(name);
        }

        <Q extends Quantity<Q>> Amount<Q> get(String name, Kind<Q> kind) {
            String text = values.get(name);
            if (text == null) {
                throw new AssertionError("the case does not give " + name + ": " + values.keySet());
            }
            return kind.read(text);
        }

        int count(String name) {
            return Integer.parseInt(values.get(name));
        }

        String text(String name) {
            return values.get(name);
        }

        Amount<Mass> mass(String name) {
            return get(name, Kinds.MASS);
        }
    }

    static {
        // Fibre in water, pulp, portions.
        ask("grams to a litre of water", g -> charge(g).fibrePerLitreOfWater());
        ask("consistency by mass", g -> charge(g).consistency());
        ask(
                "is the load too thick",
                g -> BeaterLoad.of(Beater.of("any", Kinds.VOLUME.of(1000, "L"), Kinds.MASS.of(100, "kg")), charge(g))
                        .notices());
        ask(
                "fibre in a part",
                g -> charge(g)
                        .takeVolume(Kinds.VOLUME.ofSi(charge(g).volume().si()
                                * g.get("part", Kinds.SHARE).si()))
                        .taken()
                        .ovenDry());
        ask("fibre in a portion", g -> portion(g).ovenDry());
        ask("portion against sheet", g -> portion(g).against(g.mass("sheet")));
        ask("volume for a sheet", g -> {
            Pulp portion = portion(g);
            return portion.volume()
                    .multiply(g.mass("sheet").si() / portion.ovenDry().si());
        });
        ask(
                "fibre of wet and dry together",
                g -> Pulp.ofOvenDry(g.mass("dry"))
                        .inWater(Kinds.MASS.of(0, "g"))
                        .mixedWith(Pulp.ofWet(g.mass("wet"), g.get("consistency", Kinds.CONSISTENCY)))
                        .ovenDry());
        ask("what does a bare per cent mean", g -> Pulp.whichConsistency(Kinds.NUMBER.read(g.text("label"))));
        ask(
                "stock for sheets",
                g -> Pulp.ofOvenDry(g.mass("each").multiply(g.count("sheets")))
                        .at(g.get("consistency", Kinds.CONSISTENCY))
                        .volume());
        ask(
                "mass of stock for sheets",
                g -> Pulp.ofOvenDry(g.mass("each").multiply(g.count("sheets")))
                        .at(g.get("consistency", Kinds.CONSISTENCY))
                        .mass());
        ask(
                "vat from pulp and water",
                g -> Pulp.ofVolume(g.get("pulp", Kinds.VOLUME), g.get("consistency", Kinds.CONSISTENCY))
                        .plusWater(Kinds.MASS.ofSi(g.get("water", Kinds.VOLUME).si() * 1000))
                        .consistency());
        ask(
                "consistency of a dried sample",
                g -> Pulp.consistencyOfSample(g.mass("wet"), g.mass("dried"), g.get("left", Kinds.MOISTURE)));
        ask(
                "fibre of wet pulp",
                g -> Pulp.ofWet(g.mass("wet"), g.get("consistency", Kinds.CONSISTENCY))
                        .ovenDry());
        ask(
                "density of pulp",
                g -> Pulp.ofWet(Kinds.MASS.of(1, "kg"), g.get("consistency", Kinds.CONSISTENCY))
                        .density());
        ask(
                "grams in a litre of stock",
                g -> Pulp.ofWet(Kinds.MASS.of(1, "kg"), g.get("consistency", Kinds.CONSISTENCY))
                        .fibrePerLitreOfStock());
        ask(
                "consistency of grams to water",
                g -> Pulp.ofOvenDry(Kinds.MASS.of(1, "kg"))
                        .perLitreOfWater(g.get("strength", Kinds.FIBRE_CONCENTRATION))
                        .consistency());
        ask(
                "volume by mass for a sheet",
                g -> Pulp.ofOvenDry(g.mass("sheet"))
                        .at(g.get("consistency", Kinds.CONSISTENCY))
                        .volume());
        ask(
                "volume by litre for a sheet",
                g -> Pulp.ofOvenDry(g.mass("sheet"))
                        .perLitreOfWater(g.get("strength", Kinds.FIBRE_CONCENTRATION))
                        .volume());
        ask(
                "wet pulp for a share",
                g -> Pulp.ofOvenDry(g.mass("total")
                                .multiply(g.get("share", Kinds.SHARE).si()))
                        .at(g.get("consistency", Kinds.CONSISTENCY))
                        .mass());

        // Sheets.
        ask("fibre for an area", g -> grams(g.get("grammage", Kinds.GRAMMAGE).si() * area(g)));
        ask(
                "fibre of a sheet",
                g -> grams(RetentionModel.makeUp(
                                        g.get("grammage", Kinds.GRAMMAGE),
                                        g.get("moisture", Kinds.MOISTURE),
                                        g.has("additives") ? List.of(g.get("additives", Kinds.SHARE)) : List.of())
                                .fibre()
                                .si()
                        * area(g)));
        ask("share of the fibre a sheet", g -> g.mass("fibre").divide(g.count("sheets")));
        ask("grammage from fibre", g -> grammage(g.mass("fibre").si() / g.count("sheets") / area(g)));
        ask(
                "area of a sheet",
                g -> Kinds.AREA.ofSi(
                        g.mass("sheet").si() / g.get("grammage", Kinds.GRAMMAGE).si()));
        ask(
                "sheets at most",
                g -> number(Pulp.ofOvenDry(g.mass("fibre"))
                        .inWater(Kinds.MASS.of(1, "kg"))
                        .sheetsAtMost(g.mass("each"), g.has("heel") ? g.mass("heel") : Kinds.MASS.of(0, "g"))));
        ask(
                "repoured",
                g -> FormingMethod.repoured(
                        g.get("piece", Kinds.GRAMMAGE), g.get("piece area", Kinds.AREA), g.get("mould", Kinds.AREA)));
        ask("fibre for a run", g -> g.mass("each").multiply(g.count("sheets")).add(g.mass("heel")));

        ask(
                "all of it in the sheets",
                g -> charge(g)
                        .takeVolume(Kinds.VOLUME.ofSi(charge(g).volume().si()
                                * g.get("part", Kinds.SHARE).si()))
                        .taken()
                        .sharedOut(g.count("sheets"), Kinds.AREA.ofSi(area(g)), Assumptions.standard()));
        ask(
                "area of a size",
                g -> Outline.rectangle(g.get("width", Kinds.LENGTH), g.get("length", Kinds.LENGTH))
                        .area());
        ask(
                "hours at a pace",
                g -> Kinds.TIME.ofSi(org.papermath.equation.Labour.postTime(
                        g.count("count"), g.get("each", Kinds.TIME).si(), 0, 0)));
        ask(
                "share by volume",
                g -> Kinds.SHARE.ofSi(g.get("spoon", Kinds.VOLUME).si()
                        / g.get("volume", Kinds.VOLUME).si()));
        ask("parents for pieces", g -> number(CARDS.parentsFor(g.count("pieces"))));
        ask(
                "parents with a spare",
                g -> number(Extra.share(g.get("spare", Kinds.SHARE)).on(CARDS.parentsFor(g.count("pieces")))));
        ask(
                "sheets for flat ones",
                g -> number(SheetCounts.toForm(g.count("flat"), Yield.of(g.get("share", Kinds.SHARE)))));
        ask("shrunk to a part", g -> Shrinkage.said(g.text("said")).left(g.get("left", Kinds.SHARE)));
        ask(
                "side of a lost area",
                g -> Shrinkage.ofArea(g.get("lost", Kinds.AREA_SHRINKAGE)).along());

        // Fibre as bought.
        ask(
                "oven-dry of air-dry",
                g -> BoughtFibre.of(Fibres.ABACA, BoughtFibre.Form.SHEET)
                        .airDry()
                        .ovenDry(g.mass("bought"), Assumptions.standard()));
        ask(
                "oven-dry at a moisture",
                g -> BoughtFibre.of(Fibres.ABACA, BoughtFibre.Form.SHEET)
                        .withMoisture(g.get("moisture", Kinds.MOISTURE))
                        .ovenDry(g.mass("bought"), Assumptions.standard()));
        ask(
                "as bought at a moisture",
                g -> BoughtFibre.of(Fibres.ABACA, BoughtFibre.Form.SHEET)
                        .withMoisture(g.get("moisture", Kinds.MOISTURE))
                        .asBought(g.mass("oven-dry"), Assumptions.standard()));

        // Cooking.
        ask("hydroxide", g -> alkali(g).hydroxide(g.get("dose", Kinds.DOSE)));
        ask("alkali to weigh", g -> cook(g).product());
        ask("alkali in the bath", g -> cook(g).bathStrength());
        ask("liquor of the cook", g -> cook(g).liquorRatio());
        ask(
                "dose of the cook",
                g -> (g.has("strength")
                                ? Cook.ofBath(
                                        BARK,
                                        g.mass("fibre"),
                                        alkali(g),
                                        g.get("strength", Kinds.SOLUTION_STRENGTH),
                                        g.get("bath", Kinds.VOLUME))
                                : Cook.ofWeighed(
                                        BARK,
                                        g.mass("fibre"),
                                        alkali(g),
                                        g.mass("product"),
                                        g.get("bath", Kinds.VOLUME)))
                        .dose());
        ask(
                "alkali per cent of what",
                g -> Cook.whichBase(
                        alkali(g), Kinds.NUMBER.read(g.text("label")), g.mass("fibre"), g.get("bath", Kinds.VOLUME)));
        ask(
                "raw fibre for sheets",
                g -> BARK.withMoisture(Kinds.MOISTURE.of(0, "%"))
                        .withYield(g.get("yield", Kinds.SHARE))
                        .asBoughtForSheets(g.count("sheets"), g.mass("each"), g.mass("heel"), Assumptions.standard()));

        // Beater.
        ask("loads", g -> number(BeaterLoad.count(g.mass("fibre"), beater(g))));
        ask(
                "each load",
                g -> BeaterLoad.equal(g.mass("fibre"), beater(g)).get(0).ovenDry());
        ask(
                "steps of the roll",
                g -> number(RollLowering.every(g.get("interval", Kinds.TIME), 1, g.get("beat", Kinds.TIME))
                        .moves()));
        ask(
                "energy on the fibre",
                g -> BeaterGeometry.specificEnergy(
                        g.get("power", Kinds.POWER), g.get("beat", Kinds.TIME), g.mass("fibre")));
        ask(
                "hours of loads",
                g -> BeaterLoad.hours(
                        g.count("loads"),
                        g.get("charge", Kinds.TIME),
                        g.get("beat", Kinds.TIME),
                        g.get("clean", Kinds.TIME)));
        ask(
                "load for a strength",
                g -> grams(g.get("trough", Kinds.VOLUME).si()
                        * g.get("strength", Kinds.FIBRE_CONCENTRATION).si()));
        ask("time to a freeness", g -> record(g).timeTo(g.get("freeness", Kinds.CANADIAN_FREENESS)));
        ask("hours on another machine", g -> {
            throw BeatingTime.noFactor(
                    STUDY_BEATER, Beater.of(g.text("machine"), Kinds.VOLUME.of(80, "L"), Kinds.MASS.of(2, "kg")));
        });
        ask(
                "convert a freeness",
                g -> DrainabilityModel.standard().schopperRieglerOf(g.get("freeness", Kinds.CANADIAN_FREENESS)));

        // Additives, baths, spoons.
        ask(
                "dose",
                g -> AdditiveDose.ofProduct(colour(), g.mass("product"), g.mass("fibre"))
                        .dose());
        ask("product", g -> AdditiveDose.of(colour(), g.get("dose", Kinds.DOSE)).product(g.mass("fibre")));
        ask("strength of a bath", g -> solution(g).strength());
        ask("share of a bath by mass", g -> solution(g).shareByMass());
        ask(
                "dilution",
                g -> number(solution(g).strength().si()
                        / solution(g)
                                .dilutedWith(g.get("more", Kinds.VOLUME))
                                .strength()
                                .si()));
        ask(
                "bath for fibre",
                g -> Kinds.VOLUME.ofSi(g.mass("fibre").si()
                        / g.get("strength", Kinds.FIBRE_CONCENTRATION).si()));
        ask(
                "liquor ratio",
                g -> Kinds.LIQUOR_RATIO.ofSi(
                        g.get("bath", Kinds.VOLUME).si() / g.mass("fibre").si()));
        ask(
                "per cent of what",
                g -> AdditiveDose.whichBase(
                        g.text("what"),
                        Kinds.NUMBER.read(g.text("label")),
                        g.mass("fibre"),
                        g.get("bath", Kinds.VOLUME)));
        ask(
                "bulk density",
                g -> SpoonMeasure.weighed("powder", g.get("spoon", Kinds.VOLUME), g.count("spoons"), g.mass("mass"))
                        .bulkDensity());
        ask("mass of spoonfuls", g -> {
            if (!g.has("bulk")) {
                throw SpoonMeasure.bulkDensityWanted("powder", g.get("volume", Kinds.VOLUME));
            }
            return SpoonMeasure.of("powder", g.get("bulk", Kinds.DENSITY)).mass(g.get("volume", Kinds.VOLUME));
        });
        ask("pick-up", g -> AdditiveSolution.pickUp(g.get("size", Kinds.SHARE), g.get("bath", Kinds.SHARE)));
        ask(
                "retained",
                g -> RetentionModel.fromJar(
                        g.mass("dose"), g.get("vat", Kinds.VOLUME), g.get("jar", Kinds.SOLUTION_STRENGTH)));
        ask(
                "lost",
                g -> g.mass("dose")
                        .multiply(1
                                - RetentionModel.fromJar(
                                                g.mass("dose"),
                                                g.get("vat", Kinds.VOLUME),
                                                g.get("jar", Kinds.SOLUTION_STRENGTH))
                                        .si()));

        // Vat.
        ask(
                "depth of stock",
                g -> DrainageModel.depth(
                        g.get("grammage", Kinds.GRAMMAGE),
                        Kinds.SHARE.of(100, "%"),
                        Pulp.ofWet(Kinds.MASS.of(1, "kg"), g.get("consistency", Kinds.CONSISTENCY))
                                .fibrePerLitreOfStock()));
        ask("change after sheets", g -> run(g, g.count("sheets") + 1).change(g.count("sheets") + 1));
        ask(
                "sheets before a drop",
                g -> number(run(g, 50).lastWithin(run(g, 50).fibre(1), g.get("drop", Kinds.SHARE))));
        ask("stock to replace", g -> replacement(g).stock());
        ask("liquor to bail", g -> replacement(g).bailed());
        ask("fresh water", g -> WhiteWater.freshWater(g.get("water", Kinds.VOLUME), g.mass("fibre")));
        ask(
                "raw fibre to buy",
                g -> BoughtFibre.of(Fibres.KOZO, BoughtFibre.Form.RAW)
                        .withMoisture(Kinds.MOISTURE.of(0, "%"))
                        .withYield(g.get("yield", Kinds.SHARE))
                        .asBought(g.mass("cooked"), Assumptions.standard()));
    }

    private static void ask(String what, Function<Given, Object> answer) {
        if (QUESTIONS.put(what, answer) != null) {
            throw new IllegalStateException("asked twice: " + what);
        }
    }

    private static Alkali alkali(Given g) {
        return Arrays.stream(Alkali.values())
                .filter(known -> known.toString().equals(g.text("alkali")))
                .findFirst()
                .orElseThrow();
    }

    private static Cook cook(Given g) {
        return Cook.of(BARK, g.mass("fibre"), alkali(g), g.get("dose", Kinds.DOSE), g.get("bath", Kinds.VOLUME));
    }

    private static Pulp charge(Given g) {
        return Pulp.ofOvenDry(g.mass("fibre")).inWaterOf(g.get("water", Kinds.VOLUME));
    }

    private static Pulp portion(Given g) {
        return Pulp.ofVolume(g.get("portion", Kinds.VOLUME), g.get("consistency", Kinds.CONSISTENCY));
    }

    private static double area(Given g) {
        return g.get("width", Kinds.LENGTH).si() * g.get("length", Kinds.LENGTH).si();
    }

    private static Amount<Mass> grams(double kilograms) {
        return Kinds.MASS.ofSi(kilograms, "g");
    }

    private static Amount<Grammage> grammage(double si) {
        return Kinds.GRAMMAGE.ofSi(si, "g/m2");
    }

    private static Amount<?> number(double value) {
        return Kinds.NUMBER.ofSi(value, "1");
    }

    private static Beater beater(Given g) {
        return Beater.of("any", Kinds.VOLUME.of(400, "L"), g.mass("load"));
    }

    private static Additive colour() {
        return Additive.of("test colour", Additive.Purpose.PIGMENT);
    }

    private static AdditiveSolution solution(Given g) {
        return AdditiveSolution.of(colour(), g.mass("product"), g.get("volume", Kinds.VOLUME));
    }

    private static BeatingRecord<CanadianFreeness> record(Given g) {
        List<BeatingRecord.Point<CanadianFreeness>> points = new ArrayList<>();
        for (String pair : g.text("record").split(",")) {
            String[] cells = pair.strip().split(" ");
            points.add(BeatingRecord.Point.of(
                    Reading.of(Kinds.TIME.of(Double.parseDouble(cells[0]), "min"), Kinds.TIME.of(1, "min")),
                    Reading.of(
                            CanadianFreeness.millilitres(Double.parseDouble(cells[1])),
                            CanadianFreeness.millilitres(5))));
        }
        return BeatingRecord.of("own table", Kinds.CANADIAN_FREENESS, points);
    }

    private static org.papermath.vat.VatRun run(Given g, int sheets) {
        Pulp pulp = Pulp.ofVolume(g.get("vat", Kinds.VOLUME), Kinds.CONSISTENCY.of(0.05, "%"));
        return VatCharge.of(
                        pulp,
                        Pulp.ofVolume(g.get("lift", Kinds.VOLUME), Kinds.CONSISTENCY.of(0.05, "%"))
                                .mass(),
                        Kinds.SHARE.of(100, "%"),
                        Solids.percent(100))
                .pull(sheets);
    }

    private static Recharge.Replacement replacement(Given g) {
        return Recharge.replacing(g.mass("fibre"), g.get("couched", Kinds.SOLIDS))
                .from(g.get("stock", Kinds.CONSISTENCY))
                .into(g.get("vat", Kinds.CONSISTENCY));
    }

    /** Answers one row of a table and holds the answer against what the row expects. */
    public static void check(CheckValues.Row row) {
        Function<Given, Object> question = QUESTIONS.get(row.text("asked"));
        if (question == null) {
            throw new AssertionError(row + ": nobody knows \"" + row.text("asked") + "\"");
        }
        Given given = new Given(row.text("given"));
        String expected = row.text("expected");
        Object[] answer = new Object[1];
        Throwable thrown = catchThrowable(() -> answer[0] = question.apply(given));
        if (expected.startsWith("refused ") || expected.startsWith("unclear ")) {
            Object said = thrown != null ? thrown : answer[0];
            assertThat(said)
                    .as(row.toString())
                    .isInstanceOf(expected.startsWith("refused ") ? Refused.class : Unclear.class);
            assertThat(((PapermathException) said).code()).as(row.toString()).isEqualTo(expected.substring(8));
            assertThat(((PapermathException) said).getMessage())
                    .as(row.toString())
                    .contains(row.text("says"));
            return;
        }
        if (thrown != null) {
            throw new AssertionError(row + ": " + thrown, thrown);
        }
        if (expected.startsWith("notice ")) {
            List<?> notices = answer[0] instanceof WithNotices<?> noted ? noted.notices() : (List<?>) answer[0];
            assertThat(notices).as(row.toString()).anySatisfy(notice -> {
                assertThat(((Notice) notice).code()).isEqualTo(expected.substring(7));
                assertThat(((Notice) notice).text()).contains(row.text("says"));
            });
            return;
        }
        Amount<?> amount = (Amount<?>) (answer[0] instanceof WithNotices<?> noted ? noted.value() : answer[0]);
        Amount<?> wanted = expected.contains(" ")
                ? amount.kind().read(expected)
                : Kinds.NUMBER.of(Double.parseDouble(expected), "1");
        assertThat(amount.si())
                .as(row + ": " + amount + ", expected " + wanted)
                .isCloseTo(wanted.si(), Offset.offset(Math.abs(wanted.si()) * row.number("tolerance") + 1e-15));
    }
}
