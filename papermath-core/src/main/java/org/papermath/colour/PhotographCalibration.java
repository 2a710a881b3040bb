package org.papermath.colour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.ColourDifference;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Refused;

/**
 * What turns the light of a photograph into colour: every value is divided by that of a flat field, if there is one, and by
 * that of a grey card, times the card's own reflectance; then a matrix of three by three leads to tristimulus values under D65.
 * The matrix is the one that leaves the known patches and the card the least squares, each over the steepness of lightness
 * there, so that a dark patch counts as much as a light one. Immutable.
 *
 * <p>A camera does not see as an eye does. Two pigments that look the same may come out differently, and the other way round;
 * patches made as the sheets are, read once with a colorimeter, keep that small. A colour far from all patches is guessed.
 * {@link #patches} says what is left at each, and what would be if it were not among those the matrix was found by.
 *
 * @source linear least squares from linear camera values, over those of a grey card, to tristimulus values of a colour card:
 *     PLOS ONE 15(3), e0230561, 2020; the weights and the limit of the residual are common practice, no source
 */
public final class PhotographCalibration {
    /** Steps of 8 bits are 5 % of so dark a value, which noise still evens out. */
    static final double DARK = 0.02;

    private static final int LEAST_PATCHES = 6;
    /** A part of what a camera says in one colour, not said in the other two: with less, noise makes up the matrix. */
    private static final double LEAST_TOLD = 0.02;
    /** A patch that decides so much of what comes out for it is checked by no other. */
    private static final double ALONE = 0.99;

    private final Photograph photograph;
    private final @Nullable FlatField flat;
    private final double[] card;
    private final double reflectance;
    private final Matrix matrix;
    private final List<PatchFit> patches;
    private final double cardDifference;

    /** A known patch, and what the photograph makes of it. */
    public sealed interface PatchFit permits FoundPatch {
        /** {@return what it is called} */
        String name();

        /** {@return its colour as it was given, as it looks under D65} */
        Lab known();

        /** {@return ΔE00 between what was given and what the photograph tells} */
        double difference();

        /** {@return ΔE00 that would be left if the matrix were found by the others alone} */
        double leftOut();
    }

    private record FoundPatch(String name, Lab known, double difference, double leftOut) implements PatchFit {
        @Override
        public String toString() {
            return name + ": ΔE00 " + ColourRange.said(difference) + ", " + ColourRange.said(leftOut) + " if left out";
        }
    }

    /** A colour read in a photograph. */
    public sealed interface RegionColour permits FoundColour {
        /** {@return the mean of the region under D65} */
        Xyz xyz();

        /** {@return the mean of the region under D65} */
        Lab lab();

        /** {@return the mean of the region in {@link Wavebands#THREE}; refused if it is too strong or too bright for them} */
        Reflectance reflectance();

        /** {@return ΔE00, the standard deviation of the fields of a grid of eight by eight from the mean} */
        double scatter();

        /** {@return how many pixels the region has} */
        int pixels();
    }

    private record FoundColour(Xyz xyz, double scatter, int pixels) implements RegionColour {
        @Override
        public Lab lab() {
            return xyz.lab();
        }

        @Override
        public Reflectance reflectance() {
            return Reflectance.ofColour(xyz);
        }

        @Override
        public String toString() {
            return lab() + ", scatter ΔE00 " + ColourRange.said(scatter) + " over " + pixels + " pixels";
        }
    }

    /** A patch as it is given. */
    private record Patch(String name, PictureRegion region, Xyz known) {}

    /** What a photograph is calibrated by. */
    public static final class Builder {
        private final Photograph photograph;
        private final Assumptions assumptions;
        private final List<Patch> patches = new ArrayList<>();
        private @Nullable FlatField flat;
        private @Nullable PictureRegion card;
        private double reflectance;

        Builder(Photograph photograph, Assumptions assumptions) {
            this.photograph = photograph;
            this.assumptions = assumptions;
        }

        /**
         * Takes out how unevenly the light falls. Without it the light has to be even, for the patches lie elsewhere than the
         * sheets.
         *
         * @param board a plain white board in the place of the sheets, in the same light, from the same place; its exposure
         *     may be another
         * @return this builder
         * @throws Refused if it is not of the size of the photograph
         */
        public Builder flatField(Photograph board) {
            Objects.requireNonNull(board, "board");
            if (board.width() != photograph.width() || board.height() != photograph.height()) {
                throw otherSize(board, photograph);
            }
            flat = new FlatField(board);
            return this;
        }

