package org.papermath.json.mapping;

import java.util.List;
import java.util.function.BiConsumer;
import javax.measure.Quantity;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ValueWriter;
import org.papermath.plan.Stage;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** The sorts of figures a plan is written with. */
final class PlanFigures {
    private PlanFigures() {}

    /** Writes a list of objects. */
    static <T> void objects(
            ObjectWriter out, String name, Iterable<T> all, BiConsumer<? super ObjectWriter, ? super T> one) {
        out.member(name).list(all, (item, value) -> item.object(in -> one.accept(in, value)));
    }

    /** Writes a forecast with its band, and how single pieces scatter, if that is known. */
    static <Q extends Quantity<Q>> void forecast(ValueWriter out, Estimate<Q> estimate) {
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

    static void sides(ValueWriter out, Amount<?> width, Amount<?> height) {
        out.list(List.<Amount<?>>of(width, height), ValueWriter::figure);
    }

    /** Writes a stage, or why it was not done. */
    static <T> void stage(ValueWriter out, Stage<T> stage, BiConsumer<? super ValueWriter, ? super T> done) {
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
    static <T> void stageOf(ValueWriter out, Stage<T> stage, BiConsumer<? super ObjectWriter, ? super T> members) {
        stage(out, stage, (value, done) -> value.object(in -> members.accept(in, done)));
    }

    static void notice(ObjectWriter out, Notice notice) {
        out.member("level").text(CommonMembers.word(notice.level()));
        out.member("code").text(notice.code());
        out.member("text").text(notice.text());
    }
}
