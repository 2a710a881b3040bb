package org.papermath.outside;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.squareMetres;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.papermath.air.Air;
import org.papermath.drying.DryingModel;
import org.papermath.equation.Freeness;
import org.papermath.equation.PressingLaw;
import org.papermath.equation.WaterProperties;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.pulp.BeatingModel;
import org.papermath.pulp.BeatingState;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Irradiance;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.sheet.SurfaceSize;
import org.papermath.testing.CheckValues;

/**
 * Published figures beside what the library says of the same case, as functions of the assumptions: so that it can be
 * tried which assumption a figure would contradict. The figures stand in {@code checkvalues/outside_figures.csv}.
 */
final class OutsideFigures {
    /** The table with the figures. */
    static final String TABLE = "outside_figures";

    /** What the digits of a double may add, as a part. */
    static final double DIGITS = 1e-9;

    private static final Scope RAG = Scope.of("cotton-rag");
    private static final double REFERENCE_PRESSURE = 0.4e6;

    private static final Map<String, ToDoubleFunction<Assumptions>> MODELS = models();

    private OutsideFigures() {}

    /** How far the library lies from the published figure, in the unit of the row. */
    static double error(CheckValues.Row row, Assumptions store) {
        return Math.abs(model(row, store) - row.number("published"));
    }

    /**
     * The band of a figure over makings, in the unit of its row.
     *
     * @param low the 5 % point, or the farthest that could be worked out
     * @param high the 95 % point, or the farthest that could be worked out
     * @param openBelow whether it has no end below
     * @param openAbove whether it has no end above
     */
    record Band(double low, double high, boolean openBelow, boolean openAbove) {
        /** Whether a published value lies inside; at an end it does, beyond an open one it does not. */
        boolean holds(double published) {
            double digits = DIGITS * Math.abs(published);
            return published >= low - digits && published <= high + digits;
        }
    }

    /**
     * The band the library gives for the case of a row: every physical assumption that is looked up on the way is put at
     * its two ends over makings in turn, and the shifts are added as squares, up and down apart, as factors where all are
     * above zero. Empty where the figure rests on no assumption with a band.
     */
    static Optional<Band> band(CheckValues.Row row, Assumptions store) {
        Map<String, Assumption> heard = new LinkedHashMap<>();
        double likely = model(row, store.heardBy(one -> heard.put(one.key(), one)));
        List<double[]> ends = new ArrayList<>();
        boolean openBelow = false;
        boolean openAbove = false;
        for (Assumption one : heard.values()) {
            Assumption wide = store.overMakings(one);
            // What makings differ by widens the bands of others and moves nothing itself.
            if (one.role() == Role.PHYSICAL
                    && wide.low() < wide.high()
                    && !one.id().startsWith("making.")) {
                double[] moved = new double[2];
                for (int end = 0; end < 2; end++) {
                    double to = end == 0 ? wide.low() : wide.high();
                    boolean known = isKnown(row, store, one, to);
                    moved[end] = model(row, store.with(at(one, known ? to : farthest(row, store, one, to))));
                    openBelow |= !known && moved[end] <= likely;
                    openAbove |= !known && moved[end] >= likely;
                }
                if (moved[0] != likely || moved[1] != likely) {
                    ends.add(moved);
                }
            }
        }
        if (ends.isEmpty()) {
            return Optional.empty();
        }
        boolean factors = likely > 0 && ends.stream().allMatch(moved -> moved[0] > 0 && moved[1] > 0);
        double down = 0;
        double up = 0;
        for (double[] moved : ends) {
            down = Math.hypot(down, shift(likely, Math.min(likely, Math.min(moved[0], moved[1])), factors));
            up = Math.hypot(up, shift(likely, Math.max(likely, Math.max(moved[0], moved[1])), factors));
        }
        return Optional.of(
                factors
                        ? new Band(likely * Math.exp(-down), likely * Math.exp(up), openBelow, openAbove)
                        : new Band(likely - down, likely + up, openBelow, openAbove));
    }

    private static boolean isKnown(CheckValues.Row row, Assumptions store, Assumption one, double value) {
        try {
            return Double.isFinite(model(row, store.with(at(one, value))));
        } catch (Refused e) {
            return false;
        }
    }

    /** The value on the way to an end at which the case can still be worked out. */
    private static double farthest(CheckValues.Row row, Assumptions store, Assumption one, double end) {
        double known = 0;
        double unknown = 1;
        while (unknown - known > 1e-6) {
            double part = (known + unknown) / 2;
            if (isKnown(row, store, one, one.likely() + part * (end - one.likely()))) {
                known = part;
            } else {
                unknown = part;
            }
        }
        return one.likely() + known * (end - one.likely());
    }

