package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.minutes;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.papermath.quantity.AmountRange;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class PacePropertyTest {
    private static Pace pace(double a, double b) {
        return Pace.each(AmountRange.of(minutes(Math.min(a, b)), minutes(Math.max(a, b))));
    }

    @Property(tries = 2000, seed = "2026")
    void leastStaysWithLeast(
            @ForAll @DoubleRange(min = 0.5, max = 60) double a,
            @ForAll @DoubleRange(min = 0.5, max = 60) double b,
            @ForAll @IntRange(min = 1, max = 500) int things,
            @ForAll @IntRange(min = 1, max = 9) int hands,
            @ForAll @DoubleRange(min = 0.1, max = 24) double time) {
        Pace one = pace(a, b);
        for (Pace each : new Pace[] {one, one.hands(hands), one.and(pace(b, 30)), one.lots(things, minutes(a))}) {
            assertThat(each.rate().least().si())
                    .isLessThanOrEqualTo(each.rate().most().si());
            assertThat(each.made(hours(time)).least())
                    .isLessThanOrEqualTo(each.made(hours(time)).most());
            assertThat(each.time(things).least().si())
                    .isLessThanOrEqualTo(each.time(things).most().si());
        }
        // In the longest time a number takes, at least that number is made; and what would meet a target meets it.
        assertThat(one.made(one.time(things).most()).least()).isEqualTo(things);
        Pace.Reach reach = one.reach(things, hours(time));
        assertThat(one.reach(things, reach.time()).meets()).isTrue();
        if (reach.times() <= 10_000) {
            assertThat(one.hands(reach.times()).reach(things, hours(time)).meets())
                    .isTrue();
        }
        assertThat(Pace.of(AmountRange.of(reach.pace()))
                        .reach(things, hours(time))
                        .meets())
                .isTrue();
        assertThat(reach.meets()).isEqualTo(reach.times() == 1);
    }

    @Example
    void aBeginnersMorning() {
        Pace page = pace(5, 6);
        assertThat(page).hasToString("10 to 12 an hour");
        assertThat(page.made(hours(4))).hasToString("40 to 48");
        assertThat(page.time(40)).hasToString("3.333 h to 4 h");
        assertThat(page.reach(40, hours(4))).hasToString("yes: 40 to 48 of 40");
        assertThat(page.reach(45, hours(4)).toString()).startsWith("perhaps: 40 to 48 of 45; for all take 2 times");
        assertThat(page.reach(100, hours(4)).toString())
                .isEqualTo("no: 40 to 48 of 100; for all take 3 times the hands, 10 h, or a pace of 25 an hour");
        assertThat(Pace.counted(346, hours(1)).made(hours(13)).least()).isEqualTo(4498);
        assertThat(catchThrowableOfType(Refused.class, () -> page.hands(0)).code())
                .isEqualTo("pace.count");
        assertThat(catchThrowableOfType(Refused.class, () -> page.hands(10_001)).code())
                .isEqualTo("pace.hands");
        assertThat(catchThrowableOfType(
                                Refused.class,
                                () -> Pace.counted(1_000_000_000, Kinds.TIME.of(1, "s"))
                                        .made(hours(1)))
                        .code())
                .isEqualTo("pace.too-many");
    }
}
