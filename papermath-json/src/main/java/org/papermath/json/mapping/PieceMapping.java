package org.papermath.json.mapping;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.format.Formats;
import org.papermath.json.FaultCodes;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.tree.JsonValue;
import org.papermath.mail.MailLimits;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Limits;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.shape.Outline;

/** A piece of an order. */
public final class PieceMapping {
    private static final List<Piece.Edge> EDGES = List.of(Piece.Edge.values());
    private static final List<EnvelopeStyle> STYLES = List.of(EnvelopeStyle.values());

    /** What an order knows of names while its pieces are read. */
    record Known(
            Names recipes,
            Names pieces,
            Names dryers,
            Names studio,
            Set<String> envelopes,
            List<ReadResult<String>> insides) {}

    /** A size: that of a format the library knows, of one of one's own, or two sides. */
    private record Size(
            ReadResult<Format> format, ReadResult<List<Amount<Length>>> sides, ReadResult<Outline> outline) {
        static Size read(ObjectReader in, String piece) {
            boolean shaped = in.has("outline");
            if (shaped && in.has("size")) {
                in.exactlyOne("size", "outline");
            }
            ValueReader at = shaped || in.has("envelopeFor") ? in.optional("size") : in.required("size");
            ReadResult<Outline> outline =
                    OutlineMapping.read(in.optional("outline"), Limits.PIECE_SIDE, "the outline of piece " + piece);
            if (at.isGiven() && !at.isText() && !at.isObject() && !at.isList()) {
                at.refuse(
                        FaultCodes.TYPE,
                        "a size is expected here: the name of a format, such as \"ISO A5\", or two"
                                + " sides, such as [\"148 mm\", \"210 mm\"].",
                        List.of("a text", "a list", "an object"));
                return new Size(ReadResult.faulty(at), ReadResult.faulty(at), outline);
            }
            ReadResult<Format> format = at.isText() || at.isObject() ? PieceMapping.format(at) : ReadResult.nothing(at);
            ReadResult<List<Amount<Length>>> sides = at.isText() || at.isObject()
                    ? ReadResult.nothing(at)
                    : CommonMembers.sides(at, Limits.PIECE_SIDE, "side of piece " + piece);
            return new Size(format, sides, outline);
        }

        void into(Piece.Builder piece) {
            format.ifGiven(piece::size);
            sides.ifGiven(two -> piece.size(two.get(0), two.get(1)));
            outline.ifGiven(piece::formedTo);
        }
    }

    /** What a piece is to weigh or measure. */
    private record Target(
            ReadResult<Amount<Grammage>> grammage,
            ReadResult<Amount<Length>> caliper,
            ReadResult<Piece.Sample> sample) {
        static Target read(ObjectReader in, String piece) {
            in.exactlyOne("grammage", "caliper", "sample");
            return new Target(
                    CommonMembers.within(in.optional("grammage"), Limits.PIECE_GRAMMAGE, "grammage of piece " + piece),
                    CommonMembers.within(in.optional("caliper"), Limits.PIECE_CALIPER, "caliper of piece " + piece),
                    in.optional("sample").object(PieceMapping::sample));
        }

        void into(Piece.Builder piece) {
            grammage.ifGiven(piece::grammage);
            caliper.ifGiven(piece::caliper);
            sample.ifGiven(piece::sample);
        }
    }

    /** How a piece is made. */
    private record Making(
            ReadResult<Amount<Share>> spare,
            ReadResult<Integer> kept,
            ReadResult<Integer> trials,
            ReadResult<Integer> folds,
            ReadResult<Piece.Edge> edge,
            ReadResult<Amount<Length>> trim,
            ReadResult<Amount<Length>> gap,
            ReadResult<String> dryer) {
        static Making read(ObjectReader in, String piece, Names dryers) {
            return new Making(
                    CommonMembers.within(in.optional("spare"), Limits.SPARE, "spare share of piece " + piece),
                    CommonMembers.count(in.optional("kept"), Limits.KEPT),
                    CommonMembers.count(in.optional("trials"), Limits.TRIALS),
                    CommonMembers.count(in.optional("folds"), Limits.FOLDS),
                    in.optional("edge").choice(EDGES, CommonMembers::word),
                    CommonMembers.within(in.optional("trim"), Limits.TRIM, "trim of piece " + piece),
                    CommonMembers.within(in.optional("gap"), Limits.GAP, "gap beside piece " + piece),
                    dryers.require(CommonMembers.sayable(in.optional("dryer").text()), "piece.no-dryer"));
        }

        void into(Piece.Builder piece) {
            spare.ifGiven(piece::spare);
            kept.ifGiven(piece::kept);
            trials.ifGiven(piece::trials);
            folds.ifGiven(piece::folds);
            edge.ifGiven(piece::edge);
            trim.ifGiven(piece::trim);
            gap.ifGiven(piece::gap);
            dryer.ifGiven(piece::dryer);
        }
    }