    private static Assumption at(Assumption row, double value) {
        return row.with(row.scope(), value, value, value, row.basis(), row.source());
    }

    private static double shift(double from, double to, boolean factors) {
        return factors ? Math.log(to / from) : to - from;
    }

    /** What the library says of the case of a row, in the unit of the row. */
    static double model(CheckValues.Row row, Assumptions store) {
        ToDoubleFunction<Assumptions> model = MODELS.get(row.text("case"));
        if (model == null) {
            throw new AssertionError("nothing answers \"" + row.text("case") + "\"");
        }
        return model.applyAsDouble(store);
    }

    private static Map<String, ToDoubleFunction<Assumptions>> models() {
        Map<String, ToDoubleFunction<Assumptions>> all = new LinkedHashMap<>();
        ragTrial(all);
        shrinkageOfOthers(all);
        moistures(all);
        fibres(all);
        pressing(all);
        drying(all);
        labour(all);
        water(all);
        return all;
    }

    // ------------------------------------------------------------------------------------- the rag trial of 1906

    private static BeatingState rag(Assumptions store, double millHours) {
        return beaten(store, Fibres.COTTON_RAG, millHours * store.si("beating.mill-hour", RAG));
    }

    private static BeatingState beaten(Assumptions store, Fibre fibre, double hours) {
        return BeatingState.after(store, Furnish.of(fibre), "", hours(hours));
    }

    private static double density(Assumptions store, Fibre fibre, BeatingState state) {
        return DensityModel.from(store, Furnish.of(fibre))
                .density(Kinds.SHEET_PRESSURE.ofSi(REFERENCE_PRESSURE), state)
                .si();
    }

    private static double free(Assumptions store, Fibre fibre, BeatingState state) {
        ShrinkageModel.Result free =
                ShrinkageModel.from(store, Furnish.of(fibre)).free(state);
        return (free.along().likely().si() + free.across().likely().si()) / 2;
    }

    private static void ragTrial(Map<String, ToDoubleFunction<Assumptions>> all) {
        for (int mill : new int[] {9, 20, 34}) {
            all.put(
                    "density of free-dried rag after " + mill + " mill h",
                    store -> density(store, Fibres.COTTON_RAG, rag(store, mill)));
            all.put("density of rag with its shrinkage taken out after " + mill + " mill h", store -> {
                BeatingState state = rag(store, mill);
                return density(store, Fibres.COTTON_RAG, state)
                        * Math.pow(1 - free(store, Fibres.COTTON_RAG, state), 2);
            });
        }
        for (CheckValues.Row row : CheckValues.read("shrinkage_rag_1908")) {
            all.put(
                    "shrinkage of free-dried rag after " + row.text("mill_hours") + " mill h",
                    store -> 100 * free(store, Fibres.COTTON_RAG, rag(store, row.number("mill_hours"))));
        }
        for (CheckValues.Row row : CheckValues.read("rag_trial_1908")) {
            double mill = row.number("mill_hours");
            all.put(
                    "gelatine taken up by rag after " + row.text("mill_hours") + " mill h",
                    store -> SurfaceSize.gelatine(store, hours(mill * store.si("beating.mill-hour", RAG)))
                            .onPaper()
                            .likely()
                            .in("%"));
            all.put(
                    "strength by " + row.text("gelatine_percent") + " % of gelatine after " + row.text("mill_hours")
                            + " mill h",
                    store -> sized(row.number("gelatine_percent"))
                            .strengthRatio(store)
                            .likely()
                            .si());
        }
        all.put("gelatine in old writing papers", general("size.pick-up", 100));
    }

    private static SurfaceSize sized(double percentOnPaper) {
        return SurfaceSize.of(Kinds.SHARE.ofSi(0.1, "%"), Kinds.NUMBER.ofSi(percentOnPaper / 10, "%"));
    }

    /** Solids of a couched sheet of well-beaten rag, %. */
    private static double couchedRag(Assumptions store) {
        double water = store.si("web.couched-per-retention", RAG) * store.si("fibre.water-retention-well-beaten", RAG);
        return 100 / (1 + water);
    }

    private static ToDoubleFunction<Assumptions> general(String id, double factor) {
        return of(id, Scope.GENERAL, factor);
    }

    private static ToDoubleFunction<Assumptions> of(String id, Scope scope, double factor) {
        return store -> factor * store.si(id, scope);
    }

