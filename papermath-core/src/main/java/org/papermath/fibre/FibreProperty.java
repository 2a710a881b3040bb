package org.papermath.fibre;

import java.util.Objects;
import java.util.Optional;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.notice.StockNotices;
import org.papermath.quantity.Refused;

/**
 * What the library may know of a fibre. Not every fibre has a default for every property: where none is known the
 * answer is to measure, never the number of another fibre.
 */
public enum FibreProperty {
    /** Length of the fibre as it comes to the beater. */
    LENGTH("fibre.length", "length", "Measure a few dozen fibres under a lens."),
    /** Width of the fibre. */
    WIDTH("fibre.width", "width", "Measure a few dozen fibres under a microscope."),
    /** Oven-dry mass of fibre per length. */
    COARSENESS("fibre.coarseness", "coarseness", "Have it measured by a fibre analyser."),
    /** Water in bought fibre over its mass as bought. */
    MOISTURE_AS_BOUGHT(
            "fibre.moisture-as-bought", "moisture as bought", "Weigh a sample before and after drying in an oven."),
    /** Water over oven-dry fibre at which the trade settles. */
    REGAIN("fibre.regain", "commercial regain", "Dry a sample kept at 65 % relative humidity in an oven."),
    /** Oven-dry stuff that sorting and cooking leave. */
    YIELD("fibre.yield", "yield", "Weigh the fibre before cooking and the dried stuff after it."),
    /** Ash of the fibre itself. */
    OWN_ASH("fibre.own-ash", "own ash", "Burn a sheet made without additives."),
    /** Water retention value before beating. */
    WATER_RETENTION_UNBEATEN(
            "fibre.water-retention-unbeaten",
            "water retention, unbeaten",
            "Have the water retention value measured by centrifuge (ISO 23714)."),
    /** Water retention value when well beaten. */
    WATER_RETENTION_WELL_BEATEN(
            "fibre.water-retention-well-beaten",
            "water retention, well beaten",
            "Have the water retention value measured by centrifuge (ISO 23714)."),
    /** Water retention value after very long beating. */
    WATER_RETENTION_LONG_BEATEN(
            "fibre.water-retention-long-beaten",
            "water retention, long-beaten",
            "Have the water retention value measured by centrifuge (ISO 23714)."),
    /** Rate of beating in a studio beater. */
    BEATING_RATE(
            "beating.rate",
            "beating rate",
            "Take the freeness or the draining time before and after an hour of beating."),
    /** Density of the sheet, not beaten. */
    DENSITY_UNBEATEN("sheet.density-unbeaten", "sheet density, unbeaten", "Weigh and measure one dry sheet."),
    /** Density of the sheet, long-beaten. */
    DENSITY_LONG_BEATEN("sheet.density-long-beaten", "sheet density, long-beaten", "Weigh and measure one dry sheet."),
    /** Free shrinkage of the unbeaten sheet. */
    SHRINKAGE_INITIAL("shrinkage.initial", "shrinkage, unbeaten", "Mark 200 mm on a wet strip and dry it free."),
    /** Free shrinkage that long beating tends to. */
    SHRINKAGE_LIMIT("shrinkage.limit", "shrinkage, limit", "Dry a marked strip of beaten stuff free."),
    /** Monolayer moisture ratio of the isotherm. */
    SORPTION_MONOLAYER(
            "sorption.monolayer", "isotherm", "Weigh a sheet at a known humidity and again dried in an oven.");

    private final String id;
    private final String words;
    private final String howToMeasure;

    FibreProperty(String id, String words, String howToMeasure) {
        this.id = id;
        this.words = words;
        this.howToMeasure = howToMeasure;
    }

    /**
     * Returns the id of the assumption.
     *
     * @return for example {@code beating.rate}
     */
    public String id() {
        return id;
    }

    /**
     * Returns its name for people.
     *
     * @return for example {@code beating rate}
     */
    public String words() {
        return words;
    }

    /**
     * Returns how a person measures it.
     *
     * @return a sentence
     */
    public String howToMeasure() {
        return howToMeasure;
    }

    /**
     * Looks the property of a fibre up.
     *
     * @param fibre the fibre
     * @param assumptions where to look
     * @return the assumption, or empty if there is no default and it has to be measured
     */
    public Optional<Assumption> find(Fibre fibre, Assumptions assumptions) {
        return assumptions.find(id, fibre.scope());
    }

    /**
     * Looks the property of a fibre up and insists on it.
     *
     * @param fibre the fibre
     * @param assumptions where to look
     * @return the assumption
     * @throws Refused if there is no default; the message says how to measure it
     */
    public Assumption of(Fibre fibre, Assumptions assumptions) {
        return find(fibre, assumptions).orElseThrow(() -> none(fibre.name(), fibre));
    }

