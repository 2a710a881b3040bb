package org.papermath.json.mapping;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.schedule.WorkingTime;

/** When people work. */
public final class WorkingTimeMapping {
    /** Spans of work and times off one would write down. */
    public static final int MANY = 500;

    private static final List<DayOfWeek> DAYS = List.of(DayOfWeek.values());

    private record Hours(List<DayOfWeek> days, LocalTime from, LocalTime to) {}

    private record Off(LocalDate from, LocalDate to) {}

    private WorkingTimeMapping() {}

    static ReadResult<WorkingTime> read(ObjectReader in) {
        ReadResult<List<Hours>> hours =
                in.required("hours").list(1, MANY, one -> one.object(WorkingTimeMapping::hours));
        ReadResult<List<Off>> off = in.optional("off").list(0, MANY, one -> one.object(WorkingTimeMapping::off));
        return in.make(() -> {
            WorkingTime.Builder time = WorkingTime.builder();
            hours.get().forEach(one -> time.on(one.days(), one.from(), one.to()));
            off.orElse(List.of()).forEach(one -> time.off(one.from(), one.to()));
            return time.build();
        });
    }

    private static ReadResult<Hours> hours(ObjectReader in) {
        ReadResult<List<DayOfWeek>> days =
                in.required("on").list(1, DAYS.size(), one -> one.choice(DAYS, CommonMembers::word));
        ReadResult<LocalTime> from = in.required("from").clock();
        ReadResult<LocalTime> to = in.required("to").clock();
        return in.make(() -> new Hours(days.get(), from.get(), to.get()));
    }

    private static ReadResult<Off> off(ObjectReader in) {
        ReadResult<LocalDate> from = in.required("from").date();
        ReadResult<LocalDate> to = in.optional("to").date();
        return in.make(() -> new Off(from.get(), to.orElse(from.get())));
    }

    static void write(ObjectWriter out, WorkingTime time) {
        Map<List<LocalTime>, Set<DayOfWeek>> spans = new LinkedHashMap<>();
        for (DayOfWeek day : DAYS) {
            List<LocalTime> hours = time.hours(day);
            for (int i = 0; i < hours.size(); i += 2) {
                spans.computeIfAbsent(hours.subList(i, i + 2), key -> EnumSet.noneOf(DayOfWeek.class))
                        .add(day);
            }
        }
        out.member("hours")
                .list(
                        new ArrayList<>(spans.entrySet()),
                        (item, one) -> item.object(in -> {
                            in.member("on")
                                    .list(
                                            new ArrayList<>(one.getValue()),
                                            (word, day) -> word.text(CommonMembers.word(day)));
                            in.member("from").clock(one.getKey().get(0));
                            in.member("to").clock(one.getKey().get(1));
                        }));
        List<LocalDate> off = time.daysOff();
        if (!off.isEmpty()) {
            List<Off> times = new ArrayList<>();
            for (int i = 0; i < off.size(); i += 2) {
                times.add(new Off(off.get(i), off.get(i + 1)));
            }
            out.member("off")
                    .list(
                            CommonMembers.atMost(MANY, times, "times off"),
                            (item, one) -> item.object(in -> {
                                in.member("from").date(one.from());
                                in.member("to").date(one.to());
                            }));
        }
    }
}
