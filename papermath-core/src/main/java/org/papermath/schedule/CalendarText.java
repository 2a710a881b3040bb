package org.papermath.schedule;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;

/** A timetable as an iCalendar file. */
final class CalendarText {
    private static final int LINE = 75;
    private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss", Locale.ROOT);

    private final StringBuilder out = new StringBuilder();

    private CalendarText() {}

    static String of(Shop shop, Placement found, String name, Instant stamp) {
        CalendarText text = new CalendarText();
        text.line("BEGIN:VCALENDAR");
        text.line("VERSION:2.0");
        text.line("PRODID:-//papermath//days of work//EN");
        text.line("CALSCALE:GREGORIAN");
        text.line("X-WR-CALNAME:" + escaped(name));
        String stamped = LOCAL.format(LocalDateTime.ofInstant(stamp, ZoneOffset.UTC)) + "Z";
        Clock clock = new Clock(shop.work.workingTime());
        for (int p = 0; p < shop.phases.length; p++) {
            if (Placement.isKnown(found.start[p]) && Placement.isKnown(found.finish[p])) {
                long[] spans = Day.spans(clock, shop.phases[p], found.start[p], found.finish[p]);
                for (int i = 0; i < spans.length; i += 2) {
                    text.event(shop, p, i / 2, spans.length / 2, spans[i], spans[i + 1], name, stamped);
                }
            }
        }
        text.line("END:VCALENDAR");
        return text.out.toString();
    }

    private void event(Shop shop, int p, int part, int parts, long from, long to, String name, String stamped) {
        Task task = shop.tasks[shop.taskOf[p]];
        Phase phase = shop.phases[p];
        line("BEGIN:VEVENT");
        line("UID:"
                + identity(name + "\n" + task.name() + "\n" + (p - shop.first[shop.taskOf[p]]) + "\n" + phase.name()
                        + "\n" + part)
                + "@papermath");
        line("DTSTAMP:" + stamped);
        line("DTSTART:" + LOCAL.format(Minutes.moment(from)));
        // An event without an end takes no time.
        if (to > from) {
            line("DTEND:" + LOCAL.format(Minutes.moment(to)));
        }
        line("SUMMARY:"
                + escaped(task.name()
                        + (phase.name().equals(task.name()) ? "" : ": " + phase.name())
                        + (parts > 1 ? ", part " + (part + 1) + " of " + parts : "")));
        StringBuilder about = new StringBuilder(phase.kind().words());
        for (Map.Entry<String, Integer> one : phase.held().entrySet()) {
            about.append("\n").append(one.getValue()).append(' ').append(one.getKey());
        }
        line("DESCRIPTION:" + escaped(about.toString()));
        if (!task.group().isEmpty()) {
            line("CATEGORIES:" + escaped(task.group()));
        }
        // Waiting keeps nobody busy.
        line("TRANSP:" + (phase.isInWorkingTime() && phase.kind() != Phase.Kind.WAITING ? "OPAQUE" : "TRANSPARENT"));
        line("END:VEVENT");
    }

    /** The same sixteen digits for the same text: FNV-1a over its octets. */
    private static String identity(String text) {
        long hash = 0xcbf29ce484222325L;
        for (byte octet : text.getBytes(StandardCharsets.UTF_8)) {
            hash = (hash ^ (octet & 0xff)) * 0x100000001b3L;
        }
        return HexFormat.of().toHexDigits(hash);
    }

    private static String escaped(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '\\' -> out.append("\\\\");
                case ';' -> out.append("\\;");
                case ',' -> out.append("\\,");
                case '\n' -> out.append("\\n");
                default -> out.appendCodePoint(c < 0x20 || c == 0x7F ? ' ' : c);
            }
        });
        return out.toString();
    }

    /** Folds after at most 75 octets, never within a character. */
    private void line(String text) {
        int octets = 0;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            int size = c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
            if (octets + size > LINE) {
                out.append("\r\n ");
                octets = 1;
            }
            out.appendCodePoint(c);
            octets += size;
            i += Character.charCount(c);
        }
        out.append("\r\n");
    }
}
