package org.papermath.schedule;

/** The days of a timetable in words. */
final class DaysText {
    private DaysText() {}

    static String of(Timetable timetable) {
        StringBuilder text = new StringBuilder();
        for (Day day : timetable.days()) {
            text.append(text.length() == 0 ? "" : "\n")
                    .append(Minutes.name(day.date().getDayOfWeek()))
                    .append(' ')
                    .append(day.date())
                    .append('\n');
            for (Day.Entry entry : day.entries()) {
                if (!entry.isOvernight()) {
                    text.append("  ").append(entry).append('\n');
                }
            }
            String before = "  Start for the night:\n";
            for (Day.Entry entry : day.tonight()) {
                text.append(before).append("    ").append(entry).append('\n');
                before = "";
            }
        }
        String before = "\nNot known when, for want of a duration:\n";
        for (PlacedTask task : timetable.undated()) {
            text.append(before).append("  ").append(task).append('\n');
            before = "";
        }
        before = "\nLate:\n";
        for (PlacedTask task : timetable.late()) {
            text.append(before)
                    .append("  ")
                    .append(task.task().name())
                    .append(", by ")
                    .append(Minutes.words(task.late().orElseThrow().toMinutes()))
                    .append('\n');
            before = "";
        }
        before = "\nWaits that are too long:\n";
        for (BrokenWait wait : timetable.brokenWaits()) {
            text.append(before).append("  ").append(wait).append('\n');
            before = "";
        }
        return text.toString();
    }
}
