package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/** Counts by SciPy 1.17.1 (binom, betabinom, hypergeom, t), each found by going up one sheet at a time. */
class SheetCountsTest {
    private static Amount<Share> percent(double value) {
        return Kinds.SHARE.of(value, "%");
    }

    @Test
    void sheetsToMakeWhereTheShareIsKnown() {
        SheetCounts.Count fifty = SheetCounts.toMake(50, percent(85), percent(95));
        assertThat(fifty.sheets()).isEqualTo(64);
        assertThat(fifty.confidence().si()).isCloseTo(0.9509129926412366, within(1e-12));
        assertThat(fifty)
                .hasToString("make 64 sheets: 50 or more are good in 95.09 % of such runs, where 85 % are good");
        assertThat(SheetCounts.toMake(50, percent(85), percent(50)).sheets()).isEqualTo(59);
        assertThat(SheetCounts.toMake(1, percent(50), percent(95)).sheets()).isEqualTo(5);
        assertThat(SheetCounts.toMake(100, percent(92), percent(99)).sheets()).isEqualTo(117);
        assertThat(SheetCounts.toMake(1, percent(100), percent(99.99)))
                .hasToString("make 1 sheet: 1 or more are good in 100 % of such runs, where 100 % are good");
    }

    @Test
    void oneCountedShareNeedsMore() {
        assertThat(SheetCounts.toMake(50, 85, 15, percent(95)).sheets()).isEqualTo(67);
        SheetCounts.Count few = SheetCounts.toMake(50, 17, 3, percent(95));
        assertThat(few.sheets()).isEqualTo(75);
        assertThat(few.confidence().si()).isCloseTo(0.9555341113713562, within(1e-10));
        assertThat(few)
                .hasToString("make 75 sheets: 50 or more are good in 95.55 % of such runs, where 17 of 20 were good");
        assertThat(SheetCounts.toMake(1, 0, 0, percent(50)).sheets()).isPositive();
    }

    /** The band that a count of 17 good and 3 bad sheets makes leads back to that count. */
    @Test
    void bandIsTakenForTheCountItComesOf() {
        Estimate<Share> band = Estimate.of(
                Kinds.SHARE.of(17.5 / 21, "1"),
                Kinds.SHARE.of(0.6863196425642806, "1"),
                Kinds.SHARE.of(0.9437519457095812, "1"),
                List.of());
        SheetCounts.Count count = SheetCounts.toMake(50, band, percent(95));
        assertThat(count.sheets()).isEqualTo(75);
        assertThat(count.confidence().si()).isCloseTo(0.9555341113713562, within(1e-6));
        Estimate<Share> sure = Estimate.of(percent(85), percent(85), percent(85), List.of());
        assertThat(SheetCounts.toMake(50, sure, percent(95)).sheets()).isEqualTo(64);
        Estimate<Share> narrow = Estimate.of(percent(85), percent(84.99), percent(85.01), List.of());
        assertThat(SheetCounts.toMake(50, narrow, percent(95)).sheets()).isEqualTo(64);
        Estimate<Share> hair = Estimate.of(percent(85), percent(84.9999), percent(85.0001), List.of());
        assertThat(SheetCounts.toMake(50, hair, percent(95)).sheets()).isEqualTo(64);
        Estimate<Share> open = Estimate.of(percent(50), percent(0), percent(100), List.of());
        assertThatThrownBy(() -> SheetCounts.toMake(50, open, percent(95)))
                .isInstanceOf(Refused.class)
                .hasMessage("share of good sheets: a band from 0 % to 100 % says no more than that nothing was counted."
                        + " Count the good and the bad sheets of a run.");
    }

    @Test
    void sheetsToLookAt() {
        SheetCounts.Count run = SheetCounts.toInspect(percent(5), percent(95));
        assertThat(run.sheets()).isEqualTo(59);
        assertThat(run).hasToString("look at 59 sheets: if none is bad, at most 5 % of the run is bad, 95.15 % sure");
        assertThat(SheetCounts.toInspect(50, percent(5), percent(95)).sheets()).isEqualTo(31);
        assertThat(SheetCounts.toInspect(1000, percent(5), percent(95)).sheets())
                .isEqualTo(56);
        assertThat(SheetCounts.toInspect(10, percent(1), percent(95)))
                .hasToString("look at 10 sheets: if none is bad, at most 1 % of the lot of 10 is bad, 100 % sure");
    }

    @Test
    void sheetsToWeigh() {
        assertThat(SheetCounts.toWeigh(percent(5), percent(2), percent(95)).sheets())
                .isEqualTo(27);
        assertThat(SheetCounts.toWeigh(percent(8), percent(2), percent(90)).sheets())
                .isEqualTo(46);
        assertThat(SheetCounts.toWeigh(percent(0), percent(2), percent(90)).sheets())
                .isEqualTo(2);
        assertThat(SheetCounts.toWeigh(percent(5), percent(2), percent(95)))
                .hasToString("measure 27 sheets: their mean lies within 2 % of that of the run in 95.23 % of such runs,"
                        + " at a scatter of 5 %");
    }

    @Test
    void flatSheetsAreTheSameCount() {
        assertThat(SheetCounts.toForm(50, Yield.of(percent(80)))).isEqualTo(63);
        assertThat(SheetCounts.toForm(40, Yield.of(percent(80)))).isEqualTo(50);
        // 30 % flat in the loft, 95 % under restraint.
        assertThat(SheetCounts.toForm(60, Yield.of(percent(30)))).isEqualTo(200);
        assertThat(SheetCounts.toForm(60, Yield.of(percent(95)))).isEqualTo(64);
    }

