package org.papermath.json;

import java.util.function.BiConsumer;

import javax.measure.Quantity;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Sensitivity;
import org.papermath.plan.Stage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;

/** A plan: what it was made from, its settings and its forecasts. Only written. */
final class PlanMapping {
    static final DocumentFormat PLAN = new DocumentFormat("plan", 1, 0);

    private PlanMapping() {
    }

    static String write(MakingPlan plan, String program, String version) {
        return DocumentWriter.write(PLAN, Document.of(plan), (out, value) -> {
            out.member("writtenBy").object(by -> {
                by.member("program").text(program);
                by.member("version").text(version);
            });
            write(out, value);
        });
    }

    private static void write(ObjectOut out, MakingPlan plan) {
        out.member("edition").text(plan.studio().assumptions().edition());
        out.member("order").object(in -> OrderMapping.writeOrder(in, plan.order()));
        out.member("studio").object(in -> StudioMapping.write(in, plan.studio()));
        objects(out, "batches", plan.batches(), PlanMapping::batch);
        objects(out, "pieces", plan.pieces(), PlanPieceMapping::write);
        objects(out, "toBuy", plan.toBuy(), (in, one) -> {
            in.member("what").text(one.what());
            in.member("mass").quantity(one.mass());
            in.member("why").text(one.why());
        });
        out.member("schedule").object(in -> schedule(in, plan.schedule()));
        forecast(out.member("workingHours"), plan.workingHours());
        objects(out, "notices", plan.notices(), PlanMapping::notice);
        objects(out, "cautions", plan.cautions(), (in, one) -> {
            in.member("code").text(Common.word(one));
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
            in.member("likely").quantity(estimate.likely());
            in.member("low").quantity(estimate.low());
            in.member("high").quantity(estimate.high());
            estimate.scatter().ifPresent(share -> in.member("scatter").quantity(Kinds.NUMBER.ofSi(share, "%")));
        });
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
            in.member("water").quantity(batch.soak().water());
            in.member("time").quantity(batch.soak().time());
        });
        stageOf(out.member("beating"), batch.beatingStage(), PlanMapping::beating);
        objects(out, "additives", batch.additives(), PlanMapping::additive);
        out.member("stock").object(in -> stock(in, batch.stock()));
        forecast(out.member("drainability"), batch.drainability());
        forecast(out.member("waterRetention"), batch.waterRetention());
        forecast(out.member("freeShrinkage"), batch.freeShrinkage());
        forecast(out.member("keptInVat"), batch.keptInVat());
        forecast(out.member("stockPutBy"), batch.stockPutBy());
        forecast(out.member("whiteWaterFibre"), batch.whiteWaterFibre());
        forecast(out.member("workingHours"), batch.workingHours());
        objects(out, "balances", batch.balances(), PlanMapping::balance);
    }

    private static void fibre(ObjectOut out, BatchPlan.FibreToWeigh fibre) {
        out.member("ovenDry").quantity(fibre.ovenDry());
        out.member("asBought").quantity(fibre.asBought());
        objects(out, "kinds", fibre.kinds(), (in, line) -> {
            FibreMapping.write(in.member("fibre"), line.fibre());
            in.member("ovenDry").quantity(line.ovenDry());
            in.member("fromHand").quantity(line.fromHand());
            in.member("asBought").quantity(line.asBought());
        });
    }

    private static void beating(ObjectOut out, BatchPlan.Beating beating) {
        out.member("beater").text(beating.beater().name());
        out.member("loads").count(beating.loads());
        out.member("ovenDryEach").quantity(beating.ovenDryEach());
        out.member("kindsEach").list(beating.kindsEach(), ValueOut::quantity);
        out.member("waterEach").quantity(beating.waterEach());
        out.member("consistency").quantity(beating.consistency());
        out.member("timeEach").quantity(beating.timeEach());
    }

    private static void additive(ObjectOut out, BatchPlan.AdditiveToWeigh additive) {
        out.member("name").text(additive.additive().name());
        out.member("dose").quantity(additive.dose());
        out.member("productEach").quantity(additive.productEach());
        out.member("productInAll").quantity(additive.productInAll());
        out.member("waitAfter").quantity(additive.waitAfter());
    }

    private static void stock(ObjectOut out, BatchPlan.Stock stock) {
        out.member("mass").quantity(stock.mass());
        out.member("volume").quantity(stock.volume());
        out.member("consistency").quantity(stock.consistency());
        stock.dilutionEach().ifPresent(water -> out.member("dilutionEach").quantity(water));
        forecast(out.member("realConsistency"), stock.realConsistency());
    }

    private static void balance(ObjectOut out, Balance balance) {
        out.member("substance").text(balance.substance());
        out.member("in").map(balance.in(), ValueOut::quantity);
        out.member("out").map(balance.out(), ValueOut::quantity);
    }

    private static void schedule(ObjectOut out, Schedule schedule) {
        out.member("days").count(schedule.days());
        objects(out, "steps", schedule.steps(), (in, step) -> {
            in.member("name").text(step.name());
            in.member("days").count(step.days());
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
        out.member("share").quantity(Kinds.NUMBER.ofSi(line.share(), "%"));
        out.member("weight").quantity(Kinds.NUMBER.ofSi(line.weight(), "%"));
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