    private static void shrinkageOfOthers(Map<String, ToDoubleFunction<Assumptions>> all) {
        all.put(
                "shrinkage of free-dried flax after 9.75 h",
                store -> 100 * free(store, Fibres.FLAX_RAW, beaten(store, Fibres.FLAX_RAW, 9.75)));
        all.put(
                "shrinkage of free-dried abaca after 7 h",
                store -> 100 * free(store, Fibres.ABACA, beaten(store, Fibres.ABACA, 7)));
        for (String gsm : new String[] {"2.0", "1.6"}) {
            all.put(
                    "thickness of kozo tissue of " + gsm + " g/m2",
                    store -> DensityModel.from(store, Furnish.of(Fibres.KOZO))
                            .of(
                                    Grammage.gsm(Double.parseDouble(gsm)),
                                    Kinds.SHEET_PRESSURE.ofSi(0.1e6),
                                    BeatingState.unbeaten())
                            .caliper()
                            .likely()
                            .in("mm"));
        }
    }

    // ----------------------------------------------------------------------------------------------- moisture

    private static double ratio(Assumptions store, String material, double celsius, double percent) {
        return SorptionModel.from(store, Scope.of(material))
                .ratio(Air.of(celsius(celsius), RelativeHumidity.percent(percent)))
                .si();
    }

    private static void moistures(Map<String, ToDoubleFunction<Assumptions>> all) {
        for (String percent : new String[] {"4.4", "11.6", "18.1", "26.8", "38.3", "54.0"}) {
            all.put(
                    "water in paper of wood pulp at 70 F and " + percent + " % RH",
                    store -> 100 * ratio(store, "kraft", 21.1, Double.parseDouble(percent)));
        }
        for (int percent = 30; percent <= 90; percent += 10) {
            int rh = percent;
            all.put("water in rag writing paper at " + rh + " % RH", store -> {
                double ratio = ratio(store, "rag-paper", 20, rh);
                return 100 * ratio / (1 + ratio);
            });
        }
        all.put("regain of cotton at 65 % RH", store -> 100 * ratio(store, "cotton", 21, 65));
        all.put("regain of linen at 65 % RH", store -> 100 * ratio(store, "linen", 21, 65));
        Map.of(
                        "cotton linter", "linter-second-cut",
                        "cotton rag", "cotton-rag",
                        "flax", "flax-raw",
                        "hemp", "hemp-raw",
                        "jute", "jute",
                        "abaca", "abaca-raw",
                        "esparto", "esparto",
                        "straw", "straw",
                        "sisal", "sisal")
                .forEach((name, fibre) -> all.put(
                        "water in " + name + " as it lies", of("fibre.moisture-as-bought", Scope.of(fibre), 100)));
    }

    private static void fibres(Map<String, ToDoubleFunction<Assumptions>> all) {
        Map.of(
                        "yield of jute cooked with soda", "jute",
                        "yield of kenaf bast cooked with sulphate", "kenaf",
                        "yield of New Zealand flax cooked with 10 % of soda", "agave",
                        "cellulose in oven-dry flax", "flax-raw",
                        "cellulose in oven-dry sunn hemp", "sunn-hemp")
                .forEach((name, fibre) -> all.put(name, of("fibre.yield", Scope.of(fibre), 100)));
        all.put("length of the fibre of Korean paper mulberry", of("fibre.length", Scope.of("kozo"), 1e3));
        all.put("width of the fibre of Korean paper mulberry", of("fibre.width", Scope.of("kozo"), 1e6));
        Map.of(
                        "second-cut linters", "linter-second-cut",
                        "wheat straw", "straw",
                        "gampi", "gampi",
                        "mitsumata", "mitsumata",
                        "esparto", "esparto")
                .forEach((name, fibre) ->
                        all.put("length of the fibre of " + name, of("fibre.length", Scope.of(fibre), 1e3)));
        all.put("length of the ultimate fibre of flax", of("fibre.length", Scope.of("flax-raw"), 1e3));
        Map.of(
                        "wheat straw", "straw",
                        "gampi", "gampi",
                        "kozo", "kozo",
                        "esparto", "esparto",
                        "flax", "flax-raw",
                        "hemp", "hemp-raw",
                        "jute", "jute")
                .forEach((name, fibre) ->
                        all.put("width of the fibre of " + name, of("fibre.width", Scope.of(fibre), 1e6)));
        all.put("length of the ultimate fibre of hemp", of("fibre.length", Scope.of("hemp-raw"), 1e3));
        all.put("length of the fibre of eucalypt", of("fibre.length", Scope.of("hardwood-kraft"), 1e3));
        all.put("width of the fibre of eucalypt", of("fibre.width", Scope.of("hardwood-kraft"), 1e6));
        all.put("coarseness of eucalypt pulp", of("fibre.coarseness", Scope.of("hardwood-kraft"), 1e6));
        all.put("cellulose yielded by flax", of("fibre.yield", Scope.of("flax-raw"), 100));
        all.put("density of the wall of bast and leaf fibres", general("fibre.cell-wall-density", 1));
        all.put(
                "drainability of unbeaten wheat straw pulp",
                store -> Kinds.SCHOPPER_RIEGLER
                        .ofSi(store.si("beating.drainability-unbeaten", Scope.of("straw")))
                        .in("SR"));
        Scope titanium = Scope.of("titanium-dioxide");
        all.put("titanium dioxide held without an aid", of("additive.retention", titanium, 100));
        all.put("titanium dioxide held with an aid", of("additive.retention", titanium.on("with aid"), 100));
        all.put("freeness of unbeaten waste abaca", store -> {
            double unbeaten = store.si("beating.drainability-unbeaten", Scope.of("abaca"));
            return DrainabilityModel.from(store, Scope.of("abaca"))
                    .canadianOf(Kinds.SCHOPPER_RIEGLER.ofSi(unbeaten))
                    .value()
                    .likely()
                    .in("mL_CSF");
        });
    }

