package org.papermath.order;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.format.Format;
import org.papermath.mail.MailLimits;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.shape.Outline;

/**
 * One kind of thing in an order: so many sheets, cards or envelopes of a size and a weight, from a recipe. Immutable.
 *
 * <pre>{@code
 * Piece card = Piece.of("card", 60, "oat")
 *         .size(mm(105), mm(148))
 *         .grammage(Grammage.gsm(250))
 *         .folds(1)
 *         .build();
 * card.withCount(80).count(); // 80
 * }</pre>
 *
 * <p>The size is that of the finished flat piece, before it is folded. An envelope takes its size from the piece it is
 * made for, unless the side of its blank is given.
 */
public final class Piece {
    private final String name;
    private final String recipe;
    private final int count;
    private final @Nullable Amount<Length> width;
    private final @Nullable Amount<Length> height;
    private final @Nullable Format format;
    private final @Nullable Outline outline;
    private final @Nullable Amount<Grammage> grammage;
    private final @Nullable Amount<Length> caliper;
    private final @Nullable Sample sample;
    private final @Nullable Amount<Share> spare;
    private final int kept;
    private final int trials;
    private final int folds;
    private final Edge edge;
    private final @Nullable Amount<Length> trim;
    private final @Nullable String envelopeFor;
    private final @Nullable EnvelopeStyle style;
    private final int inserts;
    private final @Nullable Amount<Length> clearance;
    private final @Nullable String mail;
    private final @Nullable String dryer;
    private final @Nullable Amount<Length> sheetGap;

    /** How the edge of a piece is made. */
    public enum Edge {
        /** The natural rim of the deckle on every side: one piece a sheet, in a deckle of its size. */
        DECKLE,
        /** Trimmed or torn to size from a larger sheet, several up where they fit. */
        CUT,
        /**
         * The natural rim of a deckle cut to the outline of the piece, several openings to a mould where they fit: tags,
         * rounds, the blanks of envelopes.
         */
        SHAPED
    }

    /**
     * A sheet to be matched: its size, mass and thickness, weighed in the air of the studio.
     *
     * @param width one side
     * @param height the other side
     * @param mass its mass as weighed
     * @param caliper its caliper
     */
    public record Sample(Amount<Length> width, Amount<Length> height, Amount<Mass> mass, Amount<Length> caliper) {
        /**
         * Makes a sample.
         *
         * @param width one side, 1 mm to 5 m
         * @param height the other side, 1 mm to 5 m
         * @param mass its mass as weighed in the air of the studio, 0.1 mg to 100 kg
         * @param caliper its caliper, 1 µm to 50 mm
         * @throws Refused if a value is out of range
         */
        public Sample {
            width = Limits.SAMPLE_SIDE.check(width, "sample width");
            height = Limits.SAMPLE_SIDE.check(height, "sample height");
            mass = Limits.SAMPLE_MASS.check(mass, "sample mass");
            caliper = Limits.SAMPLE_CALIPER.check(caliper, "sample caliper");
        }

        /**
         * Makes a sample.
         *
         * @param width one side, 1 mm to 5 m
         * @param height the other side, 1 mm to 5 m
         * @param mass its mass as weighed in the air of the studio, 0.1 mg to 100 kg
         * @param caliper its caliper, 1 µm to 50 mm
         * @return the sample
         * @throws Refused if a value is out of range
         */
        public static Sample of(
                Quantity<Length> width, Quantity<Length> height, Quantity<Mass> mass, Quantity<Length> caliper) {
            return new Sample(
                    Limits.SAMPLE_SIDE.check(width, "sample width"),
                    Limits.SAMPLE_SIDE.check(height, "sample height"),
                    Limits.SAMPLE_MASS.check(mass, "sample mass"),
                    Limits.SAMPLE_CALIPER.check(caliper, "sample caliper"));
        }
    }