        /**
         * Says where the grey card lies, and what it sends back.
         *
         * @param region where it lies
         * @param ownReflectance what share of the light this very card sends back, as its maker or a colorimeter tells it, 0.02
         *     to 1; cards sold as grey differ. From a colorimeter it is Y over 100
         * @return this builder
         * @throws Refused if the reflectance is out of range
         */
        public Builder greyCard(PictureRegion region, double ownReflectance) {
            card = Objects.requireNonNull(region, "region");
            reflectance = ColourRange.check("reflectance of the grey card, a share", ownReflectance, 0.02, 1);
            return this;
        }

        /**
         * Adds a patch whose colour is known.
         *
         * @param name what it is called, each once
         * @param region where it lies
         * @param known its colour, in the light it was told in; another light than D65 is adapted to that
         * @return this builder
         * @throws Refused if the name is blank or was given before, or no surface has that colour
         */
        public Builder patch(String name, PictureRegion region, Lab known) {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(region, "region");
            Objects.requireNonNull(known, "known");
            if (name.isBlank()
                    || patches.stream().anyMatch(patch -> patch.name().equals(name))) {
                throw Refused.of(
                        "photograph.patch-name",
                        "patch: \"" + name + "\" given; every patch needs a name of its own.",
                        "given",
                        name);
            }
            patches.add(new Patch(name, region, known.xyz().adaptedTo(Illuminant.D65)));
            return this;
        }

        /**
         * Finds the matrix.
         *
         * @return the calibration
         * @throws Refused if there is no grey card or fewer than six patches; if a region lies outside the picture, is too
         *     small or clipped; if the card or the board is too dark; if the patches do not tell the matrix; or if they or the
         *     card are left so far from what was given that the photograph tells no colour
         */
        public PhotographCalibration build() {
            if (card == null) {
                throw Refused.of(
                        "photograph.no-card",
                        "photograph: no grey card given; say where it lies and its own reflectance with greyCard.",
                        "missing",
                        "greyCard");
            }
            if (patches.size() < LEAST_PATCHES) {
                throw Refused.of(
                        "photograph.patches",
                        "photograph: " + patches.size() + " known patches given; at least " + LEAST_PATCHES
                                + " are needed, of different colours, light and dark. Swatches of your own read with a"
                                + " colorimeter will do.",
                        "given",
                        patches.size(),
                        "least",
                        LEAST_PATCHES);
            }
            return new PhotographCalibration(this, card);
        }

        @Override
        public String toString() {
            return "calibration of a " + photograph + ", being put together: " + patches.size()
                    + (patches.size() == 1 ? " patch" : " patches") + (card == null ? ", no grey card yet" : "");
        }
    }

    private PhotographCalibration(Builder given, PictureRegion cardRegion) {
        photograph = given.photograph;
        flat = given.flat;
        reflectance = given.reflectance;
        card = card(photograph, cardRegion);
        Xyz white = Illuminant.D65.white();
        int count = given.patches.size() + 1;
        double[][] seen = new double[count][];
        double[][] known = new double[count][];
        for (int i = 0; i < count - 1; i++) {
            Patch patch = given.patches.get(i);
            seen[i] = overCard(
                    photograph
                            .light(patch.region(), "patch " + patch.name(), flat)
                            .mean(),
                    card);
            known[i] = new double[] {
                patch.known().x(), patch.known().y(), patch.known().z()
            };
        }
        seen[count - 1] = new double[] {reflectance, reflectance, reflectance};
        known[count - 1] = new double[] {white.x() * reflectance, white.y() * reflectance, white.z() * reflectance};

        double[][] rows = new double[3][];
        double[][] alone = new double[3][];
        double told = 1;
        for (int k = 0; k < 3; k++) {
            PatchSquares squares = new PatchSquares(seen, known, k);
            told = Math.min(told, squares.told());
            rows[k] = squares.row();
            alone[k] = squares.leverages();
        }
        checkTold(told, given.patches, alone);
        matrix = new Matrix(rows);
        List<PatchFit> found = new ArrayList<>();
        for (int i = 0; i < count - 1; i++) {
            Patch patch = given.patches.get(i);
            double[] tells = matrix.times(seen[i]);
            double[] without = new double[3];
            for (int k = 0; k < 3; k++) {
                without[k] = known[i][k] - (known[i][k] - tells[k]) / (1 - alone[k][i]);
            }
            Lab lab = patch.known().lab();
            found.add(new FoundPatch(patch.name(), lab, apart(tells, lab), apart(without, lab)));
        }
        patches = List.copyOf(found);
        Lab grey = new Xyz(known[count - 1][0], known[count - 1][1], known[count - 1][2], Illuminant.D65).lab();
        double[] cardTells = matrix.times(seen[count - 1]);
        cardDifference = apart(cardTells, grey);
        double most = given.assumptions.si("colour.patch-residual", Scope.GENERAL);
        checkResidual(most);
        checkCard(most, cardTells);
    }

