package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.papermath.equation.CaliperLaw;
import org.papermath.equation.Density;
import org.papermath.equation.DensityLaw;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.Furnish;
import org.papermath.notice.SheetNotices;
import org.papermath.numeric.Normal;
import org.papermath.numeric.Roots;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Units;
import org.papermath.shape.Caliper;

/**
 * Apparent density and caliper of the dry sheet from furnish, beating, pressing and finish. Immutable.
 *
 * <p>Beating: {@code 1/rho = (1 - y)/rho_0 + y/rho_1} for the state y of the fibre; pressing: {@code rho (min(p, p_sat)/p0)^k},
 * from 0.05 to 4 MPa; below that the sheet is taken as pressed at 0.05 MPa. A fibre of which only the density of lightly
 * pressed sheets is known has that one, however it is pressed and beaten. About ±20 %, ±7 % after one sheet by scale and micrometer. Caliper is that of a single sheet
 * between flat feet at 100 kPa.
 *
 * @source ISO 534 for the pressure of the caliper; densities by fibre as stated at {@code sheet.density-unbeaten};
 *     beaten rag and the finishes from Sindall, The Manufacture of Paper, 1908, ch. IX, and Cross and Bevan, A
 *     Text-Book of Paper-Making, 1888
 */
public final class DensityModel {
    /** What one sheet by scale and micrometer leaves, of density. */
    private static final double LEFT_BY_ONE_SHEET = 0.07;

    /** How far what is solved for may leave the thickness from the want, of it. */
    private static final double SOLVED = 1e-9;

    /** The pressure of the micrometer the calipers are meant for. */
    public static final Amount<SheetPressure> CALIPER_PRESSURE = Caliper.HUNDRED_KILOPASCALS;

    private static final String UNBEATEN = "sheet.density-unbeaten";
    private static final String BEATEN = "sheet.density-long-beaten";
    private static final String LIGHTLY = "sheet.density-lightly-pressed";
    private static final List<String> IDS =
            List.of(UNBEATEN, BEATEN, LIGHTLY, "sheet.density-exponent", "sheet.density-saturation-pressure");
    private static final double FREENESS_500 =
            Kinds.CANADIAN_FREENESS.of(500, "mL_CSF").si();

    private final Assumptions assumptions;
    private final Scope scope;
    private final List<Part> parts;

    private record Part(double share, Scope scope) {}

    /** How the dry sheet is finished. */
    public enum Finish {
        /** As it comes out of drying. */
        NONE(""),
        /** Glazed between plates or rolls. */
        GLAZED("glazed"),
        /** Strongly glazed, between plates many times or supercalendered. */
        STRONG_GLAZE("strong-glaze");

        private final String subject;

        Finish(String subject) {
            this.subject = subject;
        }
    }

    /** What a sheet will be like to the micrometer. */
    public sealed interface Result permits FoundResult {
        /** {@return the apparent density} */
        Estimate<ApparentDensity> density();

        /** {@return the caliper of a single sheet at {@link #CALIPER_PRESSURE}} */
        Estimate<Length> caliper();

        /** {@return the conditioned grammage after finishing; that before when it is not finished} */
        Estimate<Grammage> grammage();

        /** {@return what it should not be read without} */
        List<Notice> notices();

        /**
         * Returns the likely caliper with its measuring pressure, to put beside one that was measured.
         *
         * @return the caliper of a single sheet
         */
        Caliper stated();
    }

    private record FoundResult(
            Estimate<ApparentDensity> density,
            Estimate<Length> caliper,
            Estimate<Grammage> grammage,
            List<Notice> notices)
            implements Result {
        @Override
        public Caliper stated() {
            return Caliper.of(caliper.likely(), CALIPER_PRESSURE);
        }

        @Override
        public String toString() {
            return caliper + " at " + CALIPER_PRESSURE + ", " + density;
        }
    }

    private DensityModel(Assumptions assumptions, Scope scope, List<Part> parts) {
        this.assumptions = assumptions;
        this.scope = scope;
        this.parts = parts;
    }