    private Piece(Builder b) {
        this.name = b.name;
        this.recipe = b.recipe;
        this.count = b.count;
        this.width = b.width;
        this.height = b.height;
        this.format = b.format;
        this.outline = b.outline;
        this.grammage = b.grammage;
        this.caliper = b.caliper;
        this.sample = b.sample;
        this.spare = b.spare;
        this.kept = b.kept;
        this.trials = b.trials;
        this.folds = b.folds;
        this.edge = b.edge != null ? b.edge : b.outline != null ? Edge.SHAPED : Edge.CUT;
        this.trim = b.trim;
        this.envelopeFor = b.envelopeFor;
        this.style = b.style;
        this.inserts = b.inserts;
        this.clearance = b.clearance;
        this.mail = b.mail;
        this.dryer = b.dryer;
        this.sheetGap = b.sheetGap;
    }

    /**
     * Begins a piece.
     *
     * @param name its name, not empty
     * @param count how many are ordered, 1 to 100 000
     * @param recipe the name of its recipe
     * @return a builder
     * @throws Refused if a name is empty or the count is out of range
     */
    public static Builder of(String name, int count, String recipe) {
        Objects.requireNonNull(recipe, "recipe");
        String called = CheckedName.require("piece", name);
        return new Builder(
                called,
                Limits.PIECES.check(count, "number ordered of piece ", called),
                CheckedName.require("recipe of piece ", called, recipe));
    }

    /** Gathers a piece; refuses what is set twice and what clashes. */
    public static final class Builder {
        private final String name;
        private final String recipe;
        private final SetOnce given;
        private int count;
        private @Nullable Amount<Length> width;
        private @Nullable Amount<Length> height;
        private @Nullable Format format;
        private @Nullable Outline outline;
        private @Nullable Amount<Grammage> grammage;
        private @Nullable Amount<Length> caliper;
        private @Nullable Sample sample;
        private @Nullable Amount<Share> spare;
        private int kept;
        private int trials = -1;
        private int folds;
        private @Nullable Edge edge;
        private @Nullable Amount<Length> trim;
        private @Nullable String envelopeFor;
        private @Nullable EnvelopeStyle style;
        private int inserts = 1;
        private @Nullable Amount<Length> clearance;
        private @Nullable String mail;
        private @Nullable String dryer;
        private @Nullable Amount<Length> sheetGap;

        private Builder(String name, int count, String recipe) {
            this.name = name;
            this.count = count;
            this.recipe = recipe;
            this.given = new SetOnce("piece " + name);
        }

        /**
         * Sets the finished flat size.
         *
         * @param one one side, 5 mm to 5 m
         * @param other the other side, 5 mm to 5 m
         * @return this builder
         * @throws Refused if a side is out of range or the size was set before
         */
        public Builder size(Quantity<Length> one, Quantity<Length> other) {
            given.once("the size");
            Amount<Length> first = Limits.PIECE_SIDE.check(one, "width of piece ", name);
            height = Limits.PIECE_SIDE.check(other, "height of piece ", name);
            width = first;
            format = null;
            outline = null;
            return this;
        }

        /**
         * Sets the finished flat size by a format.
         *
         * @param size the format of a sheet or card
         * @return this builder
         * @throws Refused if the size was set before
         */
        public Builder size(Format size) {
            Objects.requireNonNull(size, "size");
            size(size.width(), size.height());
            format = size;
            return this;
        }

        /**
         * Has the piece formed to an outline in place of a size: its edge is the rim of a deckle cut to that shape.
         *
         * @param finished the finished flat outline, its sides over all 5 mm to 5 m, of at most 1000 corners
         * @return this builder
         * @throws Refused if a side is out of range, there are more corners, or the size was set before
         */
        public Builder formedTo(Outline finished) {
            Objects.requireNonNull(finished, "finished");
            Limits.OUTLINE_CORNERS.check(finished.corners().size(), "corners of the outline of piece ", name);
            size(finished.width(), finished.height());
            outline = finished;
            return this;
        }