    /** Rounded up once at the end; step by step it would be 80, 83, 88 and 96. */
    @Test
    void yieldsOfStepsAreMultipliedAndRoundedOnce() {
        Yield all = Yield.of(percent(92), percent(95), percent(97), percent(94));
        assertThat(all.good().si()).isCloseTo(0.92 * 0.95 * 0.97 * 0.94, within(1e-15));
        assertThat(all).hasToString("79.69 % of what is formed are good");
        assertThat(SheetCounts.toForm(75, all)).isEqualTo(95);
        int chained = 75;
        for (int step : new int[] {94, 97, 95, 92}) {
            chained = SheetCounts.toForm(chained, Yield.of(percent(step)));
        }
        assertThat(chained).isEqualTo(96);
        Yield two = Yield.of(percent(92)).then(Yield.ofReject(percent(5)));
        assertThat(two.good().si()).isCloseTo(0.92 * 0.95, within(1e-15));
        // Two colours at 3 % a pass.
        assertThat(SheetCounts.toForm(130, Yield.of(percent(97), percent(97)))).isEqualTo(139);
    }

    @Test
    void extraIsOnWhatIsWantedAndRejectOnWhatIsFormed() {
        Yield reject = Yield.ofReject(percent(18));
        assertThat(SheetCounts.toForm(90, reject)).isEqualTo(110);
        assertThat(Extra.share(percent(18)).on(90)).isEqualTo(107);
        assertThat(SheetCounts.toForm(80, Extra.pieces(10), reject, 5)).isEqualTo(115);
        assertThat(SheetCounts.toForm(90, Extra.NONE, reject, 5)).isEqualTo(115);
        // An order of 80 sets: 12 % extra and three kept, 15 % reject, five trials.
        Extra twelve = Extra.share(percent(12)).and(3);
        assertThat(twelve.on(80)).isEqualTo(93);
        assertThat(SheetCounts.toForm(80, twelve, Yield.ofReject(percent(15)), 5))
                .isEqualTo(115);
        assertThat(Extra.share(percent(12)).on(93)).isEqualTo(105);
        assertThat(SheetCounts.toForm(105, Extra.NONE, Yield.ofReject(percent(22)), 5))
                .isEqualTo(140);
    }

    @Test
    void theLargerOfAShareAndANumber() {
        Extra overs = Extra.largerOf(percent(10), 50);
        assertThat(overs.on(130)).isEqualTo(180);
        assertThat(overs.on(500)).isEqualTo(550);
        assertThat(overs.on(501)).isEqualTo(552);
        assertThat(overs).hasToString("10 % extra or 50, whichever is more");
        assertThat(overs.and(3)).hasToString("10 % extra or 50, whichever is more, and 3 besides");
        assertThat(Extra.NONE).hasToString("0 extra");
        // 200 and a tenth are 220, however the double rounds.
        assertThat(Extra.share(percent(10)).on(200)).isEqualTo(220);
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> SheetCounts.toMake(0, percent(80), percent(95)))
                .isInstanceOf(Refused.class)
                .hasMessage("good sheets: 0 given; must be 1 or more.");
        assertThatThrownBy(() -> SheetCounts.toMake(5, percent(0), percent(95))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toMake(5, percent(80), percent(100)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("confidence");
        assertThatThrownBy(() -> SheetCounts.toMake(5, -1, 3, percent(95))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toMake(50, percent(0.001), percent(95)))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "good sheets: it takes more than 1000000 sheets to have 50 of them; look to the share first,"
                                + " or ask for less confidence.");
        assertThatThrownBy(() -> Yield.of(percent(0))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Yield.ofReject(percent(100)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("reject of what is formed: 100 % given");
        assertThatThrownBy(() -> Extra.pieces(-1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toForm(5, Extra.NONE, Yield.of(percent(90)), -1))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toForm(50, Yield.of(percent(0.001))))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toInspect(percent(100), percent(95)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toInspect(percent(0.0002), percent(99)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SheetCounts.toWeigh(percent(50), percent(0.001), percent(95)))
                .isInstanceOf(Refused.class);
    }

    /** One sheet fewer would not do, and to be surer takes as many or more. */
    @Property(tries = 200, seed = "2026")
    void isTheLeastCount(
            @ForAll @IntRange(min = 1, max = 300) int good,
            @ForAll @DoubleRange(min = 0.05, max = 1) double share,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double confidence) {
        SheetCounts.Count count = SheetCounts.toMake(good, Kinds.SHARE.of(share, "1"), Kinds.SHARE.of(confidence, "1"));
        assertThat(count.confidence().si()).isBetween(confidence - 1e-9, 1.0);
        assertThat(count.sheets()).isGreaterThanOrEqualTo(good);
        double fewer = 0;
        double term = Math.pow(1 - share, count.sheets() - 1);
        // So small a first term has lost its digits, and the sum of the rest with it.
        boolean digits = term > 1e-290;
        for (int k = 0; k < good && share < 1; k++) {
            fewer += term;
            term *= (count.sheets() - 1.0 - k) / (k + 1) * share / (1 - share);
        }
        if (digits && share < 1) {
            assertThat(1 - fewer).isLessThan(confidence + 1e-9);
        }
        assertThat(SheetCounts.toMake(good, Kinds.SHARE.of(share, "1"), percent(99.5))
                        .sheets())
                .isGreaterThanOrEqualTo(count.sheets());
        int counted = SheetCounts.toMake(
                        good, (int) Math.round(1000 * share), (int) Math.round(1000 * (1 - share)), percent(95))
                .sheets();
        assertThat(counted).isGreaterThanOrEqualTo(good);
    }
}
