package org.papermath.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import javax.measure.Quantity;
import javax.measure.quantity.Length;

import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Shape;
import org.papermath.evidence.Source;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Unclear;
import org.papermath.mail.MailLimits;
import org.papermath.shape.Outline;

/** Estimates, assumptions, notices and the like by themselves, with all their parts: the same value comes back. */
final class EvidenceMapping {
    private EvidenceMapping() {
    }

    /** Writes a forecast as plans do, all digits kept and the assumptions behind its band added. */
    static void estimate(ValueOut out, Estimate<?> estimate) {
        out.object(in -> {
            in.member("likely").quantity(estimate.likely());
            in.member("low").quantity(estimate.low());
            in.member("high").quantity(estimate.high());
            if (estimate.isOpenBelow()) {
                in.member("openBelow").flag(true);
            }
            if (estimate.isOpenAbove()) {
                in.member("openAbove").flag(true);
            }
            estimate.scatter().ifPresent(scatter -> fraction(in.member("scatter"), scatter));
            if (!estimate.drivers().isEmpty()) {
                in.member("drivers").list(estimate.drivers(), (one, driver) -> one.object(part -> {
                    part.member("assumption").object(inner -> assumption(inner, driver.assumption()));
                    part.member("share").number(driver.share());
                }));
            }
        });
    }

    static <Q extends Quantity<Q>> Got<Estimate<?>> estimate(ObjectAt in, Kind<Q> kind) {
        Got<Amount<Q>> likely = in.required("likely").quantity(kind);
        Got<Amount<Q>> low = in.required("low").quantity(kind);
        Got<Amount<Q>> high = in.required("high").quantity(kind);
        Got<Double> scatter = in.optional("scatter").quantity(Kinds.NUMBER).map(Amount::si);
        Got<Boolean> openBelow = in.optional("openBelow").flag();
        Got<Boolean> openAbove = in.optional("openAbove").flag();
        Got<List<Estimate.Driver>> drivers = in.optional("drivers").list(one -> one.object(EvidenceMapping::driver));
        return in.make(() -> {
            Estimate<Q> bare = Estimate.of(likely.get(), low.get(), high.get(), drivers.orElse(List.of()))
                    .open(openBelow.orElse(false), openAbove.orElse(false));
            return scatter.optional().map(bare::withScatter).orElse(bare);
        });
    }

    private static Got<Estimate.Driver> driver(ObjectAt in) {
        Got<Assumption> assumption = in.required("assumption").object(EvidenceMapping::assumption);
        Got<Double> share = in.required("share").number(0, 1);
        return in.make(() -> new Estimate.Driver(assumption.get(), share.get()));
    }

    /** Writes a fraction in per cent, or plainly where the per cent would lose its last digit. */
    private static void fraction(ValueOut out, double fraction) {
        Amount<?> percent = Kinds.NUMBER.ofSi(fraction, "%");
        out.quantity(percent.si() == fraction ? Kinds.NUMBER.ofSi(fraction, "%") : Kinds.NUMBER.ofSi(fraction, "1"));
    }

    static void assumption(ObjectOut out, Assumption one) {
        out.member("id").text(one.id());
        scope(out, one.scope());
        out.member("meaning").text(one.meaning());
        out.member("likely").number(one.likely());
        out.member("low").number(one.low());
        out.member("high").number(one.high());
        out.member("shape").text(Common.word(one.shape()));
        if (Double.isFinite(one.least())) {
            out.member("least").number(one.least());
        }
        if (Double.isFinite(one.most())) {
            out.member("most").number(one.most());
        }
        out.member("unit").text(one.unit());
        out.member("role").text(Common.word(one.role()));
        out.member("basis").text(one.basis().word());
        out.member("source").text(one.source().text());
    }

    static Got<Assumption> assumption(ObjectAt in) {
        Got<String> id = in.required("id").note();
        Got<Scope> scope = scopeOf(in);
        Got<String> meaning = in.required("meaning").note();
        Got<Double> likely = any(in.required("likely"));
        Got<Double> low = any(in.required("low"));
        Got<Double> high = any(in.required("high"));
        Got<Shape> shape = in.required("shape").choice(List.of(Shape.values()), Common::word);
        Got<Double> least = any(in.optional("least"));
        Got<Double> most = any(in.optional("most"));
        Got<String> unit = in.required("unit").note();
        Got<Role> role = in.required("role").choice(List.of(Role.values()), Common::word);
        Got<Basis> basis = in.required("basis").choice(List.of(Basis.values()), Basis::word);
        Got<Source> source = in.required("source").note().map(Source::new);
        return in.make(() -> new Assumption(id.get(), scope.get(), meaning.get(), likely.get(), low.get(), high.get(),
                shape.get(), least.orElse(Double.NEGATIVE_INFINITY), most.orElse(Double.POSITIVE_INFINITY), unit.get(),
                role.get(), basis.get(), source.get()));
    }

