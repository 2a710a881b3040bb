package org.papermath.json.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.json.DocumentFormat;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.tree.JsonValue;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Sensitivity;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/** A plan: what it was made from, its settings and its forecasts. The figures are read as they are written. */
public final class PlanMapping {
    public static final DocumentFormat PLAN = new DocumentFormat("plan", 1, 0);
    /** The lists of what was worked out. */
    public static final List<String> LISTS =
            List.of("batches", "pieces", "toBuy", "notices", "cautions", "sensitivity", "assumptionsUsed");
    /** The objects of what was worked out. */
    public static final List<String> OBJECTS = List.of("schedule", "workingHours");

    private PlanMapping() {}

    /** Writes a plan that was read as it was read. */
    public static void writeAgain(ObjectWriter out, WrittenPlan plan) {
        madeFrom(out, plan.edition(), plan.order(), plan.studio());
        plan.figures().forEach((name, figures) -> WholeDocuments.write(out.member(name), figures));
    }

    /** Returns the figures of a plan as its document would give them. */
    public static Map<String, JsonValue> figures(MakingPlan plan) {
        Map<String, JsonValue> figures = new LinkedHashMap<>();
        WholeDocuments.tree(PLAN, plan, PlanMapping::write).members().stream()
                .filter(one -> LISTS.contains(one.step()) || OBJECTS.contains(one.step()))
                .forEach(one -> figures.put(one.step(), one));
        return figures;
    }

    public static ReadResult<WrittenPlan> read(ObjectReader in) {
        if (!in.has("writtenBy")) {
            in.required("writtenBy");
        }
        ReadResult<String> edition = in.required("edition").text().check(Assumptions::edition);
        Map<String, ReadResult<JsonValue>> figures = new LinkedHashMap<>();
        for (String name : in.names()) {
            if (LISTS.contains(name) || OBJECTS.contains(name)) {
                figures.put(
                        name,
                        WholeDocuments.tree(
                                in.optional(name), LISTS.contains(name) ? JsonValue.Type.LIST : JsonValue.Type.OBJECT));
            }
        }
        LISTS.forEach(in::optional);
        OBJECTS.forEach(in::optional);
        PieceMapping.Known known = OrderMapping.known();
        ReadResult<Studio> studio = OrderMapping.studio(in.required("studio"), known.dryers());
        ReadResult<Order> order = in.required("order")
                .object(object -> OrderMapping.order(object, OrderMapping.recipes(object, known), known));
        return in.make(() -> {
            String of = studio.get().assumptions().edition();
            if (!edition.get().equals(of)) {
                throw Refused.of(
                        "plan.edition",
                        "the plan says edition " + edition.get() + " and its studio edition " + of
                                + ". Write the one the figures were made with in both.",
                        "member",
                        "edition",
                        "found",
                        edition.get(),
                        "accepted",
                        List.of(of));
            }
            Map<String, JsonValue> tree = new LinkedHashMap<>();
            figures.forEach((name, figure) -> tree.put(name, figure.get()));
            return new WrittenPlan(edition.get(), order.get(), studio.get(), tree);
        });
    }

    private static void madeFrom(ObjectWriter out, String edition, Order order, Studio studio) {
        out.member("edition").text(edition);
        out.member("order").object(in -> OrderMapping.writeOrder(in, order));
        out.member("studio").reference(in -> StudioMapping.write(in, studio));
    }

    public static void write(ObjectWriter out, MakingPlan plan) {
        madeFrom(out, plan.studio().assumptions().edition(), plan.order(), plan.studio());
        PlanFigures.objects(out, "batches", plan.batches(), PlanMapping::batch);
        PlanFigures.objects(out, "pieces", plan.pieces(), PlanPieceMapping::write);
        PlanFigures.objects(out, "toBuy", plan.toBuy(), (in, one) -> {
            in.member("what").text(one.what());
            in.member("mass").figure(one.mass());
            in.member("why").text(one.why());
        });
        out.member("schedule").object(in -> schedule(in, plan.schedule()));
        PlanFigures.forecast(out.member("workingHours"), plan.workingHours());
        PlanFigures.objects(out, "notices", plan.notices(), PlanFigures::notice);
        PlanFigures.objects(out, "cautions", plan.cautions(), (in, one) -> {
            in.member("code").text(CommonMembers.word(one.code()));
            in.member("step").text(CommonMembers.word(one.step()));
            in.member("text").text(one.text());
            in.member("basis").text(one.basis());
        });
        PlanFigures.objects(out, "sensitivity", plan.sensitivity(), PlanMapping::sensitivity);
        PlanFigures.objects(out, "assumptionsUsed", plan.assumptionsUsed(), PlanMapping::assumption);
    }

