package org.papermath.envelope;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.apache.commons.numbers.rootfinder.BrentSolver;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.evidence.Notice;
import org.papermath.format.Format;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;
import org.papermath.shape.MeasuredSize;
import org.papermath.text.Digits;

/**
 * Whether cards go into envelopes, with the scatter of both: the play each way, the share of random pairs that fit and
 * the clearance that would let a given share fit. Immutable.
 *
 * <p>The play of a pair is the inside of the envelope less the card less the thickness of the filling. Sides and
 * thickness are taken as normal and independent of each other; the thickness counts in both directions of the same
 * pair. A pair fits when its play is above zero both ways.
 */
public final class EnvelopeFit {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
    /** Half the width, in standard deviations, over which the thickness is integrated, and its steps. */
    private static final double REACH = 8.5;

    private static final int STEPS = 400;

    private final MeasuredSize card;
    private final MeasuredSize envelope;
    private final double thickness;
    private final double thicknessDeviation;

    private EnvelopeFit(MeasuredSize card, MeasuredSize envelope, double thickness, double thicknessDeviation) {
        this.card = card;
        this.envelope = envelope;
        this.thickness = thickness;
        this.thicknessDeviation = thicknessDeviation;
    }

    /** A card that waits for its envelope. */
    public static final class Card {
        private final MeasuredSize size;
        private final double thickness;

        private Card(MeasuredSize size, double thickness) {
            this.size = size;
            this.thickness = thickness;
        }

        /**
         * Compares the cards with envelopes.
         *
         * @param inside the envelopes, measured inside, width against width
         * @return the fit
         */
        public EnvelopeFit into(MeasuredSize inside) {
            Objects.requireNonNull(inside, "inside");
            return new EnvelopeFit(size, inside, thickness, 0);
        }

        /** Returns the size and the thickness of the filling. */
        @Override
        public String toString() {
            return size + ", " + Kinds.LENGTH.ofSi(thickness, "mm") + " thick, for an envelope";
        }
    }

    /**
     * Begins a comparison of cards with envelopes:
     * {@code EnvelopeFit.of(card, mm(0.9)).into(envelope)}.
     *
     * @param card the cards
     * @param thickness the thickness of the filling, zero or more
     * @return what waits for the envelopes
     * @throws Refused if the thickness is out of range
     */
    public static Card of(MeasuredSize card, Quantity<Length> thickness) {
        Objects.requireNonNull(card, "card");
        return new Card(card, Kinds.LENGTH.si(thickness, "thickness of the filling"));
    }

    /**
     * Returns the fit with a scatter of the thickness.
     *
     * @param deviation the standard deviation of the thickness of the filling, zero or more
     * @return the fit
     * @throws Refused if the deviation is out of range
     */
    public EnvelopeFit withThicknessDeviation(Quantity<Length> deviation) {
        return new EnvelopeFit(
                card, envelope, thickness, Kinds.LENGTH.si(deviation, "standard deviation of the thickness"));
    }

    private double meanPlayAcross() {
        return envelope.width().si() - card.width().si() - thickness;
    }

    private double meanPlayAlong() {
        return envelope.height().si() - card.height().si() - thickness;
    }

    /**
     * Returns the mean play across.
     *
     * @return inside width less card width less thickness; below zero where the card is too wide
     */
    public Amount<Length> playAcross() {
        return signed(meanPlayAcross());
    }

    /**
     * Returns the mean play along.
     *
     * @return inside height less card height less thickness; below zero where the card is too high
     */
    public Amount<Length> playAlong() {
        return signed(meanPlayAlong());
    }

    static Amount<Length> signed(double metres) {
        return metres >= 0
                ? Kinds.LENGTH.ofSi(metres, "mm")
                : Kinds.LENGTH.ofSi(-metres, "mm").negate();
    }

    /**
     * Returns whether a card of mean size goes into an envelope of mean size.
     *
     * @return whether the play is above zero both ways
     */
    public boolean fits() {
        return isPlay(meanPlayAcross()) && isPlay(meanPlayAlong());
    }

    /** A play that only rounding makes is none. */
    private static boolean isPlay(double metres) {
        return metres > 1e-12;
    }

    /**
     * Returns whether a card of mean size slides about.
     *
     * @param most the most play that is not loose, zero or more
     * @return whether the play is more than that in a direction
     * @throws Refused if the play is out of range
     */
    public boolean isLoose(Quantity<Length> most) {
        double limit = Kinds.LENGTH.si(most, "most play") + 1e-12;
        return meanPlayAcross() > limit || meanPlayAlong() > limit;
    }

    /**
     * Returns the share of random pairs of card and envelope that fit.
     *
     * @return from 0 to 1
     */
    public Amount<Share> share() {
        return Kinds.SHARE.ofSi(shareAt(meanPlayAcross(), meanPlayAlong()), "%");
    }

