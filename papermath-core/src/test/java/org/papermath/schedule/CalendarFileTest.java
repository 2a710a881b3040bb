package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.temporal.Temporal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Categories;
import org.junit.jupiter.api.Test;

/** The calendar file as a reader of others reads it. */
class CalendarFileTest {
    private static final Instant STAMP = Instant.parse("2026-11-28T08:00:00Z");
    private static final String LONG =
            "forty sheets, \"blue; and green\" \\ für die Ausstellung im Dezember – 紙の道具と水車 und so fort";

    private static Workload work(String group) {
        return Workload.in(Studios.WEEK)
                .resource(Resource.of("person", 1))
                .task(Task.of("soak")
                        .phase(Phase.waiting("soak", Duration.ofHours(20)))
                        .build())
                .task(Task.of(LONG)
                        .group(group)
                        .phase(Phase.handsOn("trim; fold, pack", Duration.ofHours(12))
                                .breakable()
                                .holding("person", 1))
                        .after("soak")
                        .build())
                .build();
    }

    private static List<VEvent> read(String text) throws Exception {
        Calendar calendar = new CalendarBuilder().build(new StringReader(text));
        calendar.validate(true);
        return calendar.getComponents("VEVENT");
    }

    private static String value(VEvent event, String name) {
        return event.getProperty(name).map(Property.class::cast).orElseThrow().getValue();
    }

    @Test
    void isReadAsItWasMeant() throws Exception {
        Timetable timetable = Timetable.from(work("a, b; c"), Studios.MONDAY);
        List<VEvent> events = read(timetable.calendar("days", STAMP));
        assertThat(events).hasSize(3);
        assertThat(events.get(0).getDateTimeStart().getDate()).isEqualTo(Studios.MONDAY);
        assertThat(value(events.get(0), "SUMMARY")).isEqualTo("soak");
        assertThat(value(events.get(0), "TRANSP")).isEqualTo("TRANSPARENT");
        // Twelve hours of work: a day of seven and a half, and the rest.
        assertThat(value(events.get(1), "SUMMARY")).isEqualTo(LONG + ": trim; fold, pack, part 1 of 2");
        assertThat(((Categories) events.get(1).getProperty("CATEGORIES").orElseThrow())
                        .getCategories()
                        .getTexts())
                .containsExactly("a, b; c");
        assertThat(value(events.get(1), "DESCRIPTION")).isEqualTo("hands on\n1 person");
        assertThat(events.get(1).getDateTimeStart().getDate()).isEqualTo(LocalDateTime.of(2026, 12, 1, 9, 0));
        assertThat(events.get(1).getDateTimeEnd().getDate()).isEqualTo(LocalDateTime.of(2026, 12, 1, 17, 0));
        assertThat(events.get(2).getDateTimeEnd().getDate()).isEqualTo(LocalDateTime.of(2026, 12, 2, 14, 0));
        assertThat(value(events.get(0), "DTSTAMP")).isEqualTo("20261128T080000Z");
    }

    /** RFC 5545, 3.1: lines of at most 75 octets that end with CR LF; a character is never cut. */
    @Test
    void linesAreFolded() {
        String text = Timetable.from(work("x".repeat(200)), Studios.MONDAY).calendar(LONG, STAMP);
        assertThat(text).endsWith("END:VCALENDAR\r\n").doesNotContainPattern("[^\r]\n");
        for (String line : text.split("\r\n")) {
            byte[] octets = line.getBytes(StandardCharsets.UTF_8);
            assertThat(octets.length).as(line).isLessThanOrEqualTo(75);
            assertThat(new String(octets, StandardCharsets.UTF_8))
                    .isEqualTo(line)
                    .doesNotContain("\uFFFD");
        }
        assertThat(text.replace("\r\n ", ""))
                .contains("X-WR-CALNAME:"
                        + LONG.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,"));
    }

    @Test
    void identitiesStayWhenDaysMove() throws Exception {
        Set<String> first = identities(Timetable.from(work("a"), Studios.MONDAY).calendar("days", STAMP));
        Set<String> later = identities(
                Timetable.from(work("a"), Studios.MONDAY.plusDays(7)).calendar("days", STAMP.plusSeconds(5)));
        assertThat(later).isEqualTo(first).hasSize(3);
        assertThat(identities(Timetable.from(work("a"), Studios.MONDAY).calendar("others", STAMP)))
                .doesNotContainAnyElementsOf(first);
    }

    private static Set<String> identities(String text) throws Exception {
        Set<String> all = new HashSet<>();
        read(text).forEach(event -> all.add(value(event, "UID")));
        return all;
    }

    /** Every phase of a studio's days comes back with its times. */
    @Test
    void nothingIsLost() throws Exception {
        Timetable timetable = Timetable.from(Studios.any(7, 4), Studios.MONDAY);
        List<VEvent> events = read(timetable.calendar("days", STAMP));
        Set<Temporal> starts = new HashSet<>();
        Set<Temporal> ends = new HashSet<>();
        events.forEach(event -> {
            starts.add(event.getDateTimeStart().getDate());
            ends.add(event.getDateTimeEnd().getDate());
        });
        for (PlacedTask task : timetable.tasks()) {
            for (PlacedPhase phase : task.phases()) {
                assertThat(starts).contains(phase.start().orElseThrow());
                assertThat(ends).contains(phase.finish().orElseThrow());
            }
        }
        assertThat(events)
                .hasSizeGreaterThanOrEqualTo(timetable.tasks().stream()
                        .mapToInt(task -> task.phases().size())
                        .sum());
    }
}
