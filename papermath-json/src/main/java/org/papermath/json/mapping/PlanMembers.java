package org.papermath.json.mapping;

import static org.papermath.json.mapping.PlanFigures.COUNT;
import static org.papermath.json.mapping.PlanFigures.FLAG;
import static org.papermath.json.mapping.PlanFigures.NOTICES;
import static org.papermath.json.mapping.PlanFigures.TEXT;
import static org.papermath.json.mapping.PlanFigures.band;
import static org.papermath.json.mapping.PlanFigures.boxed;
import static org.papermath.json.mapping.PlanFigures.list;
import static org.papermath.json.mapping.PlanFigures.set;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.papermath.evidence.Assumption;
import org.papermath.json.tree.JsonValue;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Schedule.Step;
import org.papermath.plan.Sensitivity;
import org.papermath.plan.StepCaution;
import org.papermath.plan.ToBuy;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;
import org.papermath.schedule.Day;

/** The figures of a plan: all that was worked out. */
public final class PlanMembers {
    private static final Members<ToBuy> TO_BUY = Members.<ToBuy>of("Something to buy.")
            .has("what", TEXT, ToBuy::what)
            .says("What.", "cotton rag")
            .has("mass", set(Kinds.MASS), ToBuy::mass)
            .says("How much, as it is bought.", "1182 g")
            .has("why", TEXT, ToBuy::why)
            .says("For what.", "for tide grey");

    private static final Members<Step> STEP = Members.<Step>of("A step.")
            .has("name", TEXT, Step::name)
            .says("What is done.", "soak")
            .mayHave("own", FLAG, step -> Optional.of(step.isOwn()).filter(own -> own))
            .says("Whether it is a step of your own. Only if it is.", true)
            .mayHave("days", COUNT, step -> boxed(step.days()))
            .says("How many days it takes. Only if it is known; drying may not be.", 1)
            .mayHave("start", TEXT, step -> step.start().map(LocalDate::toString))
            .says(
                    "Its first day. Only if the order says when it is due, and the days from here on are known.",
                    "2026-12-30")
            .mayHave("end", TEXT, step -> step.end().map(LocalDate::toString))
            .says("Its last day, likewise.", "2026-12-31");

    /** A day with the schedule it is of. */
    private record DayOf(Schedule schedule, Day day) {}

    private static final Members<Map.Entry<String, Integer>> HELD = Members.<Map.Entry<String, Integer>>of(
                    "Something that is held.")
            .has("what", TEXT, Map.Entry::getKey)
            .says("A person, the beater, a pot, the vat, felts, the press, or places to dry in a dryer.", "felts")
            .has("count", COUNT, Map.Entry::getValue)
            .says("How many of it.", 13);

    private static final Members<Day.Entry> ENTRY = Members.<Day.Entry>of("Something to do, or that goes on.")
            .has("what", TEXT, one -> one.task().name())
            .says("The task.", "form post 2/5 of programme")
            .has("phase", TEXT, one -> one.phase().name())
            .says("What of it.", "form")
            .has("kind", TEXT, one -> CommonMembers.word(one.phase().kind()))
            .says("\"hands on\", \"machine\", or \"waiting\", which goes on by itself.", "hands on")
            .has("from", TEXT, one -> one.from().toString())
            .says("When it begins or is gone on with on this day.", "2027-01-04T09:00")
            .has("to", TEXT, one -> one.to().toString())
            .says(
                    "When it ends: on this day for work by hand, with the breaks of the day in it; else whenever it does.",
                    "2027-01-04T10:24")
            .mayHave("overnight", FLAG, one -> Optional.of(one.isOvernight()).filter(night -> night))
            .says("Whether it is started on this day and goes on by itself past midnight. Only if it does.", true)
            .mayHave("part", COUNT, one -> Optional.of(one.part()).filter(part -> one.parts() > 1))
            .says("Which part it is of what is gone on with from day to day. Only if it is broken.", 1)
            .mayHave("parts", COUNT, one -> Optional.of(one.parts()).filter(parts -> parts > 1))
            .says("In how many parts that is done. Only if it is broken.", 2)
            .has("holds", list(HELD), one -> List.copyOf(one.phase().held().entrySet()))
            .says("What nobody else can use meanwhile; nothing where things wait by themselves.");

    private static final Members<DayOf> DAY = Members.<DayOf>of("A day on which there is something to do.")
            .has("date", TEXT, one -> one.day().date().toString())
            .says("The day.", "2027-01-04")
            .has("hands", set(Kinds.TIME), one -> one.schedule().handsOn(one.day()))
            .says("How long hands are at work on it, breaks left out; twice what two people do.", "3.5 h")
            .has("work", list(ENTRY), one -> one.day().entries())
            .says("What there is to do and what goes on by itself, by the time it begins.");

    private static final Members<Schedule> SCHEDULE = Members.<Schedule>of("The days.")
            .mayHave("days", COUNT, schedule -> boxed(schedule.days()))
            .says("Days in all. Only if it is known how long the sheets dry.", 33)
            .mayHave("leastDays", COUNT, PlanMembers::leastDays)
            .says(
                    "Days of all but the drying, where it is not known how long the sheets dry. Stands in place"
                            + " of \"days\".",
                    30)
            .has("steps", list(STEP), Schedule::steps)
            .says("The steps in the order they begin in; several may go on at the same time.")
            .mayHave("calendar", list(DAY), PlanMembers::calendar)
            .says("What there is to do on each day. Only if the order says when it is due, of what is known when.");

