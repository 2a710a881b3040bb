package org.papermath.json;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;

import javax.measure.Quantity;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.order.Order;
import org.papermath.plan.Schedule;
import org.papermath.plan.Sensitivity;
import org.papermath.plan.Stage;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/** A plan: what it was made from, its settings and its forecasts. The figures are read as they are written. */
final class PlanMapping {
    static final DocumentFormat PLAN = new DocumentFormat("plan", 1, 0);
    /** The lists of what was worked out. */
    static final List<String> LISTS = List.of("batches", "pieces", "toBuy", "notices", "cautions", "sensitivity",
            "assumptionsUsed");
    /** The objects of what was worked out. */
    static final List<String> OBJECTS = List.of("schedule", "workingHours");

    private PlanMapping() {
    }

    static String write(MakingPlan plan, String program, String version) {
        return DocumentWriter.write(PLAN, Document.of(plan).writtenBy(program, version), PlanMapping::write);
    }

    /** Writes a plan that was read as it was read. */
    static String write(Document<PlanDocument> document) {
        return DocumentWriter.write(PLAN, document, (out, plan) -> {
            madeFrom(out, plan.edition(), plan.order(), plan.studio());
            plan.tree().forEach((name, figures) -> out.member(name).figures(figures));
        });
    }

    /** Returns the figures of a plan as its document would give them. */
    static Map<String, JsonValue> figures(MakingPlan plan) {
        byte[] text = write(plan, "papermath", "1").getBytes(StandardCharsets.UTF_8);
        Source source = new Source("", new Session(), reference -> {
            throw new IllegalStateException("a plan that was just made has no references");
        }, 0);
        JsonValue root = JsonTree.read(text, source, List.of()).orElseThrow();
        Map<String, JsonValue> figures = new LinkedHashMap<>();
        root.members().stream().filter(one -> LISTS.contains(one.step()) || OBJECTS.contains(one.step()))
                .forEach(one -> figures.put(one.step(), one));
        return figures;
    }

    static Got<PlanDocument> read(ObjectAt in) {
        if (!in.has("writtenBy")) {
            in.required("writtenBy");
        }
        Got<String> edition = in.required("edition").text().check(Assumptions::edition);
        Map<String, Got<JsonValue>> figures = new LinkedHashMap<>();
        for (String name : in.names()) {
            if (LISTS.contains(name) || OBJECTS.contains(name)) {
                figures.put(name, in.optional(name)
                        .tree(LISTS.contains(name) ? JsonValue.Type.LIST : JsonValue.Type.OBJECT));
            }
        }
        LISTS.forEach(in::optional);
        OBJECTS.forEach(in::optional);
        PieceMapping.Known known = OrderMapping.known();
        Got<Studio> studio = OrderMapping.studio(in.required("studio"), known.dryers());
        Got<Order> order = in.required("order")
                .object(object -> OrderMapping.order(object, OrderMapping.recipes(object, known), known));
        return in.make(() -> {
            String of = studio.get().assumptions().edition();
            if (!edition.get().equals(of)) {
                throw Refused.of("plan.edition", "the plan says edition " + edition.get() + " and its studio edition "
                        + of + ". Write the one the figures were made with in both.", "member", "edition", "found",
                        edition.get(), "accepted", List.of(of));
            }
            Map<String, JsonValue> tree = new LinkedHashMap<>();
            figures.forEach((name, figure) -> tree.put(name, figure.get()));
            return new PlanDocument(edition.get(), order.get(), studio.get(), tree);
        });
    }

    private static void madeFrom(ObjectOut out, String edition, Order order, Studio studio) {
        out.member("edition").text(edition);
        out.member("order").object(in -> OrderMapping.writeOrder(in, order));
        out.member("studio").reference(in -> StudioMapping.write(in, studio));
    }

    private static void write(ObjectOut out, MakingPlan plan) {
        madeFrom(out, plan.studio().assumptions().edition(), plan.order(), plan.studio());
        objects(out, "batches", plan.batches(), PlanMapping::batch);
        objects(out, "pieces", plan.pieces(), PlanPieceMapping::write);
        objects(out, "toBuy", plan.toBuy(), (in, one) -> {
            in.member("what").text(one.what());
            in.member("mass").figure(one.mass());
            in.member("why").text(one.why());
        });
        out.member("schedule").object(in -> schedule(in, plan.schedule()));
        forecast(out.member("workingHours"), plan.workingHours());
        objects(out, "notices", plan.notices(), PlanMapping::notice);
        objects(out, "cautions", plan.cautions(), (in, one) -> {
            in.member("code").text(Common.word(one.code()));
            in.member("step").text(Common.word(one.step()));
            in.member("text").text(one.text());
            in.member("basis").text(one.basis());
        });
        objects(out, "sensitivity", plan.sensitivity(), PlanMapping::sensitivity);
        objects(out, "assumptionsUsed", plan.assumptionsUsed(), PlanMapping::assumption);
    }

    static <T> void objects(ObjectOut out, String name, Iterable<T> all, BiConsumer<? super ObjectOut, ? super T> one) {
        out.member(name).list(all, (item, value) -> item.object(in -> one.accept(in, value)));
    }

    /** Writes a forecast with its band, and how single pieces scatter, if that is known. */
    static <Q extends Quantity<Q>> void forecast(ValueOut out, Estimate<Q> estimate) {
        out.object(in -> {
            in.member("likely").figure(estimate.likely());
            in.member("low").figure(estimate.low());
            in.member("high").figure(estimate.high());
            if (estimate.isOpenBelow()) {
                in.member("openBelow").flag(true);
            }
            if (estimate.isOpenAbove()) {
                in.member("openAbove").flag(true);
            }
            estimate.scatter().ifPresent(share -> in.member("scatter").figure(Kinds.NUMBER.ofSi(share, "%")));
        });
    }