    // ----------------------------------------------------------------------------------------------- pressing

    private static PressingLaw pressingLaw(Assumptions store) {
        return new PressingLaw(
                store.si("press.factor", Scope.GENERAL),
                store.si("press.exponent", Scope.GENERAL),
                store.si("press.reference-pressure", Scope.GENERAL),
                store.si("press.floor", Scope.GENERAL),
                store.si("press.time-constant", Scope.GENERAL),
                store.si("press.rewet", Scope.GENERAL));
    }

    /** Solids, in per cent, of rag beaten for two hours and pressed for long. */
    private static double solidsOfRag(Assumptions store, double pressure) {
        double retention = WaterRetentionModel.from(store, RAG)
                .at(BeatingModel.from(store, RAG).after(hours(2)))
                .value()
                .si();
        return 100 / (1 + pressingLaw(store).ratioAtRest(10, retention, pressure, 0.1));
    }

    private static double soakedFelt(Assumptions store, double density) {
        return WetWeb.soakedFelt(
                store.si("felt.hold-factor", Scope.GENERAL), density, store.si("felt.wall-density", Scope.GENERAL));
    }

    private static void pressing(Map<String, ToDoubleFunction<Assumptions>> all) {
        all.put("solids on the wire of a laboratory former", general("web.solids-on-mould", 100));
        all.put("solids of a couched sheet in a hand mill", OutsideFigures::couchedRag);
        all.put("solids after the couch of four machine papers", OutsideFigures::couchedRag);
        all.put("solids after an oil-hydraulic hand press", store -> solidsOfRag(store, REFERENCE_PRESSURE));
        all.put("solids after the press of a cotton-rag mill", store -> solidsOfRag(store, REFERENCE_PRESSURE));
        all.put("solids out of the presses of paper machines", store -> solidsOfRag(store, 1e6));
        all.put(
                "water in linen after a laundry press of 4.7 MPa",
                store -> pressingLaw(store).equilibrium(0.48, 4.7e6));
        all.put("water in a soaked wool felt of 3.2 mm", store -> 0.81 * soakedFelt(store, 0.81 / 3.17e-3));
        all.put("water in a soaked wool felt of 180 kg/m3", store -> soakedFelt(store, 180));
        all.put("water in a soaked wool felt of 260 kg/m3", store -> soakedFelt(store, 260));
        all.put("water in a soaked wool felt of 340 kg/m3", store -> soakedFelt(store, 340));
        all.put("water left in wool spun or sucked", general("felt.water-after", 1));
        all.put(
                "height of a felt of 0.5 to 0.8 kg/m2",
                store -> 1e3 * WetWeb.feltThickness(0.65, store.si("felt.density", Scope.GENERAL)));
        all.put("water taken back from a fine felt", general("press.rewet", 1e3));
        all.put("water after a second press over that after the first", general("press.second-factor", 1));
        all.put("water after a third press over that after the second", general("press.third-factor", 1));
    }

    // ------------------------------------------------------------------------------------------------ drying

