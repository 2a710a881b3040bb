package org.papermath.json.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
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
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.mail.MailLimits;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Unclear;
import org.papermath.shape.Outline;

/** Estimates, assumptions, notices and the like by themselves, with all their parts: the same value comes back. */
public final class EvidenceMapping {
    private EvidenceMapping() {}

    /** Writes a forecast as plans do, all digits kept and the assumptions behind its band added. */
    public static void estimate(ValueWriter out, Estimate<?> estimate) {
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
            if (estimate.fromMakings() > 0) {
                in.member("fromMakings").number(estimate.fromMakings());
            }
            estimate.scatter().ifPresent(scatter -> fraction(in.member("scatter"), scatter));
            if (!estimate.drivers().isEmpty()) {
                in.member("drivers")
                        .list(
                                estimate.drivers(),
                                (one, driver) -> one.object(part -> {
                                    part.member("assumption").object(inner -> assumption(inner, driver.assumption()));
                                    part.member("share").number(driver.share());
                                }));
            }
        });
    }

    public static <Q extends Quantity<Q>> ReadResult<Estimate<?>> estimate(ObjectReader in, Kind<Q> kind) {
        ReadResult<Amount<Q>> likely = in.required("likely").quantity(kind);
        ReadResult<Amount<Q>> low = in.required("low").quantity(kind);
        ReadResult<Amount<Q>> high = in.required("high").quantity(kind);
        ReadResult<Double> scatter =
                in.optional("scatter").quantity(Kinds.NUMBER).map(Amount::si);
        ReadResult<Boolean> openBelow = in.optional("openBelow").flag();
        ReadResult<Boolean> openAbove = in.optional("openAbove").flag();
        ReadResult<Double> makings = in.optional("fromMakings").number(0, 1);
        ReadResult<List<Estimate.Driver>> drivers =
                in.optional("drivers").list(one -> one.object(EvidenceMapping::driver));
        return in.make(() -> {
            Estimate<Q> bare = Estimate.of(likely.get(), low.get(), high.get(), drivers.orElse(List.of()))
                    .open(openBelow.orElse(false), openAbove.orElse(false))
                    .withMakings(makings.orElse(0.0));
            return scatter.optional().map(bare::withScatter).orElse(bare);
        });
    }

    private static ReadResult<Estimate.Driver> driver(ObjectReader in) {
        ReadResult<Assumption> assumption = in.required("assumption").object(EvidenceMapping::assumption);
        ReadResult<Double> share = in.required("share").number(0, 1);
        return in.make(() -> new Estimate.Driver(assumption.get(), share.get()));
    }

    /** Writes a fraction in per cent, or plainly where the per cent would lose its last digit. */
    private static void fraction(ValueWriter out, double fraction) {
        Amount<?> percent = Kinds.NUMBER.ofSi(fraction, "%");
        out.quantity(percent.si() == fraction ? Kinds.NUMBER.ofSi(fraction, "%") : Kinds.NUMBER.ofSi(fraction, "1"));
    }

    public static void assumption(ObjectWriter out, Assumption one) {
        out.member("id").text(one.id());
        scope(out, one.scope());
        out.member("meaning").text(one.meaning());
        out.member("likely").number(one.likely());
        out.member("low").number(one.low());
        out.member("high").number(one.high());
        out.member("shape").text(CommonMembers.word(one.shape()));
        if (Double.isFinite(one.least())) {
            out.member("least").number(one.least());
        }
        if (Double.isFinite(one.most())) {
            out.member("most").number(one.most());
        }
        out.member("unit").text(one.unit());
        out.member("role").text(CommonMembers.word(one.role()));
        out.member("basis").text(one.basis().word());
        out.member("source").text(one.source().text());
        leans(out, one);
    }

    /** Writes what a measured value goes with, where it does. */
    static void leans(ObjectWriter out, Assumption one) {
        if (!one.leans().isEmpty()) {
            out.member("goesWith")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, one.leans(), "what a value goes with"),
                            (item, lean) -> item.object(in -> {
                                in.member("id").text(lean.id());
                                scope(in, lean.scope());
                                in.member("below").number(lean.below());
                                in.member("above").number(lean.above());
                            }));
        }
    }

    static ReadResult<List<Assumption.Lean>> leans(ObjectReader in) {
        return in.optional("goesWith").list(0, CommonMembers.MANY, one -> one.object(EvidenceMapping::lean));
    }

    private static ReadResult<Assumption.Lean> lean(ObjectReader in) {
        ReadResult<String> id = in.required("id").text();
        ReadResult<String> subject =
                CommonMembers.sayable(in.optional("subject").text());
        ReadResult<String> at = CommonMembers.sayable(in.optional("at").text());
        ReadResult<Double> below = any(in.required("below"));
        ReadResult<Double> above = any(in.required("above"));
        return in.make(() -> {
            Scope scope = subject.optional().map(Scope::of).orElse(Scope.GENERAL);
            return new Assumption.Lean(id.get(), at.optional().map(scope::on).orElse(scope), below.get(), above.get());
        });
    }

    public static ReadResult<Assumption> assumption(ObjectReader in) {
        ReadResult<String> id = in.required("id").note();
        ReadResult<Scope> scope = scopeOf(in);
        ReadResult<String> meaning = in.required("meaning").note();
        ReadResult<Double> likely = any(in.required("likely"));
        ReadResult<Double> low = any(in.required("low"));
        ReadResult<Double> high = any(in.required("high"));
        ReadResult<Shape> shape = in.required("shape").choice(List.of(Shape.values()), CommonMembers::word);
        ReadResult<Double> least = any(in.optional("least"));
        ReadResult<Double> most = any(in.optional("most"));
        ReadResult<String> unit = in.required("unit").note();
        ReadResult<Role> role = in.required("role").choice(List.of(Role.values()), CommonMembers::word);
        ReadResult<Basis> basis = in.required("basis").choice(List.of(Basis.values()), Basis::word);
        ReadResult<Source> source = in.required("source").note().map(Source::new);
        ReadResult<List<Assumption.Lean>> leans = leans(in);
        return in.make(() -> new Assumption(
                        id.get(),
                        scope.get(),
                        meaning.get(),
                        likely.get(),
                        low.get(),
                        high.get(),
                        shape.get(),
                        least.orElse(Double.NEGATIVE_INFINITY),
                        most.orElse(Double.POSITIVE_INFINITY),
                        unit.get(),
                        role.get(),
                        basis.get(),
                        source.get())
                .leaning(leans.orElse(List.of())));
    }

    private static ReadResult<Double> any(ValueReader at) {
        return at.number(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    public static void scope(ObjectWriter out, Scope scope) {
        scope.subject().ifPresent(subject -> out.member("subject").text(subject));
        scope.place().ifPresent(place -> out.member("at").text(place));
    }

    public static ReadResult<Scope> scope(ObjectReader in) {
        ReadResult<Scope> scope = scopeOf(in);
        return in.make(scope::get);
    }

    private static ReadResult<Scope> scopeOf(ObjectReader in) {
        ReadResult<Scope> subject = in.optional("subject").note().map(Scope::of);
        ReadResult<String> at = in.optional("at").note().check(Scope::at);
        if (subject.isFaulty() || at.isFaulty()) {
            return ReadResult.faulty(in.unasked());
        }
        Scope scope = subject.orElse(Scope.GENERAL);
        return ReadResult.of(in.unasked(), at.optional().map(scope::on).orElse(scope));
    }

    public static void notice(ObjectWriter out, Notice notice) {
        out.member("level").text(CommonMembers.word(notice.level()));
        out.member("code").text(notice.code());
        out.member("text").text(notice.text());
        if (!notice.arguments().isEmpty()) {
            out.member("arguments").map(notice.arguments(), EvidenceMapping::argument);
        }
    }

    public static ReadResult<Notice> notice(ObjectReader in) {
        ReadResult<Notice.Level> level =
                in.required("level").choice(List.of(Notice.Level.values()), CommonMembers::word);
        ReadResult<String> code = in.required("code").note();
        ReadResult<String> text = in.required("text").note();
        ReadResult<Map<String, Object>> arguments = in.optional("arguments").map(EvidenceMapping::argument);
        return in.make(() -> {
            List<Object> inTurn = new ArrayList<>();
            arguments.orElse(Map.of()).forEach((name, value) -> {
                inTurn.add(name);
                inTurn.add(value);
            });
            return level.get() == Notice.Level.WARNING
                    ? Notice.warning(code.get(), text.get(), inTurn.toArray())
                    : Notice.note(code.get(), text.get(), inTurn.toArray());
        });
    }

    /** Writes what a refusal or a question says to programs. */
    public static void refusal(ObjectWriter out, PapermathException refusal) {
        out.member("code").text(refusal.code());
        out.member("text").text(String.valueOf(refusal.getMessage()));
        if (!refusal.arguments().isEmpty()) {
            out.member("arguments").map(refusal.arguments(), EvidenceMapping::argument);
        }
        if (refusal instanceof Unclear unclear) {
            objects(out, "candidates", unclear.candidates(), (in, one) -> {
                in.member("meaning").text(one.meaning());
                in.member("gives").text(one.gives());
            });
        }
    }

    /** Writes a value of a sentence; what is no number, flag, list or amount is written as in the sentence. */
    private static void argument(ValueWriter out, @Nullable Object value) {
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

    private static ReadResult<Object> argument(ValueReader at) {
        if (at.isText()) {
            return at.note().map(text -> text);
        }
        if (at.isList()) {
            return at.list(EvidenceMapping::argument).map(list -> list);
        }
        if (at.isObject()) {
            return at.object(in -> {
                ReadResult<Kind<?>> kind = in.required("kind").choice(Kinds.all(), Kind::name);
                ValueReader amount = in.required("amount");
                ReadResult<Amount<?>> read = kind.isFaulty() ? ReadResult.faulty(amount) : amount(amount, kind.get());
                return in.make(read::get);
            });
        }
        return at.plain();
    }

    private static <Q extends Quantity<Q>> ReadResult<Amount<?>> amount(ValueReader at, Kind<Q> kind) {
        return at.quantity(kind).map(amount -> amount);
    }

    private static <T> void objects(
            ObjectWriter out, String name, Iterable<T> all, BiConsumer<? super ObjectWriter, ? super T> one) {
        out.member(name).list(all, (item, value) -> item.object(in -> one.accept(in, value)));
    }

    /** Writes what a carrier makes of a piece. */
    public static void verdict(ObjectWriter out, MailLimits.Verdict verdict) {
        verdict.service().ifPresent(service -> out.member("service").text(service));
        verdict.step().ifPresent(step -> out.member("step").count(step));
        objects(out, "failures", verdict.failures(), (in, one) -> {
            in.member("service").text(one.service());
            in.member("limit").text(one.limit());
            in.member("direction").text(one.direction());
            in.member("given").text(one.given());
            in.member("allowed").text(one.allowed());
            in.member("by").text(one.by());
        });
        objects(out, "notices", verdict.notices(), EvidenceMapping::notice);
    }

    public static void outline(ObjectWriter out, Outline outline) {
        objects(out, "corners", outline.corners(), (in, corner) -> {
            in.member("across").quantity(corner.across());
            in.member("along").quantity(corner.along());
        });
    }

    public static ReadResult<Outline> outline(ObjectReader in) {
        ReadResult<List<Outline.Point>> corners =
                in.required("corners").list(3, CommonMembers.MANY, one -> one.object(EvidenceMapping::corner));
        return in.make(() -> Outline.of(corners.get()));
    }

    static ReadResult<Outline.Point> corner(ObjectReader in) {
        ReadResult<Amount<Length>> across = in.required("across").quantity(Kinds.LENGTH);
        ReadResult<Amount<Length>> along = in.required("along").quantity(Kinds.LENGTH);
        return in.make(() -> Outline.Point.of(across.get(), along.get()));
    }
}