    private static Got<Double> any(ValueAt at) {
        return at.number(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    static void scope(ObjectOut out, Scope scope) {
        scope.subject().ifPresent(subject -> out.member("subject").text(subject));
        scope.place().ifPresent(place -> out.member("at").text(place));
    }

    static Got<Scope> scope(ObjectAt in) {
        Got<Scope> scope = scopeOf(in);
        return in.make(scope::get);
    }

    private static Got<Scope> scopeOf(ObjectAt in) {
        Got<Scope> subject = in.optional("subject").note().map(Scope::of);
        Got<String> at = in.optional("at").note().check(Scope::at);
        if (subject.isFaulty() || at.isFaulty()) {
            return Got.faulty(in.unasked());
        }
        Scope scope = subject.orElse(Scope.GENERAL);
        return Got.of(in.unasked(), at.optional().map(scope::on).orElse(scope));
    }

    static void notice(ObjectOut out, Notice notice) {
        PlanMapping.notice(out, notice);
        if (!notice.arguments().isEmpty()) {
            out.member("arguments").map(notice.arguments(), EvidenceMapping::argument);
        }
    }

    static Got<Notice> notice(ObjectAt in) {
        Got<Notice.Level> level = in.required("level").choice(List.of(Notice.Level.values()), Common::word);
        Got<String> code = in.required("code").note();
        Got<String> text = in.required("text").note();
        Got<Map<String, Object>> arguments = in.optional("arguments").map(EvidenceMapping::argument);
        return in.make(() -> {
            List<Object> inTurn = new ArrayList<>();
            arguments.orElse(Map.of()).forEach((name, value) -> {
                inTurn.add(name);
                inTurn.add(value);
            });
            return level.get() == Notice.Level.WARNING ? Notice.warning(code.get(), text.get(), inTurn.toArray())
                    : Notice.note(code.get(), text.get(), inTurn.toArray());
        });
    }

    /** Writes what a refusal or a question says to programs. */
    static void refusal(ObjectOut out, PapermathException refusal) {
        out.member("code").text(refusal.code());
        out.member("text").text(String.valueOf(refusal.getMessage()));
        if (!refusal.arguments().isEmpty()) {
            out.member("arguments").map(refusal.arguments(), EvidenceMapping::argument);
        }
        if (refusal instanceof Unclear unclear) {
            PlanMapping.objects(out, "candidates", unclear.candidates(), (in, one) -> {
                in.member("meaning").text(one.meaning());
                in.member("gives").text(one.gives());
            });
        }
    }

    /** Writes a value of a sentence; what is no number, flag, list or amount is told as in the sentence. */
    private static void argument(ValueOut out, @Nullable Object value) {
        if (value instanceof Integer || value instanceof Long) {
            out.count(((Number) value).longValue());
        } else if (value instanceof Double number && Double.isFinite(number)) {
            out.fractional(number);
        } else if (value instanceof Boolean flag) {
            out.flag(flag);
        } else if (value instanceof Iterable<?> several) {
            out.list(several, EvidenceMapping::argument);
        } else if (value instanceof Amount<?> amount) {
            out.object(in -> {
                in.member("kind").text(amount.kind().name());
                in.member("amount").quantity(amount);
            });
        } else {
            out.text(String.valueOf(value));
        }
    }

    private static Got<Object> argument(ValueAt at) {
        if (at.isText()) {
            return at.note().map(text -> text);
        }
        if (at.isList()) {
            return at.list(EvidenceMapping::argument).map(list -> list);
        }
        if (at.isObject()) {
            return at.object(in -> {
                Got<Kind<?>> kind = in.required("kind").choice(Kinds.all(), Kind::name);
                ValueAt amount = in.required("amount");
                Got<Amount<?>> read = kind.isFaulty() ? Got.faulty(amount) : amount(amount, kind.get());
                return in.make(read::get);
            });
        }
        return at.plain();
    }

    private static <Q extends Quantity<Q>> Got<Amount<?>> amount(ValueAt at, Kind<Q> kind) {
        return at.quantity(kind).map(amount -> amount);
    }

    /** Writes what a carrier makes of a piece. */
    static void verdict(ObjectOut out, MailLimits.Verdict verdict) {
        verdict.service().ifPresent(service -> out.member("service").text(service));
        verdict.step().ifPresent(step -> out.member("step").count(step));
        PlanMapping.objects(out, "failures", verdict.failures(), (in, one) -> {
            in.member("service").text(one.service());
            in.member("limit").text(one.limit());
            in.member("direction").text(one.direction());
            in.member("given").text(one.given());
            in.member("allowed").text(one.allowed());
            in.member("by").text(one.by());
        });
        PlanMapping.objects(out, "notices", verdict.notices(), EvidenceMapping::notice);
    }

    static void outline(ObjectOut out, Outline outline) {
        PlanMapping.objects(out, "corners", outline.corners(), (in, corner) -> {
            in.member("across").quantity(corner.across());
            in.member("along").quantity(corner.along());
        });
    }

    static Got<Outline> outline(ObjectAt in) {
        Got<List<Outline.Point>> corners = in.required("corners")
                .list(3, Common.MANY, one -> one.object(EvidenceMapping::corner));
        return in.make(() -> Outline.of(corners.get()));
    }

    private static Got<Outline.Point> corner(ObjectAt in) {
        Got<Amount<Length>> across = in.required("across").quantity(Kinds.LENGTH);
        Got<Amount<Length>> along = in.required("along").quantity(Kinds.LENGTH);
        return in.make(() -> Outline.Point.of(across.get(), along.get()));
    }
}