    private static final Members<StepCaution> CAUTION = Members.<StepCaution>of("A caution.")
            .has("code", TEXT, one -> CommonMembers.word(one.code()))
            .says("A fixed word for programs.", "beater roll")
            .has("step", TEXT, one -> CommonMembers.word(one.step()))
            .says("The step of the work it stands beside.", "beat")
            .has("text", TEXT, StepCaution::text)
            .says(
                    "A sentence for people.",
                    "Beater: guard roll, belts and feed point; no hand, hair or sleeve near it while it turns.")
            .has("basis", TEXT, StepCaution::basis)
            .says("The rule it rests on.", "29 CFR 1910.212 (guards)");

    private static final Members<Sensitivity> SENSITIVITY = Members.<Sensitivity>of("A value that widens a band.")
            .has("key", TEXT, line -> line.assumption().key())
            .says("The id of the value, with what it holds for.", "sheet.density-beating-time")
            .has("widens", TEXT, Sensitivity::widens)
            .says("The forecast it widens most.", "thickness of envelope")
            .has("share", set(Kinds.NUMBER), line -> Kinds.NUMBER.ofSi(line.share(), "%"))
            .says("Its share of that band, as squares add up.", "71 %")
            .has("weight", set(Kinds.NUMBER), line -> Kinds.NUMBER.ofSi(line.weight(), "%"))
            .says("Its share of all bands together.", "17.5 %")
            .has("measurement", TEXT, Sensitivity::measurement)
            .says("What to measure to narrow it.", "weigh one dry sheet and measure its thickness")
            .has("minutes", set(Kinds.TIME), Sensitivity::minutes)
            .says("How long hands are on that.", "5 min")
            .has("takesAway", set(Kinds.NUMBER), line -> Kinds.NUMBER.ofSi(line.takesAway(), "%"))
            .says("By how much the band would narrow if the value were known for sure.", "46 %");

    private static final Members<Assumption> ASSUMPTION = Members.<Assumption>of("A value the plan rests on.")
            .has("key", TEXT, Assumption::key)
            .says("The id of the value, with what it holds for.", "vat.retention[cotton-rag]")
            .has("value", TEXT, one -> inUnit(one, one.likely()))
            .says("The likely value, in the unit of the table.", "0.97")
            .has("low", TEXT, one -> inUnit(one, one.low()))
            .says("The value it is below in one case of twenty.", "0.95")
            .has("high", TEXT, one -> inUnit(one, one.high()))
            .says("The value it is above in one case of twenty.", "0.99")
            .has("basis", TEXT, one -> one.basis().word())
            .says("How it is known.", "common practice")
            .has("source", TEXT, one -> one.source().text())
            .says("Where it comes from.", "common practice, no source");

    public static final Members<MakingPlan> FIGURES = Members.<MakingPlan>of("What was worked out.")
            .has("batches", list(PlanBatchMembers.BATCH), MakingPlan::batches)
            .says("One batch for each recipe that is used.")
            .has("pieces", list(PlanPieceMembers.PIECE), MakingPlan::pieces)
            .says("The pieces, as they stand in the order.")
            .has("toBuy", list(TO_BUY), MakingPlan::toBuy)
            .says("What has to be bought.")
            .has("schedule", SCHEDULE, MakingPlan::schedule)
            .says("The days back from the day the parcel leaves.")
            .has("workingHours", band(Kinds.TIME), MakingPlan::workingHours)
            .says("Hours of hands at work, in all; without those on steps of your own.")
            .has("notices", NOTICES, MakingPlan::notices)
            .says("What the plan should not be read without.")
            .has("cautions", list(CAUTION), MakingPlan::cautions)
            .says("Cautions that go with the steps of the work, each once. Local codes and licensed practice"
                    + " come first.")
            .has("sensitivity", list(SENSITIVITY), MakingPlan::sensitivity)
            .says("What widens the bands, the widest first.")
            .has("assumptionsUsed", list(ASSUMPTION), MakingPlan::assumptionsUsed)
            .says("Every value of the table the plan rests on.");

    private PlanMembers() {}

    /** Returns what stands in the document, by the names of its members. */
    public static Map<String, JsonValue.Type> types() {
        Map<String, JsonValue.Type> types = new LinkedHashMap<>();
        FIGURES.all().forEach(one -> types.put(one.name(), one.isList() ? JsonValue.Type.LIST : JsonValue.Type.OBJECT));
        return types;
    }

    private static Optional<List<DayOf>> calendar(Schedule schedule) {
        return Optional.of(schedule.calendar().stream()
                        .map(day -> new DayOf(schedule, day))
                        .toList())
                .filter(days -> !days.isEmpty());
    }

    private static Optional<Integer> leastDays(Schedule schedule) {
        return schedule.days().isPresent() ? Optional.empty() : Optional.of(schedule.leastDays());
    }

    private static String inUnit(Assumption one, double value) {
        return Units.number(value) + (one.unit().equals("1") ? "" : " " + one.unit());
    }
}