    /**
     * Returns the share of random pairs whose play across is above zero.
     *
     * @return from 0 to 1
     */
    public Amount<Share> shareAcross() {
        return Kinds.SHARE.ofSi(shareAt(meanPlayAcross(), Double.POSITIVE_INFINITY), "%");
    }

    /**
     * Returns the share of random pairs whose play along is above zero.
     *
     * @return from 0 to 1
     */
    public Amount<Share> shareAlong() {
        return Kinds.SHARE.ofSi(shareAt(Double.POSITIVE_INFINITY, meanPlayAlong()), "%");
    }

    private double shareAt(double playAcross, double playAlong) {
        double sw =
                Math.hypot(card.widthDeviation().si(), envelope.widthDeviation().si());
        double sh = Math.hypot(
                card.heightDeviation().si(), envelope.heightDeviation().si());
        if (thicknessDeviation == 0) {
            return above(playAcross, sw) * above(playAlong, sh);
        }
        if (sw == 0 && sh == 0) {
            // Only the thickness varies: the tighter direction decides.
            return above(Math.min(playAcross, playAlong), thicknessDeviation);
        }
        // Given the thickness the two directions are independent; sum over it by Simpson's rule.
        double from = -REACH;
        double to = REACH;
        double jump = Double.NaN;
        if (sw == 0 || sh == 0) {
            // A direction without scatter of its own ends the integral where its play is used up.
            jump = (sw == 0 ? playAcross : playAlong) / thicknessDeviation;
            to = Math.min(to, jump);
            if (to <= from) {
                return 0;
            }
        }
        double step = (to - from) / STEPS;
        double sum = 0;
        for (int i = 0; i <= STEPS; i++) {
            double z = from + i * step;
            double across = sw == 0 ? 1 : above(playAcross - z * thicknessDeviation, sw);
            double along = sh == 0 ? 1 : above(playAlong - z * thicknessDeviation, sh);
            double weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * STANDARD.density(z) * across * along;
        }
        return Math.min(1, sum * step / 3);
    }

    private static double above(double play, double deviation) {
        if (play == Double.POSITIVE_INFINITY) {
            return 1;
        }
        if (deviation == 0) {
            return isPlay(play) ? 1 : 0;
        }
        return STANDARD.cumulativeProbability(play / deviation);
    }

    /**
     * Returns the clearance, equal both ways, with which a share of random pairs fits.
     *
     * @param wanted the share, above 0 and below 1, for example 99 %
     * @return mean inside less mean card less mean thickness, each way in all; none where there is no scatter
     * @throws Refused if the share is 0 or 1
     */
    public Amount<Length> clearanceFor(Quantity<Share> wanted) {
        double share = Kinds.SHARE.si(wanted, "target share");
        if (!(share > 0 && share < 1)) {
            throw Refused.of(
                    "fit.share",
                    "target share: " + Units.fourDigits(100 * share)
                            + " % given; no clearance makes all pairs fit, nor none. Ask for 99 % or the like.",
                    "given",
                    share);
        }
        double spread = Math.sqrt(square(card.widthDeviation())
                + square(envelope.widthDeviation())
                + square(card.heightDeviation())
                + square(envelope.heightDeviation())
                + thicknessDeviation * thicknessDeviation);
        if (spread == 0) {
            return Kinds.LENGTH.ofSi(0, "mm");
        }
        DoubleUnaryOperator off = c -> shareAt(c, c) - share;
        double reach = 40 * spread;
        if (off.applyAsDouble(-reach) >= 0 || off.applyAsDouble(reach) <= 0) {
            throw Refused.of(
                    "fit.share", "target share: " + share + " is too near 0 or 1 to be found.", "given", share);
        }
        return signed(new BrentSolver(1e-14, 1e-13, 1e-15).findRoot(off, -reach, reach));
    }

    private static double square(Amount<Length> deviation) {
        return deviation.si() * deviation.si();
    }

    /**
     * Returns the verdict in words, in millimetres, side by side. Cards are tight where those two standard deviations off
     * stick; what is left to these stands in brackets, below zero where they stick.
     *
     * @return for example {@code does not fit: 0.3 mm too wide}, {@code fits: play 3 mm across and 3 mm along}, or
     *     {@code tight along: 6.2 % of pairs stick; play 2.7 mm across (0.5 mm two deviations off) and 2 mm along (-0.6 mm
     *     two deviations off)}
     */
    public String verdict() {
        List<String> over = new ArrayList<>();
        if (!isPlay(meanPlayAcross())) {
            over.add(tooMuch(meanPlayAcross(), "wide"));
        }
        if (!isPlay(meanPlayAlong())) {
            over.add(tooMuch(meanPlayAlong(), "high"));
        }
        if (!over.isEmpty()) {
            return "does not fit: " + String.join(" and ", over);
        }
        boolean across = isTight(meanPlayAcross(), scatterAcross());
        boolean along = isTight(meanPlayAlong(), scatterAlong());
        String play = "play " + playAcross() + " across" + atTwo(meanPlayAcross(), scatterAcross()) + " and "
                + playAlong() + " along" + atTwo(meanPlayAlong(), scatterAlong());
        if (!across && !along) {
            return "fits: " + play;
        }
        double stick = 1 - (across && along ? share() : across ? shareAcross() : shareAlong()).si();
        return "tight " + (across && along ? "across and along" : across ? "across" : "along") + ": "
                + Digits.significant(100 * stick, 2) + " % of pairs stick; " + play;
    }

