package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;
import static org.papermath.plan.PlainNumbers.mm;

import java.time.LocalDate;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.Mailing;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.mail.MailLimits;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;

/** What is mailed. */
public final class MailPlan {
    /** Points each of the two is tried at, in deviations. */
    private static final double[] MASSES = points(25);

    private static final double[] THICKNESSES = points(6);

    /** The middles of so many parts of a normal distribution that are alike likely. */
    private static double[] points(int parts) {
        return IntStream.range(0, parts)
                .mapToDouble(i -> PlainNumbers.STANDARD.inverseCumulativeProbability((i + 0.5) / parts))
                .toArray();
    }

    private record Values(
            String country,
            Estimate<Mass> mass,
            Estimate<Length> thickness,
            MailLimits.Verdict verdict,
            Amount<Share> sameVerdict) {}

    private final Values values;

    private MailPlan(Values values) {
        this.values = values;
    }

    static Stage<MailPlan> of(PlainNumbers in, int p, Piece ordered) {
        Estimates numbers = in.estimates();
        if (ordered.mailedIn().isEmpty()) {
            return Stage.notDone("mail.none", "the piece is not mailed");
        }
        if (!numbers.isKnown(Mailing.MAIL_THICKNESS, p)) {
            return Stage.notDone("sheet.no-density", "the thickness of what is mailed is not known");
        }
        MakingEnvelopes.Setting envelope = in.settings().envelope(p);
        CuttingAndFolding.Setting size = in.settings().size(p);
        double width = envelope == null ? size.foldedWidth() : envelope.outsideWidth();
        double height = envelope == null ? size.foldedHeight() : envelope.outsideHeight();
        MailLimits limits = MailLimits.of(ordered.mailedIn().get());
        MailLimits.Verdict verdict = limits.check(
                mm(width),
                mm(height),
                mm(numbers.likely(Mailing.MAIL_THICKNESS, p)),
                grams(numbers.likely(Mailing.MAIL_MASS, p)),
                in.order().due().orElse(LocalDate.EPOCH));
        Estimate<Mass> mass = numbers.of(Kinds.MASS, Mailing.MAIL_MASS, p).withScatter(scatter(in, p, ordered));
        Estimate<Length> thickness = numbers.of(Kinds.LENGTH, Mailing.MAIL_THICKNESS, p);
        LocalDate day = in.order().due().orElse(LocalDate.EPOCH);
        // What the sheets of a letter differ by moves its mass and not its thickness.
        double spread = Math.hypot(band(mass, 1), own(mass));
        double together = spread == 0
                ? 0
                : numbers.correlation(Mailing.MAIL_MASS, Mailing.MAIL_THICKNESS, p) * band(mass, 1) / spread;
        double apart = Math.sqrt(1 - together * together);
        int alike = 0;
        for (double z : MASSES) {
            for (double own : THICKNESSES) {
                MailLimits.Verdict there = limits.check(
                        mm(width), mm(height), mm(at(thickness, together * z + apart * own)), grams(at(mass, z)), day);
                alike += there.service().equals(verdict.service())
                                && there.step().equals(verdict.step())
                        ? 1
                        : 0;
            }
        }
        return Stage.done(new MailPlan(new Values(
                ordered.mailedIn().get(),
                mass,
                thickness,
                verdict,
                Kinds.SHARE.ofSi((double) alike / (MASSES.length * THICKNESSES.length), "%"))));
    }

    /** What one letter differs from the next: the sheets in it do so each by itself. */
    private static double scatter(PlainNumbers in, int p, Piece ordered) {
        double sheet = in.asked()
                .find("sheet.scatter-grammage", Scope.of(ordered.name(), ordered.recipe()))
                .map(Assumption::likelySi)
                .orElse(0.0);
        double all = in.estimates().likely(Mailing.MAIL_MASS, p);
        double envelope = in.estimates().likely(CuttingAndFolding.MASS, p);
        double inside = Math.max(0, all - envelope);
        int inserts = Math.max(1, ordered.envelopeFor().isPresent() ? ordered.inserts() : 1);
        return sheet * Math.sqrt(envelope * envelope + inside * inside / inserts) / all;
    }

    /** The value so many deviations from the likely one, as factors; with what one differs from the next where known. */
    private static <Q extends Quantity<Q>> double at(Estimate<Q> estimate, double z) {
        double likely = estimate.likely().si();
        return likely * Math.exp(z / PlainNumbers.NINE_IN_TEN * Math.hypot(band(estimate, z), own(estimate)));
    }

    /** Half of a band on the side of z, as a logarithm. */
    private static double band(Estimate<?> estimate, double z) {
        double end = (z < 0 ? estimate.low() : estimate.high()).si();
        return Math.abs(Math.log(end / estimate.likely().si()));
    }

    private static double own(Estimate<?> estimate) {
        return estimate.scatter().map(Math::log1p).orElse(0.0);
    }

    /** {@return the country of mailing} */
    public String country() {
        return values.country;
    }

    /** {@return its mass} */
    public Estimate<Mass> mass() {
        return values.mass;
    }

    /** {@return its thickness} */
    public Estimate<Length> thickness() {
        return values.thickness;
    }

    /** {@return which service takes it, or which limit fails and by how much, at the likely values} */
    public MailLimits.Verdict verdict() {
        return values.verdict;
    }

    /**
     * {@return of single letters the share that goes by the same service and step as the likely one: over what is not known,
     * what makings differ by, and for the mass what sheets differ by}
     */
    public Amount<Share> sameVerdict() {
        return values.sameVerdict;
    }

    @Override
    public String toString() {
        return values.country + ": " + values.verdict;
    }
}