        /**
         * Sets the target grammage, in the reference air of the order.
         *
         * @param wanted the grammage, 2 to 2000 g/m²
         * @return this builder
         * @throws Refused if it is out of range, or a target was set before
         */
        public Builder grammage(Quantity<Grammage> wanted) {
            targetOnce();
            grammage = Limits.PIECE_GRAMMAGE.check(wanted, "grammage of piece ", name);
            return this;
        }

        /**
         * Sets a target thickness instead of a grammage.
         *
         * @param wanted the caliper, 10 µm to 5 mm
         * @return this builder
         * @throws Refused if it is out of range, or a target was set before
         */
        public Builder caliper(Quantity<Length> wanted) {
            targetOnce();
            caliper = Limits.PIECE_CALIPER.check(wanted, "caliper of piece ", name);
            return this;
        }

        /**
         * Sets the sheet to be matched instead of a grammage.
         *
         * @param pattern the sample
         * @return this builder
         * @throws Refused if a target was set before
         */
        public Builder sample(Sample pattern) {
            Objects.requireNonNull(pattern, "pattern");
            targetOnce();
            sample = pattern;
            return this;
        }

        /** Only one of grammage, caliper and sample is the target. */
        private void targetOnce() {
            given.once("what it is to weigh or measure");
            grammage = null;
            caliper = null;
            sample = null;
        }

        /**
         * Sets another number ordered.
         *
         * @param ordered how many are ordered, 1 to 100 000
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder count(int ordered) {
            count = Limits.PIECES.check(ordered, "number ordered of piece ", name);
            return this;
        }

        /**
         * Sets how many more than ordered are to come out good, as a share of those ordered.
         *
         * @param share the share, 0 to 100 %
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder spare(Quantity<Share> share) {
            given.once("the spare share");
            spare = Limits.SPARE.check(share, "spare share of piece ", name);
            return this;
        }

        /**
         * Sets how many pieces the studio keeps for itself.
         *
         * @param pieces the count, 0 to 100 000
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder kept(int pieces) {
            kept = Limits.KEPT.check(pieces, "pieces kept of piece ", name);
            return this;
        }

        /**
         * Sets how many trial sheets are pulled before the run.
         *
         * @param sheets the count, 0 to 10 000
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder trials(int sheets) {
            trials = Limits.TRIALS.check(sheets, "trial sheets of piece ", name);
            return this;
        }

        /**
         * Has each piece folded in half so many times, each time across its longer side.
         *
         * @param times the number of folds, 0 to 4
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder folds(int times) {
            folds = Limits.FOLDS.check(times, "folds of piece ", name);
            return this;
        }

        /**
         * Sets how the edge is made; without it cut, or shaped where an outline is given. The natural rim of the deckle
         * stays on every side of a piece that is formed one to a sheet or formed to its shape.
         *
         * @param how the edge
         * @return this builder
         */
        public Builder edge(Edge how) {
            Objects.requireNonNull(how, "how");
            edge = how;
            return this;
        }

