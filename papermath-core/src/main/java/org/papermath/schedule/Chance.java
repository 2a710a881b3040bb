package org.papermath.schedule;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Refused;
import org.papermath.text.Digits;

/**
 * When all is done, over durations drawn from their bands. Immutable.
 *
 * <p>On each side of its likely value the logarithm of a duration is taken as normal, with the ends of the band as the 5 % and
 * the 95 % point. Phases of tasks that go {@linkplain Task#together() together} are drawn together, those of one place in
 * their tasks; all others by themselves. In each draw the work is done in the order of the timetable, each phase as soon
 * as it can be, from the first start on. Work that may not be broken and is drawn longer than any day is broken.
 */
public final class Chance {
    private static final int MOST = 100_000;

    private final long[] finishes;
    private final int kept;
    private final @Nullable LocalDateTime due;

    private Chance(long[] finishes, int kept, @Nullable LocalDateTime due) {
        this.finishes = finishes;
        this.kept = kept;
        this.due = due;
    }

    static Chance of(Shop shop, Placement placement, @Nullable LocalDateTime due, int draws, long seed) {
        if (draws < 1 || draws > MOST) {
            throw Refused.of(
                    "schedule.draws",
                    "draws: " + draws + " given; must be from 1 to " + MOST + ". 400 tell a share to 5 %.",
                    "given",
                    draws,
                    "most",
                    MOST);
        }
        for (int p = 0; p < shop.minutes.length; p++) {
            if (shop.minutes[p] < 0) {
                String of = shop.tasks[shop.taskOf[p]].name() + ", " + shop.phases[p].name();
                throw Refused.of(
                        "schedule.unknown-duration",
                        of + ": it is not known how long it takes, so there are no chances. Give a duration.",
                        "of",
                        of);
            }
        }
        Clock clock = new Clock(shop.work.workingTime());
        SplittableRandom random = new SplittableRandom(seed);
        long[] finishes = new long[draws];
        int kept = 0;
        for (int i = 0; i < draws; i++) {
            Placement found = Search.again(shop, clock, placement, placement.firstStart, drawn(shop, random));
            finishes[i] = found.lastFinish;
            kept += found.passed == 0 ? 1 : 0;
        }
        Arrays.sort(finishes);
        return new Chance(finishes, kept, due);
    }

    private static long[] drawn(Shop shop, SplittableRandom random) {
        Map<String, Double> together = new HashMap<>();
        long[] minutes = new long[shop.minutes.length];
        for (int p = 0; p < minutes.length; p++) {
            int task = shop.taskOf[p];
            String key = shop.tasks[task].together();
            double z = random.nextGaussian();
            if (!key.isEmpty()) {
                // The first of them says it for all; the others draw too, so that one more changes nothing else.
                z = Objects.requireNonNullElse(together.putIfAbsent((p - shop.first[task]) + " " + key, z), z);
            }
            minutes[p] = drawn(shop.phases[p], shop.minutes[p], z);
        }
        return minutes;
    }

    private static long drawn(Phase phase, long likely, double z) {
        double end = (z < 0 ? phase.low() : phase.high()).orElseThrow().toSeconds() / 60.0;
        double middle = phase.likely().orElseThrow().toSeconds() / 60.0;
        if (middle <= 0 || end == middle) {
            return likely;
        }
        double drawn = middle * Math.pow(end / middle, Math.abs(z) / Normal.FIVE_PERCENT_POINT);
        return Math.max(1, Math.round(drawn));
    }

    /**
     * Returns how many times was drawn.
     *
     * @return the count
     */
    public int draws() {
        return finishes.length;
    }

    /**
     * Returns by when all is done in a share of the draws.
     *
     * @param share from 0 to 1, as 0.9 for nine of ten
     * @return the moment
     * @throws Refused if the share is out of range
     */
    public LocalDateTime finish(double share) {
        if (!(share >= 0 && share <= 1)) {
            throw Refused.of(
                    "schedule.share",
                    "share of the draws: " + share + " given; must be from 0 to 1. Write nine of ten as 0.9.",
                    "given",
                    share);
        }
        int at = (int) Math.ceil(share * finishes.length) - 1;
        return Minutes.moment(finishes[Math.max(0, at)]);
    }

    /**
     * Returns the share of the draws in which all is done by a moment.
     *
     * @param by the moment, in whole minutes
     * @return from 0 to 1
     * @throws Refused if the moment is not in whole minutes
     */
    public double share(LocalDateTime by) {
        long end = Minutes.of(by, "by");
        return Arrays.stream(finishes).filter(done -> done <= end).count() / (double) finishes.length;
    }

    /**
     * Returns the share of the draws in which all is done by the moment that was asked for.
     *
     * @return from 0 to 1; empty if the timetable has none
     */
    public Optional<Double> share() {
        return Optional.ofNullable(due).map(this::share);
    }

    /**
     * Returns the share of the draws in which no longest wait is passed.
     *
     * @return from 0 to 1
     */
    public double keepingWaits() {
        return kept / (double) finishes.length;
    }

    /** Returns the median and the nine of ten, as {@code done by 2026-12-04 15:00 in half of 400 draws, ...}. */
    @Override
    public String toString() {
        return "done by " + Minutes.words(finish(0.5)) + " in half of " + draws() + " draws, by "
                + Minutes.words(finish(0.9)) + " in nine of ten"
                + share().map(share ->
                                ", by " + Minutes.words(Objects.requireNonNull(due)) + " in " + Digits.percent(share))
                        .orElse("");
    }
}