    /** What only an envelope says, and the country, which others may say too. */
    private record Envelope(
            ReadResult<String> inside,
            ReadResult<EnvelopeStyle> style,
            ReadResult<Integer> inserts,
            ReadResult<Amount<Length>> clearance,
            ReadResult<String> mailedIn) {
        static Envelope read(ObjectReader in, String piece) {
            boolean envelope = in.has("envelopeFor");
            ValueReader style = envelope ? in.required("style") : in.optional("style");
            return new Envelope(
                    CommonMembers.sayable(in.optional("envelopeFor").text()),
                    style.choice(STYLES, EnvelopeStyle::words),
                    CommonMembers.count(in.optional("inserts"), Limits.INSERTS),
                    CommonMembers.within(in.optional("clearance"), Limits.CLEARANCE, "clearance of envelope " + piece),
                    in.optional("mailedIn").text().check(MailLimits::of));
        }

        Envelope checked() {
            if (inside.isGiven()) {
                return this;
            }
            onlyOfEnvelopes(style, "style");
            onlyOfEnvelopes(inserts, "inserts");
            onlyOfEnvelopes(clearance, "clearance");
            return this;
        }

        void into(Piece.Builder piece) {
            inside.ifGiven(held -> piece.envelopeFor(held, style.get()));
            inserts.ifGiven(piece::inserts);
            clearance.ifGiven(piece::clearance);
            mailedIn.ifGiven(piece::mailedIn);
        }
    }

    private PieceMapping() {}

    /** Reads a piece; what an envelope is for is checked when all pieces are read. */
    static ReadResult<Piece> read(ObjectReader in, Known known) {
        ReadResult<String> written = CommonMembers.name(in);
        String label = CommonMembers.label(written);
        ReadResult<String> name = known.pieces().add(written);
        ReadResult<Integer> count = CommonMembers.count(in.required("count"), Limits.PIECES);
        ReadResult<String> recipe = known.recipes()
                .require(CommonMembers.sayable(in.required("recipe").text()), "order.no-recipe");
        Size size = Size.read(in, label);
        Target target = Target.read(in, label);
        Making making = Making.read(in, label, known.dryers());
        Envelope envelope = Envelope.read(in, label).checked();
        known.insides().add(envelope.inside());
        if (envelope.inside().isGiven() && !name.isFaulty()) {
            known.envelopes().add(label);
        }
        return in.make(() -> {
            Piece.Builder piece = Piece.of(name.get(), count.get(), recipe.get());
            size.into(piece);
            target.into(piece);
            making.into(piece);
            envelope.into(piece);
            return piece.build();
        });
    }

    static void write(ObjectWriter out, Piece piece) {
        CommonMembers.name(out.member("name"), piece.name());
        out.member("count").count(piece.count());
        CommonMembers.name(out.member("recipe"), piece.recipe());
        size(out, piece);
        piece.grammage().ifPresent(value -> out.member("grammage").quantity(value));
        piece.caliper().ifPresent(value -> out.member("caliper").quantity(value));
        piece.sample().ifPresent(value -> out.member("sample").object(in -> sample(in, value)));
        making(out, piece);
        piece.envelopeFor().ifPresent(inside -> CommonMembers.name(out.member("envelopeFor"), inside));
        piece.style().ifPresent(style -> out.member("style").text(style.words()));
        if (piece.inserts() != 1) {
            out.member("inserts").count(piece.inserts());
        }
        piece.clearance().ifPresent(value -> out.member("clearance").quantity(value));
        piece.mailedIn().ifPresent(country -> out.member("mailedIn").text(country));
        piece.dryer().ifPresent(dryer -> CommonMembers.name(out.member("dryer"), dryer));
    }