        /**
         * Sets how much is trimmed off each edge.
         *
         * @param width the width trimmed off, 0 to 100 mm
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder trim(Quantity<Length> width) {
            given.once("the trim");
            trim = Limits.TRIM.check(width, "trim of piece ", name);
            return this;
        }

        /**
         * Sets how far pieces lie apart on the mould face, where a strip divides them; of pieces formed to their outline
         * how far the openings of the deckle lie apart.
         *
         * @param gap the width of the strip, 0 to 100 mm
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder gap(Quantity<Length> gap) {
            given.once("the gap between pieces");
            sheetGap = Limits.GAP.check(gap, "gap beside piece ", name);
            return this;
        }

        /**
         * Makes this piece an envelope for another piece.
         *
         * @param piece the name of the piece that goes into it
         * @param how how the blank is folded
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder envelopeFor(String piece, EnvelopeStyle how) {
            Objects.requireNonNull(piece, "piece");
            Objects.requireNonNull(how, "how");
            given.once("what the envelope is for");
            envelopeFor = CheckedName.require("piece in the envelope ", name, piece);
            style = how;
            return this;
        }

        /**
         * Sets how many of the other piece go into one envelope.
         *
         * @param pieces the count, 1 to 50
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder inserts(int pieces) {
            inserts = Limits.INSERTS.check(pieces, "inserts of piece ", name);
            return this;
        }

        /**
         * Sets how much longer and wider the envelope is inside than the piece with its thickness.
         *
         * @param total the clearance, both sides together, 0 to 100 mm
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder clearance(Quantity<Length> total) {
            given.once("the clearance");
            clearance = Limits.CLEARANCE.check(total, "clearance of envelope ", name);
            return this;
        }

        /**
         * Sets the country in which the piece is mailed: in its envelope if this is one, with what goes into it.
         *
         * @param country a country of the table of mail limits
         * @return this builder
         * @throws Refused if the table has no such country, or it was set before
         */
        public Builder mailedIn(String country) {
            Objects.requireNonNull(country, "country");
            given.once("the country of mailing");
            mail = MailLimits.of(country).country();
            return this;
        }

        /**
         * Sets the dryer of the studio in which the sheets dry; the first one without it.
         *
         * @param dryerName the name of the dryer
         * @return this builder
         */
        public Builder dryer(String dryerName) {
            Objects.requireNonNull(dryerName, "dryerName");
            dryer = CheckedName.require("dryer of piece ", name, dryerName);
            return this;
        }

        /**
         * Ends the piece.
         *
         * @return the piece
         * @throws Refused if there is no target, no size, or what was given clashes
         */
        public Piece build() {
            if (grammage == null && caliper == null && sample == null) {
                throw Refused.of(
                        "piece.no-target",
                        "piece " + name + ": no target is given. Give a grammage, a thickness, or a sample.",
                        "piece",
                        name);
            }
            if (width == null && envelopeFor == null) {
                throw Refused.of(
                        "piece.no-size",
                        "piece " + name + ": its size is missing. Give two sides or a format.",
                        "piece",
                        name);
            }
            if (outline != null && envelopeFor != null) {
                throw Refused.of(
                        "piece.clash",
                        "piece " + name + ": the outline of an envelope follows from its style and from " + envelopeFor
                                + ". Leave the outline out, and choose the edge shaped.",
                        "piece",
                        name,
                        "member",
                        "outline");
            }
            if (width != null && envelopeFor != null && style != EnvelopeStyle.DIAMOND) {
                throw Refused.of(
                        "piece.clash",
                        "piece " + name + ": an envelope for " + envelopeFor
                                + " takes its size from that piece; only a diamond"
                                + " envelope may give the side of its square. Leave the size out.",
                        "piece",
                        name,
                        "member",
                        "size");
            }
            if (envelopeFor != null && folds > 0) {
                throw Refused.of(
                        "piece.clash",
                        "piece " + name + ": an envelope is folded by its style; leave the number of folds out.",
                        "piece",
                        name,
                        "member",
                        "folds");
            }
            if (outline != null && edge != null && edge != Edge.SHAPED) {
                throw Refused.of(
                        "piece.clash",
                        "piece " + name
                                + ": a piece with an outline has the rim of a deckle of that shape. Leave the edge"
                                + " out, or give two sides in place of the outline.",
                        "piece",
                        name,
                        "member",
                        "edge");
            }
            if (edge == Edge.SHAPED && outline == null && envelopeFor == null) {
                throw Refused.of(
                        "piece.clash",
                        "piece " + name
                                + ": an edge that is shaped needs the outline of the piece. Give the outline, or"
                                + " choose the edge deckle for a sheet with four sides.",
                        "piece",
                        name,
                        "member",
                        "edge");
            }
            if ((edge == Edge.DECKLE || edge == Edge.SHAPED || outline != null) && trim != null && trim.si() > 0) {
                throw Refused.of(
                        "piece.clash",
                        "piece " + name + ": an edge cannot be the rim of the deckle and be trimmed. Choose one.",
                        "piece",
                        name,
                        "member",
                        "trim");
            }
            return new Piece(this);
        }

