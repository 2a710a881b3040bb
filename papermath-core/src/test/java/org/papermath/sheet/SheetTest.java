package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.press.PressingModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;
import org.papermath.testing.Beaten;

class SheetTest {
    private static final Air ROOM = Air.of(celsius(21), RelativeHumidity.percent(61));

    @Test
    void aWeighedSheetIsConditioned() {
        DrySheet sheet = DrySheet.weighed(grams(4.92), mm(148), mm(105)).in(ROOM);
        Amount<Grammage> grammage = sheet.conditioned().grammage();
        // 316.6 g/m² as weighed; about a point and a half of moisture less at 50 %.
        assertThat(sheet.grammage().in("g/m2")).isCloseTo(316.6, within(0.05));
        assertThat(grammage.in("g/m2")).isBetween(310.0, 313.5);
        double ratio = SorptionModel.standard().ratio(ROOM).si();
        double reference = SorptionModel.standard().ratio(Air.reference()).si();
        assertThat(grammage.si())
                .isCloseTo(0.00492 / (0.148 * 0.105) / (1 + ratio) * (1 + reference), withinPercentage(1e-9));
        assertThat(DrySheet.weighed(grams(4.92), mm(148), mm(105))
                        .in(ROOM, Furnish.of(Fibres.ABACA))
                        .conditioned()
                        .grammage()
                        .si())
                .isLessThan(grammage.si());
    }

    @Test
    void conditioningThereAndBackIsTheSameSheet() {
        DrySheet sheet = DrySheet.weighed(grams(12.4), mm(297), mm(420)).in(ROOM);
        DrySheet back = sheet.conditioned().conditioned(ROOM);
        assertThat(back.mass().in("g")).isCloseTo(12.4, withinPercentage(1e-12));
        assertThat(sheet.ovenDry().si()).isEqualTo(sheet.conditioned().ovenDry().si());
    }

    @Test
    void statesSayWhatTheyAre() {
        FormedSheet formed = FormedSheet.of(grams(12), mm(300), mm(400));
        assertThat(formed).hasToString("formed sheet 300 mm × 400 mm, 100 g at 12 % solids; oven-dry 12 g, 100 g/m²");
        assertThat(formed.couched())
                .hasToString("couched sheet 300 mm × 400 mm, 80 g at 15 % solids; oven-dry 12 g, 100 g/m²");
        assertThat(formed.couched().unpressed().released().si()).isZero();
        assertThat(formed.withAdditives(grams(3)).solids().si())
                .isCloseTo(formed.solids().si(), within(1e-12));
        assertThat(formed.at(Solids.percent(10)).mass().in("g")).isCloseTo(120, withinPercentage(1e-9));
    }

    @Test
    void mineralsHoldNoMoisture() {
        FormedSheet formed = FormedSheet.of(grams(12), mm(300), mm(400));
        DrySheet plain = formed.couched().unpressed().dried(Shrinkage.NONE, SorptionModel.standard(), ROOM);
        DrySheet filled = formed.withMinerals(grams(2))
                .couched()
                .unpressed()
                .dried(Shrinkage.NONE, SorptionModel.standard(), ROOM);
        DrySheet sized = formed.withAdditives(grams(2))
                .couched()
                .unpressed()
                .dried(Shrinkage.NONE, SorptionModel.standard(), ROOM);
        assertThat(filled.water().si()).isCloseTo(plain.water().si(), within(1e-15));
        assertThat(sized.water().si()).isCloseTo(plain.water().si() * 14 / 12, within(1e-12));
        assertThat(filled.conditioned().water().si())
                .isCloseTo(plain.conditioned().water().si(), within(1e-15));
        assertThat(filled.minerals().in("g")).isCloseTo(2, within(1e-9));
        assertThat(filled.additives().in("g")).isCloseTo(2, within(1e-9));
    }

    @Test
    void noStepPutsWaterIn() {
        FormedSheet formed = FormedSheet.of(grams(12), mm(300), mm(400));
        assertThatThrownBy(() -> formed.couched(Solids.percent(10)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("sheet.wetter"))
                .hasMessage("solids of the couched sheet: 10 % given, but the sheet before is at 12 %; this step takes"
                        + " water out and cannot put it in. Check which of the two was meant.");
        PressedSheet dried = formed.couched().pressed(Solids.percent(97));
        assertThatThrownBy(() -> dried.dried(Shrinkage.NONE, SorptionModel.standard(), ROOM))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("sheet.drier"));
        assertThatThrownBy(() -> CouchedSheet.weighed(grams(12), grams(80), mm(300), mm(400)))
                .isInstanceOf(Refused.class);
    }

    private static void holds(Sheet sheet) {
        double dry = sheet.area().si()
                * sheet.grammage().si()
                * (1 - sheet.moisture().si());
        assertThat(dry).isCloseTo(sheet.ovenDry().si(), withinPercentage(1e-12 * 100));
        assertThat(sheet.fibre().si() + sheet.additives().si() + sheet.water().si())
                .isCloseTo(sheet.mass().si(), withinPercentage(1e-10));
        assertThat(sheet.solids().si() + sheet.moisture().si()).isCloseTo(1, within(1e-12));
    }