    private static double apart(double[] tells, Lab known) {
        return ColourDifference.of(Lab.of(tells[0], tells[1], tells[2], Illuminant.D65), known.values());
    }

    private double[] card(Photograph of, PictureRegion region) {
        double[] raw = of.light(region, "grey card", null).mean();
        FlatField.checkBright("grey card", raw);
        return flat == null ? raw : of.light(region, "grey card", flat).mean();
    }

    private double[] overCard(double[] light, double[] grey) {
        double[] over = new double[3];
        for (int k = 0; k < 3; k++) {
            over[k] = light[k] / grey[k] * reflectance;
        }
        return over;
    }

    private static void checkTold(double told, List<Patch> patches, double[][] alone) {
        if (!(told >= LEAST_TOLD)) {
            throw Refused.of(
                    "photograph.patches-alike",
                    "photograph: its patches do not tell red, green and blue apart (" + ColourRange.said(100 * told, 1)
                            + " % of what one says is not in the other two; at least "
                            + ColourRange.said(100 * LEAST_TOLD, 1)
                            + " % are needed). Greys alone do not tell colours; add strong reds, yellows, greens and blues.",
                    "told",
                    told,
                    "least",
                    LEAST_TOLD);
        }
        for (int i = 0; i < patches.size(); i++) {
            double most = Math.max(alone[0][i], Math.max(alone[1][i], alone[2][i]));
            if (most > ALONE) {
                throw Refused.of(
                        "photograph.patch-alone",
                        "photograph: only patch " + patches.get(i).name()
                                + " tells its kind of colour, so that nothing shows"
                                + " whether it was read and given well. Add another strong one of a similar colour, or of the"
                                + " opposite.",
                        "patch",
                        patches.get(i).name());
            }
        }
    }

    private void checkResidual(double most) {
        if (!(meanDifference() <= most)) {
            PatchFit worst = worst();
            throw Refused.of(
                    "photograph.residual",
                    "photograph: its patches are left ΔE00 " + ColourRange.said(meanDifference())
                            + " from their colours on average, more than " + ColourRange.said(most) + "; the worst is "
                            + worst.name() + " with " + ColourRange.said(worst.difference())
                            + ". Check that each region lies on"
                            + " the patch it names, that no shine or shadow falls on it, and that the picture is without a"
                            + " style and its tone said rightly; for uneven light give a flat field.",
                    "mean",
                    meanDifference(),
                    "worst",
                    worst.name(),
                    "most",
                    most);
        }
    }

    private void checkCard(double most, double[] tells) {
        if (!(cardDifference <= most)) {
            double[] lab = Lab.of(tells[0], tells[1], tells[2], Illuminant.D65);
            throw Refused.of(
                    "photograph.card-off",
                    "photograph: beside the patches the grey card comes out as a* " + ColourRange.said(lab[1])
                            + " b* " + ColourRange.said(lab[2]) + " with a reflectance of "
                            + ColourRange.said(tells[1] / 100, 3) + ", and " + ColourRange.said(reflectance, 3)
                            + " was given (ΔE00 " + ColourRange.said(cardDifference) + ", at most "
                            + ColourRange.said(most)
                            + "). Give the card's own, and check that it is grey and lies in the same light.",
                    "given",
                    reflectance,
                    "difference",
                    cardDifference,
                    "most",
                    most);
        }
    }

