package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.StatedTwice;
import org.papermath.format.Fold;
import org.papermath.format.Ream;
import org.papermath.format.WeighedSheet;
import org.papermath.mould.Mould;
import org.papermath.press.Lifting;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.AmountRange;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Unclear;
import org.papermath.schedule.Pace;
import org.papermath.shape.Caliper;
import org.papermath.vat.Vat;

/** Questions of small arithmetic: what is written, counted, folded, paced, lifted. */
public final class SmallQuestions {
    private SmallQuestions() {}

    /** What are thirteen and a quarter inches, and two pounds three ounces? */
    @Question(number = "G22", words = "fraction inch pound ounce convert")
    public static String g22InchesAndOunces() {
        return Kinds.LENGTH.read("13¼\"").to("mm") + " and "
                + Kinds.MASS.read("2 lb 3 oz").to("kg");
    }

    /** How many sheets are in two reams and three quires? */
    @Question(number = "G23", words = "ream quire bundle count sheets")
    public static String g23ReamsAndQuires() {
        try {
            return String.valueOf(Ream.sheetsOfAny("2 reams 3 quires"));
        } catch (Unclear question) {
            return question.getMessage();
        }
    }

    /** What is this sheet? */
    @Question(number = "G24", words = "grammage caliper format name unknown sheet")
    public static String g24WhatIsThisSheet() {
        return WeighedSheet.of(mm(210), mm(297), grams(5.6))
                .thick(Caliper.of(micrometres(120), SheetPressure.kilopascals(100)))
                .verdict(Assumptions.standard());
    }

    /** What does a sheet folded in quarto give, and how many sheets make a book of a hundred pages? */
    @Question(number = "G25", words = "folio quarto octavo leaves pages fold")
    public static String g25Quarto() {
        List<Amount<Length>> leaf = Fold.QUARTO.leaf(inches(22), inches(30));
        return Fold.QUARTO + " of " + leaf.get(0) + " × " + leaf.get(1) + "; " + Fold.QUARTO.sheetsFor(100) + " sheets";
    }

    /** At five to six minutes a sheet, how many are made in four hours, and how many with a second hand? */
    @Question(number = "G26", words = "pace hands hour rate day")
    public static String g26SheetsInAMorning() {
        Pace one = Pace.each(AmountRange.read(Kinds.TIME, "5-6 min"));
        return one.made(hours(4)) + "; with a second hand " + one.hands(2).made(hours(4));
    }

    /** Are a hundred sheets made in eight hours at this pace, and what would make them? */
    @Question(number = "G27", words = "target pace hours reach")
    public static Pace.Reach g27ReachAHundred() {
        return Pace.each(AmountRange.read(Kinds.TIME, "5-6 min")).reach(100, hours(8));
    }

    /** How many posts of twenty sheets are formed and pressed in a day of eight hours? */
    @Question(number = "G28", words = "posts day pace press")
    public static String g28PostsADay() {
        return Pace.of(AmountRange.read(Kinds.RATE, "40-60 per hour"))
                        .lots(20, minutes(30))
                        .made(hours(8)) + " posts a day";
    }

    /** Three figures are printed for one caliper: which is the odd one? */
    @Question(number = "G29", words = "label stated twice caliper mil odd")
    public static String g29OddFigure() {
        return StatedTwice.inPrint("caliper", Kinds.LENGTH, List.of("12.0 mil", "293 um", "0.305 mm"))
                .get(0)
                .text();
    }

    /** Which row of this table of weights is wrong? */
    @Question(number = "G30", words = "table list pounds kilograms misprint")
    public static String g30RowOfATable() {
        return StatedTwice.inPrint(
                        Kinds.MASS,
                        new TreeMap<>(Map.of("bale", List.of("80 lb", "36 kg"), "drum", List.of("25.0 lb", "13.1 kg"))))
                .get(0)
                .text();
    }

    /** Who lifts this post, weighed at twenty-seven kilograms? */
    @Question(number = "G31", words = "lift post heavy trolley back")
    public static Lifting g31WhoLifts() {
        return Lifting.of(Assumptions.standard(), "post", kilograms(27));
    }

    /** How large a vat does this mould want? */
    @Question(number = "G32", words = "vat mould size litres tub")
    public static String g32VatForAMould() {
        Vat vat = Vat.around(Mould.of("letter", inches(8.5), inches(11)), mm(25), mm(75), mm(200));
        return vat.workingVolume() + ", " + vat.width().orElseThrow() + " × "
                + vat.length().orElseThrow() + " inside";
    }

    /** The pail was weighed and its litres were read: do the two go together? */
    @Question(number = "G33", words = "pail bucket weight volume litres")
    public static String g33PailByBoth() {
        Pulp pail = Pulp.ofWet(kilograms(14.2), Consistency.percent(6.08));
        return StatedTwice.compare("pail", pail.volume(), litres(18), percent(5))
                .map(Notice::text)
                .orElse("yes");
    }

    /** One helper takes five to six minutes a sheet, the other 330 seconds to eight minutes: what have they in common? */
    @Question(number = "G34", words = "range least most compare overlap helpers")
    public static String g34TwoHelpers() {
        AmountRange<Time> one = AmountRange.read(Kinds.TIME, "5-6 min");
        return one.overlap(AmountRange.read(Kinds.TIME, "330 s to 8 min"))
                .map(AmountRange::toString)
                .orElse("nothing");
    }
}
