package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.Known;
import org.papermath.engine.Settings;
import org.papermath.quantity.Refused;

/** Doing again only what an assumption can move gives the figures of doing all of it again, to the bit. */
class ShiftsTest {
    @Test
    void onlyWhatMovesIsDoneAgain() {
        int compared = 0;
        int moved = 0;
        for (long seed = 0; seed < 120; seed++) {
            AnyOrder.Job job = seed % 4 == 0 ? AnyOrder.extreme(seed) : AnyOrder.plausible(seed);
            Engine engine;
            Settings settings;
            try {
                engine = Engine.of(job.order(), job.studio());
                settings = engine.decide(engine.likely());
            } catch (Refused refused) {
                continue;
            }
            Engine.Shifts shifts = engine.shifts(settings);
            same(shifts.base(), engine.forecast(settings, engine.likely()), "seed " + seed);
            Figures some = engine.figures();
            for (Known.Varied one : engine.varied()) {
                for (double[] ends : new double[][] {one.lows(), one.highs()}) {
                    shifts.at(one.slots(), ends, some);
                    Figures all = engine.forecast(settings, engine.likely().with(one.slots(), ends));
                    same(some, all, "seed " + seed + ", " + one.row().key());
                    compared++;
                    moved += isSame(all, shifts.base()) ? 0 : 1;
                }
            }
        }
        assertThat(compared).isGreaterThan(10_000);
        assertThat(moved).isGreaterThan(5_000);
    }

    private static void same(Figures some, Figures all, String of) {
        assertThat(some.size()).isEqualTo(all.size());
        for (int at = 0; at < all.size(); at++) {
            assertThat(Double.doubleToLongBits(some.at(at)))
                    .as("%s, %s", of, all.figure(at))
                    .isEqualTo(Double.doubleToLongBits(all.at(at)));
        }
    }

    private static boolean isSame(Figures some, Figures all) {
        for (int at = 0; at < all.size(); at++) {
            if (Double.doubleToLongBits(some.at(at)) != Double.doubleToLongBits(all.at(at))) {
                return false;
            }
        }
        return true;
    }
}