    @Property(tries = 250, seed = "2026")
    void couchPressDrySizeDryConserves(
            @ForAll @DoubleRange(min = 1, max = 60) double fibre,
            @ForAll @DoubleRange(min = 0, max = 10) double filler,
            @ForAll @DoubleRange(min = 16, max = 55) double pressed,
            @ForAll @DoubleRange(min = 0.5, max = 8) double strength,
            @ForAll @DoubleRange(min = 30, max = 200) double pickUp,
            @ForAll @DoubleRange(min = 0, max = 0.25) double along,
            @ForAll @DoubleRange(min = 0, max = 0.25) double across,
            @ForAll @DoubleRange(min = 10, max = 80) double humidity) {
        Air air = Air.of(celsius(20), RelativeHumidity.percent(humidity));
        FormedSheet formed = FormedSheet.of(grams(fibre), mm(300), mm(400)).withAdditives(grams(filler));
        CouchedSheet couched = formed.couched(Solids.percent(15));
        PressedSheet out = couched.pressed(Solids.percent(pressed));
        Shrinkage shrinkage = Shrinkage.across(LinearShrinkage.fraction(across)).along(LinearShrinkage.fraction(along));
        DrySheet dry = out.dried(shrinkage, SorptionModel.standard(), air);
        SurfaceSize size = SurfaceSize.of(Share.percent(strength), Amounts.percent(pickUp));
        PressedSheet wet = size.size(dry);
        DrySheet sized = wet.dried(Shrinkage.NONE, SorptionModel.standard(), air);
        for (Sheet sheet : List.of(formed, couched, out, dry, wet, sized)) {
            holds(sheet);
            assertThat(sheet.fibre().si()).isEqualTo(formed.fibre().si());
        }
        double released =
                couched.released().si() + out.released().si() + dry.released().si();
        assertThat(dry.water().si() + released).isCloseTo(formed.water().si(), withinPercentage(1e-10));
        double bath = dry.mass().si() * pickUp / 100;
        assertThat(wet.additives().si() - dry.additives().si()).isCloseTo(bath * strength / 100, within(1e-15));
        assertThat(wet.mass().si()).isCloseTo(dry.mass().si() + bath, withinPercentage(1e-10));
        assertThat(sized.additives().si()).isEqualTo(wet.additives().si());
        assertThat(sized.water().si() + sized.released().si())
                .isCloseTo(wet.water().si(), withinPercentage(1e-10));
        assertThat(dry.area().si()).isCloseTo(0.12 * (1 - shrinkage.area().si()), withinPercentage(1e-10));
    }

    /** From the order back to deckle and wet mat, and forward again. */
    @Property(tries = 250, seed = "2026")
    void theWholePathTurnsBack(
            @ForAll @IntRange(min = 0, max = 7) int fibreIndex,
            @ForAll @IntRange(min = 0, max = 95) int share,
            @ForAll @DoubleRange(min = 0.5, max = 8) double hours,
            @ForAll @DoubleRange(min = 0.1, max = 1.5) double pressure,
            @ForAll @IntRange(min = 0, max = 7) int restraintIndex,
            @ForAll @DoubleRange(min = 60, max = 400) double gsm,
            @ForAll @DoubleRange(min = 80, max = 500) double width,
            @ForAll @DoubleRange(min = 80, max = 700) double height,
            @ForAll @DoubleRange(min = 5, max = 35) double celsius,
            @ForAll @DoubleRange(min = 20, max = 80) double humidity) {
        List<Fibre> fibres = Fibres.all().stream()
                .filter(fibre -> Assumptions.standard()
                        .find("shrinkage.limit", fibre.scope())
                        .isPresent())
                .toList();
        Fibre first = fibres.get(fibreIndex % fibres.size());
        Fibre second = fibres.get((fibreIndex + 1) % fibres.size());
        Furnish furnish = share < 1
                ? Furnish.of(first)
                : Furnish.of(Share.percent(share), first, Share.percent(100 - share), second);
        Restraint restraint = Restraint.all().get(restraintIndex);
        SorptionModel sorption = SorptionModel.standard(furnish);
        Air air = Air.of(celsius(celsius), RelativeHumidity.percent(humidity));
        Amount<WaterRetention> wrv = WaterRetention.gramsPerGram(1.2 + hours / 8);

        // Backwards: what the sheet shrinks does not depend on its size, only on where drying begins.
        CouchedSheet trial =
                FormedSheet.ofGrammage(Grammage.gsm(gsm), mm(width), mm(height)).couched();
        Amount<SheetPressure> p = Kinds.SHEET_PRESSURE.of(pressure, "MPa");
        PressedSheet trialPressed =
                PressingModel.standard().press(trial, wrv, p, minutes(10000)).sheet();
        Shrinkage shrinkage = ShrinkageModel.standard(furnish)
                .along(
                        Beaten.hours(furnish, hours),
                        DryingPath.from(trialPressed).then(restraint, sorption.ratio(air)))
                .shrinkage();

        // And forward again.
        FormedSheet formed = FormedSheet.toBecome(Grammage.gsm(gsm), mm(width), mm(height), shrinkage, sorption);
        assertThat(formed.width().in("mm") * (1 - shrinkage.acrossFraction())).isCloseTo(width, withinPercentage(1e-7));
        PressedSheet pressed = PressingModel.standard()
                .press(formed.couched(), wrv, p, minutes(10000))
                .sheet();
        Shrinkage again = ShrinkageModel.standard(furnish)
                .along(Beaten.hours(furnish, hours), DryingPath.from(pressed).then(restraint, sorption.ratio(air)))
                .shrinkage();
        DrySheet dry = pressed.dried(again, sorption, air);
        assertThat(dry.width().in("mm")).isCloseTo(width, withinPercentage(1e-7));
        assertThat(dry.height().in("mm")).isCloseTo(height, withinPercentage(1e-7));
        assertThat(dry.conditioned().grammage().in("g/m2")).isCloseTo(gsm, withinPercentage(1e-7));
        assertThat(dry.grammage().si() / dry.conditioned().grammage().si())
                .isCloseTo(
                        (1 + sorption.ratio(air).si())
                                / (1 + sorption.ratio(Air.reference()).si()),
                        withinPercentage(1e-7));
    }
}
