package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.millilitres;
import static org.papermath.quantity.Amounts.mils;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.pounds;
import static org.papermath.quantity.Amounts.squareMetres;
import static org.papermath.quantity.Amounts.usGallons;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.papermath.air.Air;
import org.papermath.drying.WaterBudget;
import org.papermath.envelope.EnvelopeFit;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.StatedTwice;
import org.papermath.examples.Embed;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.Cook;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.order.Studio;
import org.papermath.plan.Caution;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.StepCaution;
import org.papermath.press.Vacuum;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeaterLoad;
import org.papermath.pulp.BeatingRecord;
import org.papermath.pulp.BeatingTime;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.SpoonMeasure;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.record.SheetQuality;
import org.papermath.shape.Caliper;
import org.papermath.shape.CutLayout;
import org.papermath.shape.MeasuredSize;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.DrySheet;
import org.papermath.sheet.SheetCounts;
import org.papermath.sheet.Yield;

/** Slips that are refused, asked back or warned of. Each method returns what the library says. */
public final class CautionQuestions {
    private CautionQuestions() {}

    /** The jack says twelve tons: of which ton? */
    @Question(number = "F1", words = "ton jack press force")
    public static String f01WhichTon() {
        try {
            return "taken: " + Kinds.FORCE.read("12 ton");
        } catch (Unclear question) {
            return question.getMessage();
        }
    }

    /** Can a vacuum table draw twenty-five pounds to the square inch? */
    @Question(number = "F2", words = "vacuum table psi atmosphere")
    public static String f02VacuumAboveTheAir() {
        try {
            return "taken: " + Vacuum.of(GaugePressure.psi(25));
        } catch (Refused refusal) {
            return refusal.getMessage();
        }
    }

    /** Is four per cent by the weight of the stock, or on its water? */
    @Question(number = "F3", words = "consistency w/v m/m pulp per cent")
    public static String f03WhichConsistency() {
        return Pulp.whichConsistency(percent(4)).getMessage();
    }

    /** A pound of fibre, or 450 g: may one stand for the other? */
    @Question(number = "F4", words = "rounded pound ounce gram")
    public static Notice f04RoundedPound() {
        return StatedTwice.compare("fibre", pounds(1), grams(450)).orElseThrow();
    }

    /** Lye of nine per cent: of the fibre, or of the water? */
    @Question(number = "F5", words = "solution dose alkali per cent base")
    public static String f05PerCentOfWhat() {
        return Cook.whichBase(Alkali.CAUSTIC_SODA, percent(9), pounds(1).to("g"), litres(9))
                .getMessage();
    }

    /** It shrank to three quarters: by the side, or by the area, and is it alike both ways? */
    @Question(number = "F6", words = "shrinkage linear area side")
    public static String f06ToThreeQuarters() {
        try {
            return "taken: " + Shrinkage.said("to three quarters").left(Share.percent(75));
        } catch (Unclear question) {
            return question.getMessage() + " "
                    + Shrinkage.linear(percent(13)).notices().get(0);
        }
    }

    /** Paper of sixty pounds: of which ream? */
    @Question(number = "F7", words = "ream pounds count basis weight")
    public static String f07PoundsWithoutAReam() {
        try {
            return "taken: " + Kinds.GRAMMAGE.read("60 lb");
        } catch (Unclear question) {
            return question.getMessage();
        }
    }

    /** Twelve mil or 293 micrometres: are they one thickness? */
    @Question(number = "F8", words = "mil caliper thickness micrometre")
    public static Notice f08MilAndMicrometre() {
        return StatedTwice.compare("thickness", mils(12), micrometres(293), StatedTwice.CALIPER)
                .orElseThrow();
    }

    /** Half a litre of this pulp is poured: does it give the sheet that was weighed? */
    @Question(number = "F9", words = "pour aliquot consistency mass")
    public static Notice f09PulpAgainstSheet() {
        return Pulp.ofVolume(millilitres(500), Consistency.percent(0.15))
                .against(grams(1.22))
                .get(0);
    }

    /** Three cups of pulp: how much fibre is that? */
    @Question(number = "F10", words = "volume cup bucket consistency sample")
    public static String f10PulpWithoutConsistency() {
        return Pulp.consistencyWanted(millilitres(710)).getMessage();
    }

    /** The envelope is hardly larger than the card: will it do? */
    @Question(number = "F11", words = "envelope clearance tight")
    public static Notice f11EnvelopeHardlyLarger() {
        return EnvelopeFit.of(MeasuredSize.of(mm(127), mm(178)).withDeviation(mm(1.5), mm(1.5)), mm(0.5))
                .into(MeasuredSize.of(mm(130), mm(181)))
                .notices()
                .get(0);
    }

    /** How many invitations: were guests counted, or households? */
    @Question(number = "F12", words = "guests households invitation count")
    public static StepCaution f12GuestsOrHouseholds() {
        return MakingPlan.of(Embed.order(), Embed.studio()).cautions().stream()
                .filter(caution -> caution.code() == Caution.HOUSEHOLDS)
                .findFirst()
                .orElseThrow();
    }

