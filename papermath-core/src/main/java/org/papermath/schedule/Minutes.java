package org.papermath.schedule;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Objects;
import org.papermath.quantity.Refused;

/** Moments and durations as whole minutes; moments from the beginning of 1970, without zones. */
final class Minutes {
    /** Later than all that is reckoned: not known when. */
    static final long NEVER = Long.MAX_VALUE / 8;

    private Minutes() {}

    static long of(LocalDateTime moment, String what) {
        Objects.requireNonNull(moment, what);
        if (moment.getSecond() != 0 || moment.getNano() != 0) {
            throw notWhole(what, moment);
        }
        return Math.floorDiv(moment.toEpochSecond(ZoneOffset.UTC), 60L);
    }

    static int ofDay(LocalTime time, String what) {
        if (time.getSecond() != 0 || time.getNano() != 0) {
            throw notWhole(what, time);
        }
        return time.toSecondOfDay() / 60;
    }

    static long whole(Duration duration, String what) {
        Objects.requireNonNull(duration, what);
        if (duration.getNano() != 0 || duration.getSeconds() % 60 != 0) {
            throw notWhole(what, duration);
        }
        return duration.getSeconds() / 60;
    }

    private static Refused notWhole(String what, Object given) {
        return Refused.of(
                "schedule.not-whole-minutes",
                what + ": " + given + " given; must be in whole minutes. Leave the seconds out.",
                "of",
                what,
                "given",
                given);
    }

    /** Up to the next whole minute. */
    static long up(Duration duration) {
        long seconds = duration.getSeconds();
        long minutes = Math.floorDiv(seconds, 60L);
        return seconds == 60 * minutes && duration.getNano() == 0 ? minutes : minutes + 1;
    }

    static LocalDateTime moment(long minutes) {
        return LocalDateTime.ofEpochSecond(minutes * 60, 0, ZoneOffset.UTC);
    }

    /** As {@code 3 d 4 h 20 min}. */
    static String words(long minutes) {
        if (minutes < 0) {
            return "-" + words(-minutes);
        }
        long days = minutes / 1440;
        long hours = minutes % 1440 / 60;
        long rest = minutes % 60;
        StringBuilder text = new StringBuilder();
        if (days > 0) {
            text.append(days).append(" d ");
        }
        if (hours > 0) {
            text.append(hours).append(" h ");
        }
        if (rest > 0 || text.length() == 0) {
            text.append(rest).append(" min ");
        }
        return text.toString().strip();
    }

    /** As {@code Monday}. */
    static String name(DayOfWeek day) {
        String name = day.name();
        return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT);
    }

    /** As {@code 2026-11-30 09:00}. */
    static String words(LocalDateTime moment) {
        return moment.toLocalDate() + " " + moment.toLocalTime();
    }
}
