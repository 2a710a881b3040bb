package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.evidence.Estimate;
import org.papermath.plan.MailPlan;
import org.papermath.plan.PiecePlan;

/** What nine makings in ten will give, and what is over. */
final class ComeOutSection extends CardSection {
    ComeOutSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(number, Label.COME_OUT.words(), day("count and pack"));
        List<Across> rows = new ArrayList<>();
        across(
                rows,
                Mark.EXPECT,
                Label.GOOD,
                piece -> Figures.whole(piece.counts().good()));
        across(
                rows,
                Mark.EXPECT,
                Label.ORDERED,
                piece -> Integer.toString(piece.counts().ordered()));
        rows.add(new Across(
                Mark.CHECK,
                Label.COUNTED.words(),
                pieces.all().stream().map(piece -> CardForm.TO_WRITE).toList()));
        across(
                rows,
                Mark.EXPECT,
                Label.ENOUGH,
                piece -> piece.counts()
                        .chanceOfEnough()
                        .map(chance -> "in " + Figures.fits(chance.in("%")))
                        .orElse(""));
        across(
                rows,
                Mark.EXPECT,
                Label.MASS,
                piece -> figures.band(piece.finished().mass()));
        across(
                rows,
                Mark.EXPECT,
                Label.GRAMMAGE,
                piece -> figures.band(piece.finished().grammage()));
        across(rows, Mark.EXPECT, Label.LEVELS, piece -> levels(piece.finished().grammage()));
        across(
                rows,
                Mark.EXPECT,
                Label.INSIDE_TOLERANCE,
                piece -> piece.finished()
                        .insideTolerance()
                        .map(share -> Figures.fits(share.in("%")) + " of sheets")
                        .orElse(""));
        across(
                rows,
                Mark.EXPECT,
                Label.SIZE,
                piece -> side(piece.finished().width()) + " × "
                        + side(piece.finished().height()) + " mm");
        across(
                rows,
                Mark.EXPECT,
                Label.CALIPER,
                piece -> piece.finished()
                        .caliperStage()
                        .map(caliper -> figures.band(caliper.in("mm")))
                        .orElse("not known"));
        across(
                rows,
                Mark.EXPECT,
                Label.PILE,
                piece -> piece.finished().pileStage().map(figures::band).orElse(""));
        across(
                rows,
                Mark.EXPECT,
                Label.PLAY,
                piece -> piece.envelopeStage()
                        .map(envelope -> Figures.two(
                                        envelope.playAlong().likely().in("mm")) + " × "
                                + Figures.two(envelope.playAcross().likely().in("mm")) + " mm; "
                                + Figures.fits(envelope.sharePairsFit().in("%")) + " of pairs fit")
                        .orElse(""));
        across(
                rows,
                Mark.EXPECT,
                Label.MAILED,
                piece -> piece.mailStage()
                        .map(mail -> Figures.two(mail.mass().likely().in("g")) + " g, "
                                + Figures.two(mail.thickness().likely().in("mm")) + " mm")
                        .orElse(""));
        columns("", rows);
        for (PiecePlan piece : pieces.all()) {
            piece.mailStage().optional().ifPresent(mail -> mail(piece, mail));
        }
        parcel();
        return true;
    }

    private void mail(PiecePlan piece, MailPlan mail) {
        form.line(
                Mark.EXPECT,
                pieces.before(piece, ": ")
                        + mail.verdict()
                                .service()
                                .map(service -> "goes as " + service + " in " + mail.country()
                                        + (mail.verdict().step().isPresent()
                                                ? ", mass step "
                                                        + mail.verdict().step().getAsInt()
                                                : "")
                                        + " (" + Figures.fits(mail.sameVerdict().in("%")) + ")")
                                .orElse("no service in " + mail.country() + " takes it"));
    }

    /** What is ordered weighs together; pieces that go out in one another are among them. */
    private void parcel() {
        double kilograms = pieces.all().stream()
                .mapToDouble(piece -> piece.counts().ordered()
                        * piece.finished().mass().likely().in("kg"))
                .sum();
        form.line(Mark.EXPECT, "the parcel: about " + Figures.grams(kilograms) + " of paper, and its box");
    }

    private String side(Estimate<Length> side) {
        String text = figures.band(side);
        return text.endsWith(" mm") ? text.substring(0, text.length() - 3) : text;
    }

    /** What a band is made of, and what single sheets differ by besides. */
    private static <Q extends Quantity<Q>> String levels(Estimate<Q> estimate) {
        String parts = estimate.fromMakings() > 0 && !estimate.isOpenBelow() && !estimate.isOpenAbove()
                ? half(estimate, estimate.unknown()) + " / " + half(estimate, estimate.makings())
                : "- / -";
        String sheets = estimate.scatter()
                .filter(scatter -> scatter > 0)
                .map(scatter -> Figures.two(100 * scatter))
                .orElse("-");
        return parts.equals("- / -") && sheets.equals("-") ? "" : "±" + parts + " / " + sheets + " %";
    }

    private static <Q extends Quantity<Q>> String half(Estimate<Q> whole, Estimate.Part<Q> part) {
        return Figures.two(
                50 * (part.high().si() - part.low().si()) / whole.likely().si());
    }
}