    /**
     * Reads a colour in the photograph that was calibrated.
     *
     * @param region where, with nothing but the sheet in it
     * @return its colour
     * @throws Refused if the region is outside the picture, too small or clipped, or if no surface has such a colour
     */
    public RegionColour read(PictureRegion region) {
        Objects.requireNonNull(region, "region");
        return read(photograph, card, region);
    }

    /**
     * Reads a colour in another photograph with the same camera in the same light, that shows the grey card. It need not show
     * the patches, and its exposure may be another.
     *
     * @param other the photograph; with a flat field from the same place
     * @param greyCard where the same grey card lies in it
     * @param region where to read, with nothing but the sheet in it
     * @return its colour
     * @throws Refused if it is not of the size of the flat field, if a region is outside the picture, too small or clipped, if
     *     the card is too dark, or if no surface has such a colour
     */
    public RegionColour read(Photograph other, PictureRegion greyCard, PictureRegion region) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(greyCard, "greyCard");
        Objects.requireNonNull(region, "region");
        if (flat != null && (other.width() != photograph.width() || other.height() != photograph.height())) {
            throw otherSize(photograph, other);
        }
        return read(other, card(other, greyCard), region);
    }

    private static Refused otherSize(Photograph board, Photograph photograph) {
        String flatField = board.width() + " by " + board.height();
        String size = photograph.width() + " by " + photograph.height();
        return Refused.of(
                "photograph.other-size",
                "photograph: the flat field has " + flatField + " pixels and the photograph " + size
                        + "; take both from the same place and cut nothing off.",
                "flatField",
                flatField,
                "photograph",
                size);
    }

    private RegionColour read(Photograph from, double[] grey, PictureRegion region) {
        Photograph.Light light = from.light(region, "region", flat);
        double[] mean = colour(light.mean(), grey);
        double[] lab = Lab.of(mean[0], mean[1], mean[2], Illuminant.D65);
        for (double value : mean) {
            if (!(value >= 0 && value <= 200)) {
                throw Refused.of(
                        "photograph.beyond-patches",
                        "region: " + region + " comes out as no surface looks (L* " + ColourRange.said(lab[0]) + " a* "
                                + ColourRange.said(lab[1]) + " b* " + ColourRange.said(lab[2])
                                + "). Add known patches near its colour, and check that it lies in the light of the card.",
                        "region",
                        region.toString());
            }
        }
        double squares = 0;
        for (double[] field : light.fields()) {
            double[] one = colour(field, grey);
            double off = ColourDifference.of(Lab.of(one[0], one[1], one[2], Illuminant.D65), lab);
            squares += off * off;
        }
        return new FoundColour(
                new Xyz(mean[0], mean[1], mean[2], Illuminant.D65),
                Math.sqrt(squares / Math.max(1, light.fields().length - 1)),
                light.count());
    }

    private double[] colour(double[] light, double[] grey) {
        return matrix.times(overCard(light, grey));
    }

    /**
     * Returns what is left at each known patch.
     *
     * @return an unmodifiable list, in the order given
     */
    public List<PatchFit> patches() {
        return patches;
    }

    /**
     * Returns what is left at the known patches.
     *
     * @return ΔE00, the mean over the patches
     */
    public double meanDifference() {
        return patches.stream().mapToDouble(PatchFit::difference).average().orElse(0);
    }

    /**
     * Returns what a colour like the patches may be off, as each of them comes out by the others alone.
     *
     * @return ΔE00, the mean over the patches
     */
    public double leftOutDifference() {
        return patches.stream().mapToDouble(PatchFit::leftOut).average().orElse(0);
    }

    /**
     * Returns the patch at which most is left.
     *
     * @return the patch
     */
    public PatchFit worst() {
        return patches.stream()
                .max(Comparator.comparingDouble(PatchFit::difference))
                .orElseThrow();
    }

    /**
     * Returns what is left at the grey card. Where it is more than at the patches, its reflectance was not given well.
     *
     * @return ΔE00 from a grey of the reflectance that was given
     */
    public double cardDifference() {
        return cardDifference;
    }

    @Override
    public String toString() {
        return patches.size() + " patches left ΔE00 " + ColourRange.said(meanDifference()) + " off on average, "
                + ColourRange.said(leftOutDifference()) + " if left out; worst " + worst() + "; grey card "
                + ColourRange.said(cardDifference);
    }
}