    static void sides(ValueOut out, Amount<?> width, Amount<?> height) {
        out.list(List.<Amount<?>>of(width, height), ValueOut::figure);
    }

    /** Writes a stage, or why it was not done. */
    static <T> void stage(ValueOut out, Stage<T> stage, BiConsumer<? super ValueOut, ? super T> done) {
        if (stage.isDone()) {
            done.accept(out, stage.get());
        } else {
            out.object(in -> in.member("notDone").object(why -> {
                why.member("code").text(stage.code());
                why.member("reason").text(stage.reason());
            }));
        }
    }

    /** Writes a stage that has members. */
    static <T> void stageOf(ValueOut out, Stage<T> stage, BiConsumer<? super ObjectOut, ? super T> members) {
        stage(out, stage, (value, done) -> value.object(in -> members.accept(in, done)));
    }

    private static void batch(ObjectOut out, BatchPlan batch) {
        out.member("recipe").text(batch.name());
        out.member("fibre").object(in -> fibre(in, batch.fibre()));
        out.member("soak").object(in -> {
            in.member("water").figure(batch.soak().water());
            in.member("time").figure(batch.soak().time());
        });
        stageOf(out.member("beating"), batch.beatingStage(), PlanMapping::beating);
        objects(out, "additives", batch.additives(), PlanMapping::additive);
        out.member("stock").object(in -> stock(in, batch.stock()));
        forecast(out.member("drainability"), batch.drainability());
        forecast(out.member("waterRetention"), batch.waterRetention());
        forecast(out.member("freeShrinkage"), batch.freeShrinkage());
        forecast(out.member("keptInVat"), batch.keptInVat());
        forecast(out.member("stockPutBy"), batch.stockPutBy());
        batch.shortage().ifPresent(one -> out.member("shortage").object(in -> {
            in.member("chance").figure(one.chance());
            in.member("upTo").figure(one.upTo());
        }));
        forecast(out.member("whiteWaterFibre"), batch.whiteWaterFibre());
        forecast(out.member("workingHours"), batch.workingHours());
        objects(out, "balances", batch.balances(), PlanMapping::balance);
    }

    private static void fibre(ObjectOut out, BatchPlan.FibreToWeigh fibre) {
        out.member("ovenDry").figure(fibre.ovenDry());
        out.member("asBought").figure(fibre.asBought());
        objects(out, "kinds", fibre.kinds(), (in, line) -> {
            FibreMapping.write(in.member("fibre"), line.fibre());
            in.member("ovenDry").figure(line.ovenDry());
            in.member("fromHand").figure(line.fromHand());
            in.member("asBought").figure(line.asBought());
        });
    }

    private static void beating(ObjectOut out, BatchPlan.Beating beating) {
        out.member("beater").text(beating.beater().name());
        out.member("loads").count(beating.loads());
        out.member("ovenDryEach").figure(beating.ovenDryEach());
        out.member("kindsEach").list(beating.kindsEach(), ValueOut::figure);
        out.member("waterEach").figure(beating.waterEach());
        out.member("consistency").figure(beating.consistency());
        out.member("timeEach").figure(beating.timeEach());
    }

    private static void additive(ObjectOut out, BatchPlan.AdditiveToWeigh additive) {
        out.member("name").text(additive.additive().name());
        out.member("dose").figure(additive.dose());
        out.member("productEach").figure(additive.productEach());
        out.member("productInAll").figure(additive.productInAll());
        out.member("waitAfter").figure(additive.waitAfter());
    }

    private static void stock(ObjectOut out, BatchPlan.Stock stock) {
        out.member("mass").figure(stock.mass());
        out.member("volume").figure(stock.volume());
        out.member("consistency").figure(stock.consistency());
        stock.dilutionEach().ifPresent(water -> out.member("dilutionEach").figure(water));
        forecast(out.member("realConsistency"), stock.realConsistency());
    }

    private static void balance(ObjectOut out, Balance balance) {
        out.member("substance").text(balance.substance());
        out.member("in").map(balance.in(), ValueOut::figure);
        out.member("out").map(balance.out(), ValueOut::figure);
    }

    private static void schedule(ObjectOut out, Schedule schedule) {
        schedule.days().ifPresentOrElse(days -> out.member("days").count(days),
                () -> out.member("leastDays").count(schedule.leastDays()));
        objects(out, "steps", schedule.steps(), (in, step) -> {
            in.member("name").text(step.name());
            step.days().ifPresent(days -> in.member("days").count(days));
            step.start().ifPresent(day -> in.member("start").date(day));
        });
    }

    static void notice(ObjectOut out, Notice notice) {
        out.member("level").text(Common.word(notice.level()));
        out.member("code").text(notice.code());
        out.member("text").text(notice.text());
    }

    private static void sensitivity(ObjectOut out, Sensitivity line) {
        out.member("key").text(line.assumption().key());
        out.member("widens").text(line.widens());
        out.member("share").figure(Kinds.NUMBER.ofSi(line.share(), "%"));
        out.member("weight").figure(Kinds.NUMBER.ofSi(line.weight(), "%"));
        out.member("measurement").text(line.measurement());
    }

    private static void assumption(ObjectOut out, Assumption one) {
        String unit = one.unit().equals("1") ? "" : " " + one.unit();
        out.member("key").text(one.key());
        out.member("value").text(Units.number(one.likely()) + unit);
        out.member("low").text(Units.number(one.low()) + unit);
        out.member("high").text(Units.number(one.high()) + unit);
        out.member("basis").text(one.basis().word());
        out.member("source").text(one.source().text());
    }
}
