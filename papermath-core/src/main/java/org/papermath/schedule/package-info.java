/**
 * Days of work in one room: when people work, what is to be done, and when each part of it is. It knows nothing of paper,
 * reads no clock, and gives the same timetable for the same work.
 *
 * <p>A {@link org.papermath.schedule.Workload} has tasks and resources. A task has phases: by hand, in a machine, by
 * waiting. It waits for others at least, and at most, some time. A {@link org.papermath.schedule.Timetable} places them, on
 * from a day or back from one:
 *
 * <pre>{@code
 * Workload cards = Workload.in(WorkingTime.of(Duration.ofHours(8), EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY)))
 *         .resource(Resource.of("person", 1))
 *         .resource(Resource.of("press", 1))
 *         .task(Task.of("soak").phase(Phase.waiting("soak", Duration.ofHours(18))).build())
 *         .task(Task.of("form")
 *                 .phase(Phase.handsOn("form", Duration.ofHours(5)).holding("person", 1))
 *                 .phase(Phase.machine("press", Duration.ofMinutes(30)).unattended().holding("press", 1))
 *                 .after("soak", Duration.ZERO, Duration.ofDays(2))
 *                 .build())
 *         .task(Task.of("dry")
 *                 .phase(Phase.handsOn("hang", Duration.ofMinutes(45)).holding("person", 1))
 *                 .phase(Phase.waiting("dry", Duration.ofHours(30)).between(Duration.ofHours(20), Duration.ofHours(50)))
 *                 .after("form")
 *                 .build())
 *         .build();
 * Timetable days = Timetable.from(cards, LocalDateTime.of(2026, 11, 30, 15, 0));
 * days.finish().orElseThrow(); // 2026-12-02T21:15
 * days.task("form").start().orElseThrow(); // 2026-12-01T09:00
 * days.days().get(0).tonight(); // [15:00 soak, until 2026-12-01 09:00]
 * days.chance(400, 1).share(LocalDateTime.of(2026, 12, 3, 9, 0)) > 0.5; // true
 * Timetable.by(cards, LocalDateTime.of(2026, 12, 4, 17, 0)).start().orElseThrow(); // 2026-12-01T18:00
 * Network.of(cards).duration(); // PT54H15M
 * }</pre>
 *
 * <p>What cannot be at all is refused when it is built: a circle of waits, more held than there is, a longest wait that is
 * too short for what lies between. What cannot be kept in the days there are is told by the timetable.
 *
 * <p>Words of the trade that lead here: {@index back}, {@index calendar}, {@index date}, {@index day}, {@index days},
 * {@index deadline}, {@index hands}, {@index hour}, {@index hours}, {@index pace}, {@index posts}, {@index press},
 * {@index rate}, {@index reach}, {@index start}, {@index target}.
 */
@NullMarked
package org.papermath.schedule;

import org.jspecify.annotations.NullMarked;