    private static void batch(ObjectWriter out, BatchPlan batch) {
        out.member("recipe").text(batch.name());
        out.member("fibre").object(in -> fibre(in, batch.fibre()));
        out.member("soak").object(in -> {
            in.member("water").figure(batch.soak().water());
            in.member("time").figure(batch.soak().time());
        });
        PlanFigures.stageOf(out.member("beating"), batch.beatingStage(), PlanMapping::beating);
        PlanFigures.objects(out, "additives", batch.additives(), PlanMapping::additive);
        out.member("stock").object(in -> stock(in, batch.stock()));
        PlanFigures.forecast(out.member("beatingState"), batch.beatingState());
        PlanFigures.forecast(out.member("drainability"), batch.drainability());
        PlanFigures.forecast(out.member("waterRetention"), batch.waterRetention());
        PlanFigures.forecast(out.member("freeShrinkage"), batch.freeShrinkage());
        PlanFigures.forecast(out.member("keptInVat"), batch.keptInVat());
        PlanFigures.forecast(out.member("stockPutBy"), batch.stockPutBy());
        batch.shortage()
                .ifPresent(one -> out.member("shortage").object(in -> {
                    in.member("chance").figure(one.chance());
                    in.member("upTo").figure(one.upTo());
                }));
        PlanFigures.forecast(out.member("whiteWaterFibre"), batch.whiteWaterFibre());
        PlanFigures.forecast(out.member("workingHours"), batch.workingHours());
        PlanFigures.objects(out, "balances", batch.balances(), PlanMapping::balance);
    }

    private static void fibre(ObjectWriter out, BatchPlan.FibreToWeigh fibre) {
        out.member("ovenDry").figure(fibre.ovenDry());
        out.member("asBought").figure(fibre.asBought());
        PlanFigures.objects(out, "kinds", fibre.kinds(), (in, line) -> {
            FibreMapping.write(in.member("fibre"), line.fibre());
            in.member("ovenDry").figure(line.ovenDry());
            in.member("fromHand").figure(line.fromHand());
            in.member("asBought").figure(line.asBought());
        });
    }

    private static void beating(ObjectWriter out, BatchPlan.Beating beating) {
        out.member("beater").text(beating.beater().name());
        out.member("loads").count(beating.loads());
        out.member("ovenDryEach").figure(beating.ovenDryEach());
        out.member("kindsEach").list(beating.kindsEach(), ValueWriter::figure);
        out.member("waterEach").figure(beating.waterEach());
        out.member("consistency").figure(beating.consistency());
        out.member("timeEach").figure(beating.timeEach());
    }

    private static void additive(ObjectWriter out, BatchPlan.AdditiveToWeigh additive) {
        out.member("name").text(additive.additive().name());
        out.member("dose").figure(additive.dose());
        out.member("productEach").figure(additive.productEach());
        out.member("productInAll").figure(additive.productInAll());
        out.member("waitAfter").figure(additive.waitAfter());
    }

    private static void stock(ObjectWriter out, BatchPlan.Stock stock) {
        out.member("mass").figure(stock.mass());
        out.member("volume").figure(stock.volume());
        out.member("consistency").figure(stock.consistency());
        stock.dilutionEach().ifPresent(water -> out.member("dilutionEach").figure(water));
        PlanFigures.forecast(out.member("realConsistency"), stock.realConsistency());
    }

    private static void balance(ObjectWriter out, Balance balance) {
        out.member("substance").text(balance.substance());
        out.member("in").map(balance.in(), ValueWriter::figure);
        out.member("out").map(balance.out(), ValueWriter::figure);
    }

    private static void schedule(ObjectWriter out, Schedule schedule) {
        schedule.days()
                .ifPresentOrElse(
                        days -> out.member("days").count(days),
                        () -> out.member("leastDays").count(schedule.leastDays()));
        PlanFigures.objects(out, "steps", schedule.steps(), (in, step) -> {
            in.member("name").text(step.name());
            step.days().ifPresent(days -> in.member("days").count(days));
            step.start().ifPresent(day -> in.member("start").date(day));
        });
    }

    private static void sensitivity(ObjectWriter out, Sensitivity line) {
        out.member("key").text(line.assumption().key());
        out.member("widens").text(line.widens());
        out.member("share").figure(Kinds.NUMBER.ofSi(line.share(), "%"));
        out.member("weight").figure(Kinds.NUMBER.ofSi(line.weight(), "%"));
        out.member("measurement").text(line.measurement());
    }

    private static void assumption(ObjectWriter out, Assumption one) {
        String unit = one.unit().equals("1") ? "" : " " + one.unit();
        out.member("key").text(one.key());
        out.member("value").text(Units.number(one.likely()) + unit);
        out.member("low").text(Units.number(one.low()) + unit);
        out.member("high").text(Units.number(one.high()) + unit);
        out.member("basis").text(one.basis().word());
        out.member("source").text(one.source().text());
    }
}