    /** What if nobody says how the sheets dry? */
    @Question(number = "F13", words = "schedule drying curing days dryer")
    public static String f13NoDrying() {
        Studio bare = Studio.of("without a dryer")
                .mould(Mould.of("octavo", mm(240), mm(310)))
                .build();
        MakingPlan plan = MakingPlan.of(Embed.order(), bare);
        return plan.schedule() + "; "
                + plan.notices().stream()
                        .filter(notice -> notice.code().equals("schedule.no-drying"))
                        .findFirst()
                        .orElseThrow();
    }

    /** One teaspoon of the powder: how many grams? */
    @Question(number = "F14", words = "spoon powder bulk density")
    public static String f14SpoonOfPowder() {
        return SpoonMeasure.bulkDensityWanted("retention aid", Kinds.VOLUME.of(1, "tsp_us"))
                .getMessage();
    }

    /** Can paper be as light, or as dense, as these figures say? */
    @Question(number = "F15", words = "density bulk caliper nature")
    public static String f15DensityOutsideNature() {
        Notice airy = Caliper.of(micrometres(20), Caliper.FIFTY_KILOPASCALS)
                .notices(Grammage.gsm(1.6))
                .get(0);
        try {
            return "taken: "
                    + DrySheet.weighed(grams(1.7), mm(100), mm(100))
                            .in(Air.reference())
                            .notices(micrometres(100));
        } catch (Refused refusal) {
            return airy + " " + refusal.getMessage();
        }
    }

    /** One figure of a series lies far off: is it a slip? */
    @Question(number = "F16", words = "outlier series misprint ream")
    public static Notice f16Outlier() {
        return SheetQuality.of(
                        "substance",
                        Kinds.GRAMMAGE,
                        List.of(Grammage.gsm(113.4), Grammage.gsm(124.7), Grammage.gsm(463), Grammage.gsm(159.8)))
                .notices()
                .get(0);
    }

    /** Sixty-five sheets of two pounds: was all the pulp in them? */
    @Question(number = "F17", words = "heel vat pails card range")
    public static Notice f17PulpLeftInTheVat() {
        return Pulp.ofVolume(litres(37.9), Consistency.percent(2.13))
                .sharedOut(65, squareMetres(0.03016), Assumptions.standard())
                .notices()
                .get(1);
    }

    /** Three pounds in seven gallons: is that too thick for the beater? */
    @Question(number = "F18", words = "beater load consistency thick")
    public static Notice f18TooThickForTheBeater() {
        return BeaterLoad.of(
                        Beater.of("the beater", usGallons(8), pounds(3)),
                        Pulp.ofOvenDry(pounds(3)).inWaterOf(usGallons(7)))
                .notices()
                .get(0);
    }

    /** May the hours of one beater be carried to another, or beyond what was read? */
    @Question(number = "F19", words = "beater hours record extrapolate freeness")
    public static String f19HoursOfAnotherBeater() {
        try {
            BeatingRecord<CanadianFreeness> own = BeatingRecord.of(
                    "linter in the small beater",
                    Kinds.CANADIAN_FREENESS,
                    List.of(
                            BeatingRecord.Point.read(minutes(90), CanadianFreeness.millilitres(440)),
                            BeatingRecord.Point.read(minutes(120), CanadianFreeness.millilitres(375))));
            return "beat " + own.timeTo(CanadianFreeness.millilitres(300));
        } catch (Refused refusal) {
            return refusal.getMessage() + " "
                    + BeatingTime.noFactor(
                                    Beater.of("the small beater", litres(28), grams(650)),
                                    Beater.of("the large beater", litres(60), kilograms(2)))
                            .getMessage();
        }
    }

    /** Sixty-five per cent of moisture: of the wet weight, or of the dry? */
    @Question(number = "F20", words = "moisture wet basis dry basis ratio solids")
    public static String f20WhichMoisture() {
        return Moisture.whichBasis(percent(65)).getMessage();
    }

    /** By area twenty sheets lie on the shelf: how many do? */
    @Question(number = "F21", words = "layout area shelf rack turned")
    public static CutLayout f21ByLayout() {
        return CutLayout.best(inches(30), inches(60), inches(8), inches(11), inches(0), inches(0), Set.of());
    }

    /** Two tonnes of board a day with a thousand litres of water: can it be? */
    @Question(number = "F22", words = "balance water claim litres per kilogram")
    public static Notice f22AgainstTheBalance() {
        return WaterBudget.of(litres(1000), kilograms(2000)).notices().get(0);
    }

    /** Are these the limits of the mail today? */
    @Question(number = "F23", words = "mail limits date country")
    public static Notice f23OldLimits() {
        return MailLimits.of("United States")
                .check(mm(165), mm(121), mm(1.1), grams(24), LocalDate.of(2026, 5, 1))
                .notices()
                .get(0);
    }

    /** One hundred and ninety-eight good of nine in ten: is that 220, or one more? */
    @Question(number = "F24", words = "rounding counts ceiling")
    public static String f24Rounding() {
        return SheetCounts.toForm(198, Yield.of(Share.percent(90))) + " sheets, not one more";
    }
}