    /** Sheets of A4 and 150 g/m2 as the press leaves them, dried to 9 %. */
    private static DryingModel.Batch sheets(int count) {
        return sheets(count, 0.150, 1.5);
    }

    private static DryingModel.Batch sheets(int count, double grammage, double start) {
        double area = 0.210 * 0.297 * count;
        return DryingModel.Batch.of(
                kilograms(grammage * area),
                squareMetres(area),
                MoistureRatio.gramsPerGram(start),
                MoistureRatio.gramsPerGram(0.09),
                MoistureRatio.gramsPerGram(0.07));
    }

    private static void drying(Map<String, ToDoubleFunction<Assumptions>> all) {
        Air room = Air.of(celsius(20), RelativeHumidity.percent(50));
        Air loft = Air.of(celsius(15), RelativeHumidity.percent(65));
        all.put("film of a quiet pool", general("drying.film-still", 1));
        all.put("film in air of 1 m/s", general("drying.film-draught", 1));
        all.put("radiative film at 20 Cel", general("drying.radiative", 1));
        all.put("water over cotton at which a shirt leaves the even rate", general("drying.critical-ratio", 1));
        all.put("water taken up by soaked old books", general("drying.blotter-capacity", 1));
        all.put("vapour through two blotters", general("drying.stack-conductance", 1e3));
        all.put(
                "hours in a loft",
                store -> DryingModel.from(store, Scope.GENERAL)
                        .loft(sheets(1), loft, 1, false)
                        .hours()
                        .in("h"));
        all.put("hours sheets are left in a loft", general("drying.loft-left", 1.0 / 3600));
        all.put("hours sheets are left in the loft of another mill", general("drying.loft-left", 1.0 / 3600));
        // On a board in the shade one face is open, on a line both.
        all.put(
                "hours of a home-made sheet on a laundry line",
                store -> DryingModel.from(store, Scope.GENERAL)
                                .boards(sheets(1, 0.120, 2.5), room, Irradiance.wattsPerSquareMetre(0))
                                .hours()
                                .in("h")
                        / 2);
        all.put("time of a cotton shirt on a line over that at its first rate", general("drying.loft-tail", 1));
        all.put("what a sheet sees of the room between two others", general("drying.loft-view", 1));
        all.put(
                "hours in a stack of blotters with a fan",
                store -> DryingModel.from(store, Scope.GENERAL)
                        .stack(Kinds.VOLUME_FLOW.of(600, "m3/h"), sheets(20), room)
                        .hours()
                        .in("h"));
    }

    private static void labour(Map<String, ToDoubleFunction<Assumptions>> all) {
        ToDoubleFunction<Assumptions> crew = of("labour.sheet-time", Scope.of("crew"), 1);
        all.put("seconds a sheet of a crew of five in 1909", crew);
        all.put("seconds a sheet of laid paper by maker and coucher", crew);
        all.put("seconds a sheet at a vat of 45 x 56 cm", crew);
        ToDoubleFunction<Assumptions> small = of("labour.sheet-time", Scope.of("small"), 1);
        all.put("seconds a card of 5 x 7 in at the vat", of("labour.sheet-time", Scope.of("card"), 1));
        all.put("seconds a sheet for calligraphy", small);
        all.put("seconds to cut two deckle sides of a large sheet", general("labour.trim", 1));
        all.put(
                "sheets lost up to the dry sheet",
                store -> 100
                        * (1
                                - (1 - store.si("reject.forming", Scope.GENERAL))
                                        * (1 - store.si("reject.pressing", Scope.GENERAL))
                                        * (1 - store.si("reject.drying", Scope.GENERAL))));
        all.put("sheets lost in sizing", general("reject.sizing", 100));
    }

    private static void water(Map<String, ToDoubleFunction<Assumptions>> all) {
        all.put(
                "freeness read with water",
                store -> 1e6
                        * Freeness.sideVolume(
                                0,
                                new Freeness.Tester(
                                        store.si("freeness.csf-area", Scope.GENERAL),
                                        store.si("freeness.csf-volume", Scope.GENERAL),
                                        store.si("freeness.csf-fibre", Scope.GENERAL),
                                        store.si("freeness.csf-orifice-flow", Scope.GENERAL),
                                        store.si("freeness.csf-hold-up", Scope.GENERAL),
                                        store.si("freeness.csf-wire-resistance", Scope.GENERAL)),
                                1.002e-3,
                                WaterProperties.density(20)));
        all.put("density of water at 20 Cel", general("water.density-in-beater", 1));
        all.put("refractive index of water", general("colour.water-index", 1));
    }
}
