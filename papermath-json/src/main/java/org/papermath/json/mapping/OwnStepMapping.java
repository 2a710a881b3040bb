package org.papermath.json.mapping;

import java.util.List;
import javax.measure.quantity.Time;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueWriter;
import org.papermath.order.OwnStep;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;

/** A step of one's own in the days of an order. */
public final class OwnStepMapping {
    /** The stages a step may come after or before. */
    public static final List<OwnStep.Stage> STAGES = List.of(OwnStep.Stage.values());

    private OwnStepMapping() {}

    static ReadResult<OwnStep> read(ObjectReader in) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<Amount<Time>> hands = in.optional("hands").quantity(Kinds.TIME);
        ReadResult<Amount<Time>> waits = in.optional("waits").quantity(Kinds.TIME);
        ReadResult<Amount<Time>> atLeast = in.optional("waitsAtLeast").quantity(Kinds.TIME);
        ReadResult<Amount<Time>> atMost = in.optional("waitsAtMost").quantity(Kinds.TIME);
        ReadResult<Boolean> inWorkingDays = in.optional("inWorkingDays").flag();
        ReadResult<OwnStep.Stage> after = in.optional("after").choice(STAGES, OwnStep.Stage::words);
        ReadResult<OwnStep.Stage> before = in.optional("before").choice(STAGES, OwnStep.Stage::words);
        return in.make(() -> {
            OwnStep.Builder step = OwnStep.of(name.get());
            hands.ifGiven(step::hands);
            waits.ifGiven(step::waits);
            if (atLeast.isGiven() || atMost.isGiven()) {
                Amount<Time> likely = waits.orElse(Amounts.days(0));
                step.between(atLeast.orElse(likely), atMost.orElse(likely));
            }
            if (inWorkingDays.orElse(false)) {
                step.inWorkingDays();
            }
            after.ifGiven(step::after);
            before.ifGiven(step::before);
            return step.build();
        });
    }

    static void write(ObjectWriter out, OwnStep step) {
        CommonMembers.name(out.member("name"), step.name());
        time(out.member("hands"), step.hands());
        time(out.member("waits"), step.waits());
        step.waitsAtLeast().ifPresent(low -> out.member("waitsAtLeast").quantity(low));
        step.waitsAtMost().ifPresent(high -> out.member("waitsAtMost").quantity(high));
        ValueWriter inWorkingDays = out.member("inWorkingDays");
        if (step.isInWorkingDays() || inWorkingDays.keeps()) {
            inWorkingDays.flag(step.isInWorkingDays());
        }
        step.after().ifPresent(stage -> out.member("after").text(stage.words()));
        step.before().ifPresent(stage -> out.member("before").text(stage.words()));
    }

    private static void time(ValueWriter out, Amount<Time> time) {
        if (time.si() > 0 || out.keeps()) {
            out.quantity(time);
        }
    }
}