        @Override
        public String toString() {
            return "piece " + name + ", being put together: " + count + " of " + recipe
                    + (width == null ? "" : ", " + width + " × " + height)
                    + (grammage == null ? "" : ", " + grammage)
                    + (caliper == null ? "" : ", " + caliper)
                    + (envelopeFor == null ? "" : ", envelope for " + envelopeFor);
        }
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the name of the recipe.
     *
     * @return the name
     */
    public String recipe() {
        return recipe;
    }

    /**
     * Returns how many are ordered.
     *
     * @return the count
     */
    public int count() {
        return count;
    }

    /**
     * Returns one side of the finished flat piece; for a diamond envelope, of its square.
     *
     * @return the width, or empty for an envelope that takes its size from another piece
     */
    public Optional<Amount<Length>> width() {
        return Optional.ofNullable(width);
    }

    /**
     * Returns the other side of the finished flat piece.
     *
     * @return the height, or empty for an envelope that takes its size from another piece
     */
    public Optional<Amount<Length>> height() {
        return Optional.ofNullable(height);
    }

    /**
     * Returns the format, where the size was given by one.
     *
     * @return the format
     */
    public Optional<Format> format() {
        return Optional.ofNullable(format);
    }

    /**
     * Returns the finished flat outline, where the piece is formed to one.
     *
     * @return the outline; {@link #width} and {@link #height} are its sides over all
     */
    public Optional<Outline> outline() {
        return Optional.ofNullable(outline);
    }

    /**
     * Returns the target grammage, where that is the target.
     *
     * @return the grammage
     */
    public Optional<Amount<Grammage>> grammage() {
        return Optional.ofNullable(grammage);
    }

    /**
     * Returns the target thickness, where that is the target.
     *
     * @return the caliper
     */
    public Optional<Amount<Length>> caliper() {
        return Optional.ofNullable(caliper);
    }

    /**
     * Returns the sheet to be matched, where that is the target.
     *
     * @return the sample
     */
    public Optional<Sample> sample() {
        return Optional.ofNullable(sample);
    }

    /**
     * Returns the spare share, where it was given.
     *
     * @return the share of those ordered
     */
    public Optional<Amount<Share>> spare() {
        return Optional.ofNullable(spare);
    }

    /**
     * Returns how many the studio keeps for itself.
     *
     * @return the count
     */
    public int kept() {
        return kept;
    }

    /**
     * Returns how many trial sheets are pulled, where it was given.
     *
     * @return the count
     */
    public OptionalInt trials() {
        return trials < 0 ? OptionalInt.empty() : OptionalInt.of(trials);
    }

    /**
     * Returns how many times each piece is folded in half.
     *
     * @return the number of folds
     */
    public int folds() {
        return folds;
    }

    /**
     * Returns how the edge is made.
     *
     * @return the edge
     */
    public Edge edge() {
        return edge;
    }

    /**
     * Returns how much is trimmed off each edge, where it was given.
     *
     * @return the width trimmed off
     */
    public Optional<Amount<Length>> trim() {
        return Optional.ofNullable(trim);
    }

    /**
     * Returns how far pieces lie apart on the mould face, where it was given.
     *
     * @return the gap
     */
    public Optional<Amount<Length>> gap() {
        return Optional.ofNullable(sheetGap);
    }