    private static void making(ObjectWriter out, Piece piece) {
        piece.spare().ifPresent(value -> out.member("spare").quantity(value));
        if (piece.kept() != 0) {
            out.member("kept").count(piece.kept());
        }
        piece.trials().ifPresent(value -> out.member("trials").count(value));
        if (piece.folds() != 0) {
            out.member("folds").count(piece.folds());
        }
        if (piece.edge() != Piece.Edge.CUT) {
            out.member("edge").text(CommonMembers.word(piece.edge()));
        }
        piece.trim().ifPresent(value -> out.member("trim").quantity(value));
        piece.gap().ifPresent(value -> out.member("gap").quantity(value));
    }

    private static void size(ObjectWriter out, Piece piece) {
        Optional<Format> format = piece.format();
        if (piece.outline().isPresent()) {
            OutlineMapping.write(out.member("outline"), piece.outline().get());
        } else if (format.isPresent()) {
            format(out.member("size"), format.get());
        } else if (piece.width().isPresent()) {
            CommonMembers.sides(
                    out.member("size"), piece.width().get(), piece.height().orElseThrow());
        }
    }

    /** Reads a format the library knows, by its name, or one of one's own in full. */
    public static ReadResult<Format> format(ValueReader at) {
        if (at.isObject()) {
            return at.object(PieceMapping::format);
        }
        return at.text().map(text -> {
            try {
                return Formats.find(text);
            } catch (PapermathException e) {
                String sides = at.twoSides();
                throw sides.isEmpty()
                        ? e
                        : Refused.of(
                                "format.unknown",
                                "\"" + JsonValue.shown(text) + "\" is no name of a format, but two sides. Write "
                                        + sides + ".",
                                "found",
                                text);
            }
        });
    }

    public static void format(ValueWriter out, Format format) {
        if (isKnown(format) && !out.keeps()) {
            out.text(format.name());
        } else {
            out.object(in -> format(in, format));
        }
    }

    private static ReadResult<Format> format(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<FormatSystem> system =
                in.required("system").choice(List.of(FormatSystem.values()), FormatSystem::words);
        ReadResult<Format.Use> use = in.required("use").choice(List.of(Format.Use.values()), CommonMembers::word);
        ReadResult<List<Amount<Length>>> sides =
                CommonMembers.sides(in.required("sides"), Limits.FORMAT_SIDE, "side of the format");
        return in.make(() -> Format.of(
                name.get(),
                system.get(),
                use.get(),
                sides.get().get(0),
                sides.get().get(1)));
    }

    private static void format(ObjectWriter out, Format format) {
        CommonMembers.text(out.member("name"), format.name());
        out.member("system").text(format.system().words());
        out.member("use").text(CommonMembers.word(format.use()));
        CommonMembers.sides(out.member("sides"), format.width(), format.height());
    }

    private static boolean isKnown(Format format) {
        try {
            return Formats.find(format.name()).equals(format);
        } catch (PapermathException e) {
            return false;
        }
    }

    private static ReadResult<Piece.Sample> sample(ObjectReader in) {
        ReadResult<List<Amount<Length>>> size =
                CommonMembers.sides(in.required("size"), Limits.SAMPLE_SIDE, "side of the sample");
        ReadResult<Amount<Mass>> mass = CommonMembers.within(in.required("mass"), Limits.SAMPLE_MASS, "sample mass");
        ReadResult<Amount<Length>> thickness =
                CommonMembers.within(in.required("caliper"), Limits.SAMPLE_CALIPER, "sample thickness");
        return in.make(() -> Piece.Sample.of(size.get().get(0), size.get().get(1), mass.get(), thickness.get()));
    }

    private static void sample(ObjectWriter out, Piece.Sample sample) {
        CommonMembers.sides(out.member("size"), sample.width(), sample.height());
        out.member("mass").quantity(sample.mass());
        out.member("caliper").quantity(sample.caliper());
    }

    private static void onlyOfEnvelopes(ReadResult<?> member, String name) {
        if (member.isGiven() && !member.isFaulty()) {
            member.refuse(
                    "piece.clash",
                    "\"" + name + "\" is for envelopes only. State with \"envelopeFor\" which"
                            + " piece it is for, or leave \"" + name + "\" out.",
                    List.of());
        }
    }
}