    private static String atTwo(double play, double scatter) {
        return scatter > 0 ? " (" + signed(play - 2 * scatter) + " two deviations off)" : "";
    }

    private static boolean isTight(double play, double scatter) {
        return !(play > 2 * scatter && isPlay(play));
    }

    private double scatterAcross() {
        return scatter(card.widthDeviation(), envelope.widthDeviation());
    }

    private double scatterAlong() {
        return scatter(card.heightDeviation(), envelope.heightDeviation());
    }

    private double scatter(Amount<Length> cards, Amount<Length> envelopes) {
        return Math.sqrt(square(cards) + square(envelopes) + thicknessDeviation * thicknessDeviation);
    }

    private static String tooMuch(double play, String word) {
        return play > -1e-12 ? "no play, as " + word + " as the pocket" : signed(-play) + " too " + word;
    }

    /**
     * Returns what should be known beside the figures.
     *
     * @return a warning where cards stick that are two standard deviations off
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        tight("across", meanPlayAcross(), scatterAcross()).ifPresent(notices::add);
        tight("along", meanPlayAlong(), scatterAlong()).ifPresent(notices::add);
        return List.copyOf(notices);
    }

    private Optional<Notice> tight(String direction, double play, double scatter) {
        if (!isTight(play, scatter)) {
            return Optional.empty();
        }
        return Optional.of(Notice.warning(
                "envelope.tight",
                "The play " + direction + " is " + signed(play) + ", no more than two standard deviations of it ("
                        + Kinds.LENGTH.ofSi(2 * scatter, "mm") + "): some pairs will not go together.",
                "direction",
                direction,
                "play",
                play,
                "deviation",
                scatter));
    }

    /**
     * Reports whether a format goes into an envelope format, by its outside size first and then by its inside.
     *
     * @param piece a sheet or card, or an envelope that goes into another
     * @param envelope an envelope format, given outside
     * @param outsideLessInside how much smaller the inside is each way in all, with the thickness of the filling where
     *     that counts; zero or more
     * @param loose the most play that is not loose
     * @return the verdict in words
     * @throws Refused if the second format is not an envelope
     */
    public static String verdict(
            Format piece, Format envelope, Quantity<Length> outsideLessInside, Quantity<Length> loose) {
        Objects.requireNonNull(envelope, "envelope");
        if (envelope.use() != Format.Use.ENVELOPE_OUTSIDE) {
            throw Refused.of("fit.not-an-envelope", envelope + " is not an envelope.", "given", envelope.name());
        }
        double wall = Kinds.LENGTH.si(outsideLessInside, "outside less inside");
        MeasuredSize card = MeasuredSize.of(piece.width(), piece.height());
        EnvelopeFit outside =
                of(card, Kinds.LENGTH.ofSi(0, "mm")).into(MeasuredSize.of(envelope.width(), envelope.height()));
        EnvelopeFit inside = of(card, Kinds.LENGTH.ofSi(0, "mm"))
                .into(MeasuredSize.of(
                        Kinds.LENGTH.ofSi(envelope.width().si() - wall, "mm"),
                        Kinds.LENGTH.ofSi(envelope.height().si() - wall, "mm")));
        String head = piece.name() + " (" + mm(piece) + ") in " + envelope.name() + " (" + mm(envelope) + " outside) ";
        if (!outside.fits()) {
            String more = wall > 0
                    ? "; inside, " + Kinds.LENGTH.ofSi(wall, "mm") + " smaller each way, it " + inside.verdict()
                    : "";
            return head + outside.verdict() + ", by the outside size already" + more;
        }
        if (!inside.fits()) {
            return head + "goes by the outside size but not by the inside: " + inside.verdict();
        }
        return head + inside.verdict() + (inside.isLoose(loose) ? ", loose" : "");
    }

    private static String mm(Format format) {
        return format.width().to("mm") + " × " + format.height().to("mm");
    }

    /** Returns the verdict, and how many random pairs fit. */
    @Override
    public String toString() {
        return verdict() + "; " + Units.fourDigits(100 * share().si()) + " % of random pairs fit";
    }
}