    /**
     * Returns the name of the piece this is an envelope for.
     *
     * @return the name, or empty if this is no envelope
     */
    public Optional<String> envelopeFor() {
        return Optional.ofNullable(envelopeFor);
    }

    /**
     * Returns how the blank of the envelope is folded.
     *
     * @return the style, or empty if this is no envelope
     */
    public Optional<EnvelopeStyle> style() {
        return Optional.ofNullable(style);
    }

    /**
     * Returns how many of the other piece go into one envelope.
     *
     * @return the count
     */
    public int inserts() {
        return inserts;
    }

    /**
     * Returns the clearance in the envelope, where it was given.
     *
     * @return the clearance, both sides together
     */
    public Optional<Amount<Length>> clearance() {
        return Optional.ofNullable(clearance);
    }

    /**
     * Returns the country in which the piece is mailed, if it is.
     *
     * @return a country of the table of mail limits
     */
    public Optional<String> mailedIn() {
        return Optional.ofNullable(mail);
    }

    /**
     * Returns the name of the dryer, where it was given.
     *
     * @return the name
     */
    public Optional<String> dryer() {
        return Optional.ofNullable(dryer);
    }

    /**
     * Returns a builder that begins with all this piece is; what it is given then replaces that.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        Builder b = new Builder(name, count, recipe);
        b.width = width;
        b.height = height;
        b.format = format;
        b.outline = outline;
        b.grammage = grammage;
        b.caliper = caliper;
        b.sample = sample;
        b.spare = spare;
        b.kept = kept;
        b.trials = trials;
        b.folds = folds;
        b.edge = edge == Edge.CUT || outline != null ? null : edge;
        b.trim = trim;
        b.envelopeFor = envelopeFor;
        b.style = style;
        b.inserts = inserts;
        b.clearance = clearance;
        b.mail = mail;
        b.dryer = dryer;
        b.sheetGap = sheetGap;
        return b;
    }

    /**
     * Returns the same piece in another number.
     *
     * @param ordered how many are ordered
     * @return the piece
     * @throws Refused if it is out of range
     */
    public Piece withCount(int ordered) {
        return toBuilder().count(ordered).build();
    }

    /**
     * Returns the same piece of another weight.
     *
     * @param wanted the grammage
     * @return the piece
     * @throws Refused if it is out of range
     */
    public Piece withGrammage(Quantity<Grammage> wanted) {
        return toBuilder().grammage(wanted).build();
    }

    /**
     * Returns the same piece, otherwise in something.
     *
     * @param change what is said anew, for example {@code one -> one.count(110)}
     * @return the piece
     * @throws Refused as the builder
     */
    public Piece with(UnaryOperator<Builder> change) {
        return Objects.requireNonNull(change, "change").apply(toBuilder()).build();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Piece that
                && name.equals(that.name)
                && recipe.equals(that.recipe)
                && count == that.count
                && Objects.equals(width, that.width)
                && Objects.equals(height, that.height)
                && Objects.equals(format, that.format)
                && Objects.equals(outline, that.outline)
                && Objects.equals(grammage, that.grammage)
                && Objects.equals(caliper, that.caliper)
                && Objects.equals(sample, that.sample)
                && Objects.equals(spare, that.spare)
                && kept == that.kept
                && trials == that.trials
                && folds == that.folds
                && edge == that.edge
                && Objects.equals(trim, that.trim)
                && Objects.equals(envelopeFor, that.envelopeFor)
                && style == that.style
                && inserts == that.inserts
                && Objects.equals(clearance, that.clearance)
                && Objects.equals(mail, that.mail)
                && Objects.equals(dryer, that.dryer)
                && Objects.equals(sheetGap, that.sheetGap);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, recipe, count, width, height, grammage, caliper, envelopeFor);
    }

    @Override
    public String toString() {
        String size = width == null ? "" : ", " + width + " × " + height;
        return count + " " + name + size + (envelopeFor == null ? "" : ", envelope for " + envelopeFor);
    }
}