    /**
     * Makes the model by the shipped assumptions.
     *
     * @param furnish the fibres
     * @return the model
     */
    public static DensityModel standard(Furnish furnish) {
        Objects.requireNonNull(furnish, "furnish");
        return from(Assumptions.standard(), furnish);
    }

    /**
     * Makes the model of a furnish: where the furnish has densities of its own, measured, those; else a blend takes the
     * bulk of its fibres by oven-dry mass.
     *
     * @param assumptions the store
     * @param furnish the fibres
     * @return the model
     */
    public static DensityModel from(Assumptions assumptions, Furnish furnish) {
        return from(assumptions, furnish, "");
    }

    /**
     * Makes the model of a furnish on a press: what was measured on that press stands before what is known of the
     * furnish or its fibres anywhere.
     *
     * @param assumptions the store
     * @param furnish the fibres
     * @param press the name of the press; empty for none
     * @return the model
     */
    public static DensityModel from(Assumptions assumptions, Furnish furnish, String press) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        Objects.requireNonNull(press, "press");
        Scope whole = on(furnish.scope(), press);
        if (!furnish.isBlend()
                || isBeaten(assumptions, whole)
                || assumptions.find(LIGHTLY, whole).isPresent()) {
            return from(assumptions, whole);
        }
        List<Part> parts = new ArrayList<>();
        furnish.shares().forEach((fibre, share) -> parts.add(new Part(share.si(), on(fibre.scope(), press))));
        return new DensityModel(assumptions, whole, List.copyOf(parts));
    }

    private static Scope on(Scope scope, String place) {
        return place.isEmpty() ? scope : scope.on(place);
    }

    /**
     * Makes the model of a furnish, perhaps on a press.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish
     * @return the model
     */
    public static DensityModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new DensityModel(assumptions, scope, List.of(new Part(1, scope)));
    }

    /**
     * Returns the density of a sheet that is not finished.
     *
     * @param pressure the last pressure on the sheet
     * @param beating how far the fibre was beaten
     * @return the apparent density; at most 1500 kg/m³
     * @throws Refused if there is no density for this furnish, or a value is out of range
     */
    public Amount<ApparentDensity> density(Quantity<SheetPressure> pressure, BeatingState beating) {
        double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
        return Kinds.DENSITY.ofSi(density(assumptions, p, beating), "kg/m3");
    }

    private double density(Assumptions store, double pressure, BeatingState beating) {
        return law(store, beating).density(pressure, store.si("sheet.density-most", scope));
    }

    private DensityLaw law(Assumptions store, BeatingState beating) {
        if (parts.size() == 1) {
            return ofPart(store, parts.get(0).scope(), beating);
        }
        return new DensityLaw.Blend(
                parts.stream().mapToDouble(Part::share).toArray(),
                parts.stream().map(part -> ofPart(store, part.scope(), beating)).toArray(DensityLaw[]::new));
    }

    private static DensityLaw ofPart(Assumptions store, Scope scope, BeatingState beating) {
        return isLightlyPressed(store, scope)
                ? new DensityLaw.LightlyPressed(store.si(LIGHTLY, scope))
                : beaten(store, scope, beating);
    }

    private static DensityLaw.Beaten beaten(Assumptions store, Scope scope, BeatingState beating) {
        return new DensityLaw.Beaten(
                store.si(UNBEATEN, scope),
                store.si(BEATEN, scope),
                beating.of(scope).si(),
                pressing(store, scope));
    }

    private static DensityLaw.Pressing pressing(Assumptions store, Scope scope) {
        return new DensityLaw.Pressing(
                store.si("sheet.density-exponent", scope),
                store.si("sheet.density-reference-pressure", scope),
                store.si("sheet.density-least-pressure", scope),
                store.si("sheet.density-saturation-pressure", scope));
    }

    private static boolean isLightlyPressed(Assumptions store, Scope scope) {
        return !isBeaten(store, scope) && store.find(LIGHTLY, scope).isPresent();
    }

    private static boolean isBeaten(Assumptions store, Scope scope) {
        return store.find(UNBEATEN, scope).isPresent()
                && store.find(BEATEN, scope).isPresent();
    }

    private static CaliperLaw calipers(Assumptions store) {
        return new CaliperLaw(store.si("sheet.thinnest", Scope.GENERAL));
    }

    /**
     * Returns density and caliper of a sheet dried under restraint and not finished.
     *
     * @param conditioned the conditioned grammage
     * @param pressure the last pressure on the sheet
     * @param beating how far the fibre was beaten
     * @return density and caliper
     * @throws Refused as {@link #density}
     */
    public Result of(Quantity<Grammage> conditioned, Quantity<SheetPressure> pressure, BeatingState beating) {
        return of(conditioned, pressure, beating, Restraint.STACK, Finish.NONE);
    }

    /**
     * Returns density and caliper: {@code t = w + t0 exp(-w/t0)} with {@code w = W/rho}. Finishing thins the sheet
     * ({@code sheet.thickness-factor}) and stretches it ({@code sheet.grammage-factor}), so glazing makes it denser by
     * 0.933/0.77.
     *
     * @param conditioned the conditioned grammage before finishing
     * @param pressure the last pressure on the sheet
     * @param beating how far the fibre was beaten
     * @param restraint how it was dried
     * @param finish how it was finished
     * @return density and caliper
     * @throws Refused as {@link #density}
     */
    public Result of(
            Quantity<Grammage> conditioned,
            Quantity<SheetPressure> pressure,
            BeatingState beating,
            Restraint restraint,
            Finish finish) {
        double w = Kinds.GRAMMAGE.si(conditioned, "conditioned grammage");
        double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
        Estimate<Length> caliper = Bands.of(
                assumptions, uses(finish), store -> Kinds.LENGTH.ofSi(caliper(store, w, p, beating, finish), "mm"));
        // The apparent density is what scale and micrometer would give, with the thin-sheet rule and the finish in it.
        Estimate<ApparentDensity> density = Bands.of(
                assumptions,
                uses(finish),
                store -> Kinds.DENSITY.ofSi(
                        w * stretch(store, finish) / caliper(store, w, p, beating, finish), "kg/m3"));
        Estimate<Grammage> grammage =
                Bands.of(assumptions, uses(finish), store -> Kinds.GRAMMAGE.ofSi(w * stretch(store, finish), "g/m2"));
        return new FoundResult(
                density,
                caliper,
                grammage,
                notices(w, p, beating, restraint, finish, density.likely(), grammage.likely()));
    }

    /**
     * Returns the pressure a sheet has to be pressed at to come out as thick as wanted, not finished.
     *
     * <pre>{@code
     * DensityModel rag = DensityModel.standard(Furnish.of(Fibres.COTTON_RAG));
     * BeatingState half = BeatingState.at(Share.percent(50));
     * rag.pressureFor(micrometres(250), Grammage.gsm(150), half).to("kPa"); // 925.6 kPa
     * }</pre>
     *
     * @param caliper the thickness wanted, of a single sheet at {@link #CALIPER_PRESSURE}
     * @param conditioned the conditioned grammage
     * @param beating how far the fibre was beaten
     * @return the pressure
     * @throws Refused if no pressure of the law gives that thickness, with what it does give; if pressing does not move the
     *     density of this furnish, or nothing is known of it
     */
    public Amount<SheetPressure> pressureFor(
            Quantity<Length> caliper, Quantity<Grammage> conditioned, BeatingState beating) {
        Objects.requireNonNull(beating, "beating");
        double wanted = Kinds.LENGTH.siAboveZero(caliper, "thickness wanted");
        double w = Kinds.GRAMMAGE.si(conditioned, "conditioned grammage");
        double least = parts.stream()
                .mapToDouble(part -> assumptions.si("sheet.density-least-pressure", part.scope()))
                .min()
                .orElseThrow();
        double most = parts.stream()
                .mapToDouble(part -> assumptions.si("sheet.density-saturation-pressure", part.scope()))
                .max()
                .orElseThrow();
        // Density goes with a power of the pressure, so it is the logarithm that is looked for.
        double root = solved(
                wanted,
                Math.log(least),
                Math.log(most),
                x -> caliper(assumptions, w, Math.exp(x), beating, Finish.NONE),
                x -> "pressed at " + Kinds.SHEET_PRESSURE.ofSi(Math.exp(x), "kPa"));
        return Kinds.SHEET_PRESSURE.ofSi(Math.exp(root), "kPa");
    }

    /**
     * Returns how far the fibre has to be beaten for a sheet to come out as thick as wanted, not finished.
     *
     * <pre>{@code
     * DensityModel rag = DensityModel.standard(Furnish.of(Fibres.COTTON_RAG));
     * rag.beatingFor(micrometres(250), Grammage.gsm(150), SheetPressure.kilopascals(400)); // 77.82 %
     * }</pre>
     *
     * @param caliper the thickness wanted, of a single sheet at {@link #CALIPER_PRESSURE}
     * @param conditioned the conditioned grammage
     * @param pressure the last pressure on the sheet
     * @return the state of beating, the same of every fibre of a blend, to be had by {@link BeatingState#at}
     * @throws Refused if no state gives that thickness, with what beating does give, or nothing is known of the density
     */
    public Amount<Share> beatingFor(
            Quantity<Length> caliper, Quantity<Grammage> conditioned, Quantity<SheetPressure> pressure) {
        double wanted = Kinds.LENGTH.siAboveZero(caliper, "thickness wanted");
        double w = Kinds.GRAMMAGE.si(conditioned, "conditioned grammage");
        double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
        return Kinds.SHARE.ofSi(
                solved(
                        wanted,
                        0,
                        1,
                        y -> caliper(assumptions, w, p, BeatingState.at(Kinds.SHARE.ofSi(y)), Finish.NONE),
                        y -> "beaten to " + Kinds.SHARE.ofSi(y, "%")),
                "%");
    }

    /**
     * Returns how long a furnish has to be beaten in a beater for a sheet to come out as thick as wanted, not finished.
     *
     * @param furnish the fibres
     * @param beater the name of the beater; empty for none in particular
     * @param caliper the thickness wanted, of a single sheet at {@link #CALIPER_PRESSURE}
     * @param conditioned the conditioned grammage
     * @param pressure the last pressure on the sheet
     * @return the time, within {@link Limits#BEATING}
     * @throws Refused if no time of those gives that thickness, with what beating does give, or nothing is known of the
     *     density or the beating
     */
    public Amount<Time> beatingTimeFor(
            Furnish furnish,
            String beater,
            Quantity<Length> caliper,
            Quantity<Grammage> conditioned,
            Quantity<SheetPressure> pressure) {
        Objects.requireNonNull(furnish, "furnish");
        Objects.requireNonNull(beater, "beater");
        double wanted = Kinds.LENGTH.siAboveZero(caliper, "thickness wanted");
        double w = Kinds.GRAMMAGE.si(conditioned, "conditioned grammage");
        double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
        return Kinds.TIME.ofSi(
                solved(
                        wanted,
                        0,
                        Limits.BEATING.most().si(),
                        t -> caliper(
                                assumptions,
                                w,
                                p,
                                BeatingState.after(assumptions, furnish, beater, Kinds.TIME.ofSi(t)),
                                Finish.NONE),
                        t -> "beaten for " + Kinds.TIME.ofSi(t, "h")),
                "h");
    }

    /** Where a thickness that goes one way only is as wanted; refused, with what both ends give, where it never is. */
    private double solved(
            double wanted, double from, double to, DoubleUnaryOperator caliper, DoubleFunction<String> words) {
        double first = caliper.applyAsDouble(from);
        double last = caliper.applyAsDouble(to);
        if (Math.min(first, last) <= wanted && wanted <= Math.max(first, last) && first != last) {
            double root = Roots.between(from, to, x -> caliper.applyAsDouble(x) - wanted);
            if (Math.abs(caliper.applyAsDouble(root) - wanted) <= SOLVED * wanted) {
                return root;
            }
        }
        throw Refused.of(
                "density.not-reached",
                "thickness wanted: " + Kinds.LENGTH.ofSi(wanted, "um") + " given; " + words.apply(from)
                        + " a sheet of "
                        + toString().replaceFirst("^density", "the furnish ").trim() + " is "
                        + Kinds.LENGTH.ofSi(first, "um") + " thick, " + words.apply(to) + " "
                        + Kinds.LENGTH.ofSi(last, "um")
                        + ". Change the grammage, the furnish or the other of pressing and"
                        + " beating.",
                "given",
                Kinds.LENGTH.ofSi(wanted, "um").toString(),
                "first",
                Kinds.LENGTH.ofSi(first, "um").toString(),
                "last",
                Kinds.LENGTH.ofSi(last, "um").toString());
    }

    /** Grammage after finishing over that before; 1 where no one has published it. */
    private static double stretch(Assumptions store, Finish finish) {
        return finish == Finish.NONE
                ? 1
                : store.find("sheet.grammage-factor", Scope.of(finish.subject))
                        .map(Assumption::likelySi)
                        .orElse(1.0);
    }

    private List<Bands.Use> uses(Finish finish) {
        List<Bands.Use> uses = new ArrayList<>();
        for (Part part : parts) {
            uses.add(new Bands.Use(part.scope(), IDS));
        }
        uses.add(Bands.Use.of(Scope.GENERAL, "sheet.thinnest"));
        if (finish != Finish.NONE) {
            uses.add(Bands.Use.of(Scope.of(finish.subject), "sheet.thickness-factor", "sheet.grammage-factor"));
        }
        return uses;
    }

    private double caliper(Assumptions store, double grammage, double pressure, BeatingState beating, Finish finish) {
        double finished = finish == Finish.NONE ? 1 : store.si("sheet.thickness-factor", Scope.of(finish.subject));
        return finished * calipers(store).caliper(grammage, density(store, pressure, beating));
    }

    private List<Notice> notices(
            double w,
            double p,
            BeatingState beating,
            Restraint restraint,
            Finish finish,
            Amount<ApparentDensity> density,
            Amount<Grammage> finished) {
        List<Notice> notices = new ArrayList<>();
        if (SheetNotices.isThin(w, assumptions::si)) {
            notices.add(SheetNotices.thin(Kinds.GRAMMAGE.ofSi(w, "g/m2"), assumptions::si));
        }
        SheetNotices.doubtful(density, assumptions::si, scope).ifPresent(notices::add);
        double least = assumptions.si("sheet.density-least-pressure", scope);
        if (p < least && law(assumptions, beating).answersToPressing()) {
            notices.add(Notice.warning(
                    "density.pressure-low",
                    "Pressed at " + Kinds.SHEET_PRESSURE.ofSi(p, "kPa") + ": below "
                            + Kinds.SHEET_PRESSURE.ofSi(least, "kPa") + " the density is taken as of that pressure"
                            + " (at-model-limit); expect a bulkier sheet.",
                    "given",
                    Kinds.SHEET_PRESSURE.ofSi(p, "kPa").toString(),
                    "limit",
                    Kinds.SHEET_PRESSURE.ofSi(least, "kPa").toString()));
        }
        double warning = assumptions.si("press.pressure-warning", Scope.GENERAL);
        double saturation = assumptions.si("sheet.density-saturation-pressure", scope);
        if (p > warning) {
            notices.add(Notice.warning(
                    "density.pressure-high",
                    "Pressed at " + Kinds.SHEET_PRESSURE.ofSi(p, "MPa") + ": above "
                            + Kinds.SHEET_PRESSURE.ofSi(saturation, "MPa") + " the model makes no sheet denser"
                            + " (at-model-limit).",
                    "given",
                    Kinds.SHEET_PRESSURE.ofSi(p, "MPa").toString()));
        }
        if (restraint.shareSi(assumptions, false) < 0.5) {
            notices.add(Notice.note(
                    "density.free-dried",
                    "The densities are those of sheets dried flat under restraint; a sheet dried " + restraint.name()
                            + " comes out bulkier and rougher.",
                    "restraint",
                    restraint.name()));
        }
        if (finish != Finish.NONE) {
            notices.add(Notice.note(
                    "density.finish-stretch",
                    assumptions
                                    .find("sheet.grammage-factor", Scope.of(finish.subject))
                                    .isPresent()
                            ? "Glazing also stretches the sheet: it comes to " + finished + " and is larger by as much."
                            : "Strong glazing also stretches the sheet, and no published figure says how much; the"
                                    + " grammage is left as it was. Weigh and measure a sheet.",
                    "finish",
                    finish.name(),
                    "grammage",
                    finished.toString()));
        }
        if (parts.size() > 1) {
            notices.add(Notice.note(
                    "density.blend",
                    "The density of this blend is from the bulk of its fibres by mass, which no one has measured;"
                            + " measure a sheet."));
        }
        if (parts.stream().anyMatch(part -> isLightlyPressed(assumptions, part.scope()))) {
            notices.add(Notice.note(
                    "density.lightly-pressed",
                    "For this fibre only the density of lightly pressed sheets is known; pressing and beating do not"
                            + " enter.",
                    "scope",
                    scope.toString()));
        }
        return List.copyOf(notices);
    }

    /**
     * Returns the density of laboratory sheets predicted from one freeness alone, by the shipped line.
     *
     * @param freeness the Canadian Standard freeness
     * @return the density within ±29 kg/m³, with a warning
     * @throws Refused if the freeness is out of range
     */
    public static WithNotices<Estimate<ApparentDensity>> ofFreeness(Quantity<CanadianFreeness> freeness) {
        return ofFreeness(Assumptions.standard(), freeness);
    }

    /**
     * Returns the density of laboratory sheets predicted from one freeness alone, by a straight line fitted within one
     * mill. It explains two fifths of the scatter there and says nothing about another pulp: only a measured sheet
     * does.
     *
     * @param assumptions where the line and its scatter are looked up
     * @param freeness the Canadian Standard freeness
     * @return the density, within ±29 kg/m³ as shipped, with a warning
     * @throws Refused if the freeness is out of range
     * @source Lindström et al., Computers and Chemical Engineering 199, 2025, 109143: 46 thermomechanical pulps
     */
    public static WithNotices<Estimate<ApparentDensity>> ofFreeness(
            Assumptions assumptions, Quantity<CanadianFreeness> freeness) {
        Objects.requireNonNull(assumptions, "assumptions");
        double none = assumptions.si("sheet.density-at-no-freeness", Scope.GENERAL);
        double slope = (assumptions.si("sheet.density-at-freeness-500", Scope.GENERAL) - none) / FREENESS_500;
        double likely = Density.ofFreeness(Kinds.CANADIAN_FREENESS.si(freeness, "freeness"), none, slope);
        double half = assumptions.si("sheet.density-freeness-half-band", Scope.GENERAL);
        return WithNotices.of(
                Estimate.of(
                        Kinds.DENSITY.ofSi(likely, "kg/m3"),
                        Kinds.DENSITY.ofSi(likely - half, "kg/m3"),
                        Kinds.DENSITY.ofSi(likely + half, "kg/m3"),
                        List.of()),
                Notice.warning(
                        "density.from-freeness",
                        "Freeness predicts density within one mill only, to about ±" + Kinds.DENSITY.ofSi(half, "kg/m3")
                                + ", and never across pulps. Measure a sheet by scale and micrometer.",
                        "half",
                        Kinds.DENSITY.ofSi(half, "kg/m3").toString()));
    }

    /**
     * Calibrates the densities of a furnish by one dry sheet, scale and micrometer: the reference density is
     * {@code rho/(min(p, p_sat)/p0)^k}, and the densities of the table are scaled to it.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish, perhaps on a press
     * @param conditioned the conditioned grammage of the sheet
     * @param caliper its caliper, at {@link #CALIPER_PRESSURE}
     * @param pressure the last pressure on it
     * @param beating how far the fibre was beaten
     * @return the store with the densities of the furnish measured
     * @throws Refused if the sheet is below 20 g/m², its density is outside what paper can have, or a value is out of
     *     range
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Reading<Grammage> conditioned,
            Reading<Length> caliper,
            Quantity<SheetPressure> pressure,
            BeatingState beating) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(conditioned, "conditioned");
        Objects.requireNonNull(beating, "beating");
        double w = Kinds.GRAMMAGE.siWithin(
                conditioned.value(),
                "grammage of the measured sheet",
                assumptions.si("sheet.grammage-thin", Scope.GENERAL),
                2);
        double t = Kinds.LENGTH.siAboveZero(caliper.value(), "caliper of the measured sheet");
        // What single fibres add to the thickness is not the bulk of the sheet.
        double solid = calipers(assumptions).solid(t);
        double measured = Density.of(w, Double.isNaN(solid) ? t : solid);
        double least = assumptions.si("sheet.density-doubtful-low", scope) / 2;
        double most = assumptions.si("sheet.density-most", scope);
        SheetNotices.requireDensity(measured, Double.isNaN(solid), least, most);
        double error = Math.hypot(conditioned.error().si() / w, caliper.error().si() / t);
        double half = Math.hypot(1.645 * error, LEFT_BY_ONE_SHEET);
        double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
        Source source = new Source("one dry sheet by scale and micrometer, pressed at " + pressure);
        if (isLightlyPressed(assumptions, scope)) {
            return assumptions.with(measured(assumptions.get(LIGHTLY, scope), scope, measured, half, source));
        }
        DensityLaw.Beaten law = beaten(assumptions, scope, beating)
                .measured(
                        measured,
                        p,
                        Math.min(most, assumptions.get(BEATEN, scope).most()));
        if (!(law.unbeaten() > 0
                && law.unbeaten() <= assumptions.get(UNBEATEN, scope).most())) {
            throw Refused.of(
                    "density.calibration-beyond",
                    "density of the measured sheet: " + Kinds.DENSITY.ofSi(measured, "kg/m3") + " pressed at "
                            + pressure
                            + "; pressed at the reference pressure it would be denser than "
                            + Units.fourDigits(most) + " kg/m³, which no sheet without fillers is. Check the thickness,"
                            + " the grammage and the pressure.",
                    "given",
                    measured,
                    "pressure",
                    pressure.toString(),
                    "most",
                    Units.fourDigits(most) + " kg/m³");
        }
        return assumptions
                .with(measured(assumptions.get(UNBEATEN, scope), scope, law.unbeaten(), half, source))
                .with(measured(assumptions.get(BEATEN, scope), scope, law.longBeaten(), half, source));
    }

    /**
     * Calibrates the densities of a furnish by one dry sheet of it, as the other form does. A blend that has none of its
     * own yet begins with the bulk of its fibres by oven-dry mass at either end of beating.
     *
     * @param assumptions the store
     * @param furnish the fibres of the sheet
     * @param conditioned the conditioned grammage of the sheet
     * @param caliper its caliper, at {@link #CALIPER_PRESSURE}
     * @param pressure the last pressure on it
     * @param beating how far the fibre was beaten
     * @return the store with the densities of the furnish measured
     * @throws Refused as the other form, or if nothing is known of the density of one of the fibres
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Furnish furnish,
            Reading<Grammage> conditioned,
            Reading<Length> caliper,
            Quantity<SheetPressure> pressure,
            BeatingState beating) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        Scope scope = furnish.scope();
        Assumptions begun = assumptions;
        if (furnish.isBlend()
                && !isBeaten(assumptions, scope)
                && assumptions.find(LIGHTLY, scope).isEmpty()) {
            double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
            double unbeaten = 0;
            double longBeaten = 0;
            double lightly = 0;
            for (Part part : from(assumptions, furnish).parts) {
                if (isLightlyPressed(assumptions, part.scope())) {
                    // What answers to no pressing has that density at the pressure of the sheet, however far beaten.
                    double usual = assumptions.si(LIGHTLY, part.scope());
                    double bulk = part.share() * pressing(assumptions, scope).factor(p) / usual;
                    unbeaten += bulk;
                    longBeaten += bulk;
                    lightly += part.share() / usual;
                } else {
                    unbeaten += part.share() / assumptions.si(UNBEATEN, part.scope());
                    longBeaten += part.share() / assumptions.si(BEATEN, part.scope());
                    lightly = Double.NaN;
                }
            }
            begun = Double.isNaN(lightly)
                    ? assumptions.given(UNBEATEN, scope, 1 / unbeaten).given(BEATEN, scope, 1 / longBeaten)
                    : assumptions.given(LIGHTLY, scope, 1 / lightly);
        }
        return calibrate(begun, scope, conditioned, caliper, pressure, beating);
    }

    private static Assumption measured(Assumption old, Scope scope, double density, double half, Source source) {
        return old.with(
                scope,
                density,
                density / (1 + half),
                Math.min(density * (1 + half), old.most()),
                Basis.MEASURED_HERE,
                source);
    }

    /**
     * Calibrates the densities of a furnish by one dry sheet whose caliper says how it was measured.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish, perhaps on a press
     * @param conditioned the conditioned grammage of the sheet
     * @param caliper its caliper; one at another pressure than {@link #CALIPER_PRESSURE} is refused
     * @param error the standard error of the thickness
     * @param pressure the last pressure of the press on it
     * @param beating how far the fibre was beaten
     * @return the store with the densities of the furnish measured
     * @throws Refused if the caliper was not measured alone at {@link #CALIPER_PRESSURE}, or as the other form
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Reading<Grammage> conditioned,
            Caliper caliper,
            Quantity<Length> error,
            Quantity<SheetPressure> pressure,
            BeatingState beating) {
        Objects.requireNonNull(caliper, "caliper");
        if (!caliper.pressure().isWithin(CALIPER_PRESSURE, 0.1) || caliper.sheets() != 1) {
            throw Refused.of(
                    "density.caliper-pressure",
                    "caliper: " + caliper + " given; the densities are those of single sheets at " + CALIPER_PRESSURE
                            + ". Measure so, or give the thickness alone and live with the difference.",
                    "given",
                    caliper.toString(),
                    "wanted",
                    CALIPER_PRESSURE.toString());
        }
        return calibrate(
                assumptions,
                scope,
                conditioned,
                Reading.of(caliper.thickness(), Kinds.LENGTH.check(error, "error of the caliper")),
                pressure,
                beating);
    }

    /**
     * Returns what two figures for one caliper should not be read without: a slip between thousandths of an inch and
     * micrometres.
     *
     * @param first one figure
     * @param second the other
     * @return a warning when they differ by more than 1 %
     */
    public static List<Notice> compared(Quantity<Length> first, Quantity<Length> second) {
        double a = Kinds.LENGTH.siAboveZero(first, "first caliper");
        double b = Kinds.LENGTH.siAboveZero(second, "second caliper");
        if (Math.abs(a - b) <= 0.01 * Math.max(a, b)) {
            return List.of();
        }
        return List.of(Notice.warning(
                "caliper.two-figures",
                "The calipers " + first + " and " + second + " are not the same: the first is "
                        + Kinds.LENGTH.ofSi(a, "um") + ".",
                "first",
                first.toString(),
                "second",
                second.toString()));
    }

    /**
     * Takes the density of finished sheets from one of them, whatever the furnish and the pressing: {@code rho = W/t}.
     *
     * @param assumptions the store
     * @param scope the recipe and the dryer
     * @param conditioned the conditioned grammage of the sheet
     * @param caliper its caliper, above zero
     * @return the store with {@code sheet.density-measured} in that scope
     * @throws Refused if a value is out of range
     */
    public static Assumptions calibrateMeasured(
            Assumptions assumptions, Scope scope, Reading<Grammage> conditioned, Reading<Length> caliper) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(conditioned, "conditioned");
        Objects.requireNonNull(caliper, "caliper");
        double density = Kinds.DENSITY
                .ofSi(conditioned.value().si() / Kinds.LENGTH.siAboveZero(caliper.value(), "thickness of the sheet"))
                .si();
        return assumptions.measuredFactor(
                "sheet.density-measured",
                scope,
                density,
                Math.hypot(
                        Normal.FIVE_PERCENT_POINT * Math.hypot(conditioned.relativeError(), caliper.relativeError()),
                        LEFT_BY_ONE_SHEET));
    }

    @Override
    public String toString() {
        return "density" + scope;
    }
}
