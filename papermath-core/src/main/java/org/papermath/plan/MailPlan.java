package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;
import static org.papermath.plan.PlainNumbers.mm;

import java.time.LocalDate;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.Mailing;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.evidence.Estimate;
import org.papermath.mail.MailLimits;
import org.papermath.order.Piece;
import org.papermath.quantity.Kinds;

/** What is mailed. */
public final class MailPlan {
    private record Values(
            String country, Estimate<Mass> mass, Estimate<Length> thickness, MailLimits.Verdict verdict) {}

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
        return Stage.done(new MailPlan(new Values(
                ordered.mailedIn().get(),
                numbers.of(Kinds.MASS, Mailing.MAIL_MASS, p),
                numbers.of(Kinds.LENGTH, Mailing.MAIL_THICKNESS, p),
                verdict)));
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

    @Override
    public String toString() {
        return values.country + ": " + values.verdict;
    }
}
