package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.squareMetres;

import javax.measure.quantity.Mass;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.drying.DryingStack;
import org.papermath.fibre.OvenDry;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.SheetCounts;
import org.papermath.sheet.SurfaceSize;
import org.papermath.sheet.Yield;

/** Questions of drying and size: shrinkage, flatness, hours, blotters, the bath. */
public final class DryingQuestions {
    private DryingQuestions() {}

    /** Why did one mould give sheets of two sizes? */
    @Question(number = "B10", words = "shrinkage restrained loft free size grammage")
    public static String b10TwoSizes() {
        Shrinkage held = Shrinkage.measured(mm(250), mm(350), mm(247), mm(346));
        Shrinkage free = Shrinkage.measured(mm(250), mm(350), mm(231), mm(318));
        return "held: " + held + "; in the loft: " + free;
    }

    /** Ink still bleeds: did the size fail? */
    @Question(number = "B17", words = "gelatine size ink waterleaf pick-up curing")
    public static SurfaceSize b17InkBleeds() {
        return SurfaceSize.weighed(Share.percent(4), grams(21), grams(39.5));
    }

    /** How much gelatine bath does the batch take? */
    @Question(number = "B18", words = "gelatine tub bath pick-up")
    public static SurfaceSize.Bath b18GelatineBath() {
        return SurfaceSize.weighed(Share.percent(4), grams(21), grams(39.5)).bath(90, grams(21), kilograms(4));
    }

    /** What does cockling cost: how many sheets for sixty flat ones? */
    @Question(number = "B31", words = "cockle curl flat loft restraint")
    public static String b31WhatCocklingCosts() {
        return "form " + SheetCounts.toForm(60, Yield.of(Share.percent(30))) + " sheets for the loft, "
                + SheetCounts.toForm(60, Yield.of(Share.percent(95))) + " under restraint, for 60 flat ones";
    }

    /** How long must it dry, and is it dry? */
    @Question(number = "B32", words = "dry weighing water hours stack moisture")
    public static String b32HowLongToDry() {
        Amount<Mass> water = OvenDry.of(grams(420)).waterOut(Moisture.percent(64), Moisture.percent(7));
        return DryingModel.isDry(grams(1167), grams(1050), hours(3), water) + "; " + water + " of water in all";
    }

    /** How many blotters and boards does the stack take? */
    @Question(number = "B33", words = "blotters boards stack layers")
    public static DryingStack b33BlottersAndBoards() {
        return DryingStack.of(24).inLayer(3).blottersEachSide(2);
    }

    /** The fan stopped: how long do the half-dry sheets take in the loft? */
    @Question(number = "G17", words = "fan loft half-dry hours rest")
    public static String g17LoftAfterTheFan() {
        Air room = Air.of(celsius(18), RelativeHumidity.percent(58));
        DryingModel.Batch rest = DryingModel.Batch.of(
                grams(218),
                squareMetres(3),
                MoistureRatio.ofMoisture(Moisture.percent(43)),
                MoistureRatio.percent(10),
                SorptionModel.standard().ratio(room));
        return "dry after " + DryingModel.standard().time(Dryer.loft("the loft", 1, 120), rest, room);
    }
}