    /**
     * Looks the property of a fibre up as it is in the form it is bought in. What wet pulp holds is never the number of
     * another form.
     *
     * @param fibre the fibre
     * @param form the form it is bought in
     * @param assumptions where to look
     * @return the assumption, or empty if there is no default and it has to be measured
     */
    public Optional<Assumption> find(Fibre fibre, BoughtFibre.Form form, Assumptions assumptions) {
        Optional<Assumption> found = assumptions.find(id, form.scope(fibre));
        return form == BoughtFibre.Form.WET_PULP
                ? found.filter(one -> !one.scope().isGeneral())
                : found;
    }

    /**
     * Looks the property of a fibre up as it is in the form it is bought in, and insists on it.
     *
     * @param fibre the fibre
     * @param form the form it is bought in
     * @param assumptions where to look
     * @return the assumption
     * @throws Refused if there is no default; the message says how to measure it
     */
    public Assumption of(Fibre fibre, BoughtFibre.Form form, Assumptions assumptions) {
        return find(fibre, form, assumptions)
                .orElseThrow(() -> none(
                        form == BoughtFibre.Form.usual(fibre) ? fibre.name() : fibre + " as " + form.words(), fibre));
    }

    private Refused none(String what, Fibre fibre) {
        return Refused.of(
                "fibre.no-default",
                words + " of " + what + ": no default: measure. " + howToMeasure,
                "id",
                id,
                "fibre",
                fibre.id(),
                "property",
                words);
    }

    /** What becomes of a property when fibres are blended. */
    public enum Mixing {
        /** The mean by oven-dry mass: each fibre brings its own part. */
        BY_MASS,
        /** Fibres act on one another: the mean by mass is a guess until a sheet of the blend is tested. */
        TEST,
        /** It belongs to each fibre as it is bought, before there is a blend. */
        OF_EACH
    }

    /**
     * Returns what becomes of the property in a blend.
     *
     * @return the rule
     */
    public Mixing mixing() {
        return switch (this) {
            case MOISTURE_AS_BOUGHT, YIELD -> Mixing.OF_EACH;
            case LENGTH,
                    REGAIN,
                    OWN_ASH,
                    WATER_RETENTION_UNBEATEN,
                    WATER_RETENTION_WELL_BEATEN,
                    WATER_RETENTION_LONG_BEATEN,
                    SORPTION_MONOLAYER -> Mixing.BY_MASS;
            default -> Mixing.TEST;
        };
    }

    /**
     * Returns the property of a furnish: one measured for the blend itself where there is one, else the mean by oven-dry
     * mass of its fibres.
     *
     * @param furnish the furnish
     * @param assumptions where to look
     * @return the value with its band, in the scope of the furnish; with a warning where the mean is only a guess and a
     *     sheet of the blend must be tested
     * @throws Refused if a fibre has none and no default, or the property belongs to each fibre as it is bought
     */
    public WithNotices<Assumption> of(Furnish furnish, Assumptions assumptions) {
        if (!furnish.isBlend()) {
            return WithNotices.of(of(furnish.fibres().get(0), assumptions));
        }
        Optional<Assumption> own = assumptions
                .find(id, furnish.scope())
                .filter(found -> found.scope().subject().equals(furnish.scope().subject()));
        if (own.isPresent()) {
            return WithNotices.of(own.get());
        }
        if (mixing() == Mixing.OF_EACH) {
            throw Refused.of(
                    "furnish.of-each",
                    words + " of " + furnish + ": it belongs to each fibre as it is bought. Ask for each of them.",
                    "id",
                    id,
                    "furnish",
                    furnish.toString());
        }
        double likely = 0;
        double low = 0;
        double high = 0;
        Assumption pattern = null;
        for (Fibre fibre : furnish.fibres()) {
            Assumption each = of(fibre, assumptions);
            double share = furnish.share(fibre).si();
            likely += share * each.likely();
            low += share * each.low();
            high += share * each.high();
            pattern = each;
        }
        Assumption mean = Objects.requireNonNull(pattern)
                .with(
                        furnish.scope(),
                        likely,
                        low,
                        high,
                        pattern.basis(),
                        new Source("mean by oven-dry mass of the fibres of " + furnish));
        return mixing() == Mixing.BY_MASS
                ? WithNotices.of(mean)
                : WithNotices.of(
                        mean,
                        StockNotices.blend(
                                furnish.toString(), words, "Make a sheet of the blend and test it: " + howToMeasure));
    }
}
