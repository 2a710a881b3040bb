package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import org.papermath.envelope.EnvelopeFit;
import org.papermath.examples.Embed;
import org.papermath.format.ReamBasis;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.plan.FinishedPiece;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.Units;
import org.papermath.shape.CutLayout;
import org.papermath.shape.MeasuredSize;
import org.papermath.shape.Shrinkage;

/** Questions of sizes, reams, cutting, envelopes and the mail. */
public final class StationeryQuestions {
    private StationeryQuestions() {}

    /** How large must the deckle be for a finished card? */
    @Question(number = "B9", words = "deckle opening mould shrinkage trim")
    public static String b09DeckleForACard() {
        return "open the deckle to "
                + Mould.openingFor(
                        mm(120), mm(170), Shrinkage.across(percent(3.5)).along(percent(5)), mm(6), mm(6));
    }

    /** Why does the envelope not fit the card? */
    @Question(number = "B11", words = "envelope clearance play tight")
    public static EnvelopeFit b11EnvelopeDoesNotFit() {
        return EnvelopeFit.of(MeasuredSize.of(mm(127.4), mm(178.1)).withDeviation(mm(1.1), mm(1.3)), mm(0.9))
                .into(MeasuredSize.of(mm(131), mm(181)));
    }

    /** Which ream is meant by these pounds? */
    @Question(number = "B19", words = "ream pounds count basis weight")
    public static String b19WhichReam() {
        try {
            return ReamBasis.ofUnknownCount(60, inches(19), inches(25)).toString();
        } catch (Unclear question) {
            return question.getMessage();
        }
    }

    /** Do the grams on this label agree with its pounds? */
    @Question(number = "B20", words = "label ream pounds basis weight")
    public static ReamBasis.Label b20LabelOfAReam() {
        return ReamBasis.of(inches(24), inches(36), 500).label(80, Grammage.gsm(130));
    }

    /** Is eighty-pound cover the same as eighty-pound text? */
    @Question(number = "B21", words = "cover text pounds basis weight")
    public static String b21CoverAndText() {
        return "no: " + ReamBasis.COVER.pounds(80).to(Units.GSM) + " of cover, "
                + ReamBasis.TEXT.pounds(80).to(Units.GSM) + " of text";
    }

    /** Will it mail? */
    @Question(number = "B37", words = "mail postage limits letter aspect")
    public static MailLimits.Verdict b37WillItMail() {
        return MailLimits.of("United States").check(mm(165), mm(121), mm(1.1), grams(24), LocalDate.of(2026, 11, 28));
    }

    /** How many cards come out of one parent sheet, and with which edges? */
    @Question(number = "B41", words = "parent cut trim deckle edges layout")
    public static String b41CardsFromAParent() {
        Set<CutLayout.Edge> all = EnumSet.allOf(CutLayout.Edge.class);
        return CutLayout.best(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), all) + "; the other way "
                + CutLayout.of(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), all, true);
    }

    /** It shrank by a fifth: by the side, or by the area? */
    @Question(number = "B43", words = "shrinkage linear area side")
    public static String b43ByAFifth() {
        try {
            return Shrinkage.said("by a fifth").lost(Share.percent(20)).toString();
        } catch (Unclear question) {
            return question.getMessage();
        }
    }

    /** What does the parcel weigh, and how thick is it? */
    @Question(number = "G16", words = "parcel weight pile shipping")
    public static String g16Parcel() {
        FinishedPiece programme =
                MakingPlan.of(Embed.order(), Embed.studio()).piece("programme").finished();
        return programme.mass().times(70).in("kg") + "; a pile of " + programme.pile();
    }
}
