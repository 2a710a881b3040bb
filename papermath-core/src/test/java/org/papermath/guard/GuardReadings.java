package org.papermath.guard;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import org.papermath.card.MakingCard;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.mail.MailLimits;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.BeatingPlan;
import org.papermath.plan.CookingPlan;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.FibreToWeigh;
import org.papermath.plan.MailPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.PostsPlan;
import org.papermath.plan.PourPlan;
import org.papermath.plan.PressingPlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Sensitivity;
import org.papermath.plan.ShapedDeckle;
import org.papermath.plan.SizingPlan;
import org.papermath.plan.Stage;
import org.papermath.plan.ToBuy;
import org.papermath.plan.VatPlan;
import org.papermath.plan.VatPlan.Recharge;
import org.papermath.quantity.Amount;

/**
 * What the guard reads of a plan, and by which accessor: the one place to follow when an accessor is renamed.
 *
 * <p>The ids of the figures belong to the guard and stay when the plan's own words change. A reader gives a number, an
 * amount, an estimate, a date, a yes or no, an optional one of those, or a list of them; {@link #numbers} says what
 * comes of each. Nothing a reader of figures gives has to do with a name, a code or a text.
 */
final class GuardReadings {
    /** The stages of the work, in which figures are counted as moved. */
    enum Work {
        /** Whether the order could be planned, and how many batches and pieces it has. */
        ORDER,
        FIBRE,
        BEATING,
        VAT,
        SHEET,
        POST_AND_PRESS,
        DRYING,
        SIZE,
        FINISH,
        ENVELOPE,
        MAIL,
        HOURS,
        SCHEDULE,
        /** The balances of a batch. */
        ACCOUNTS,
        /** What the plan rests on, and what widens it. */
        EVIDENCE;

        /** The name in the files and after {@code -Dguard.write=}. */
        String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** The kinds of words a plan has; kept apart so that a failure can say which of them moved. */
    enum Words {
        /** Level, code, arguments and text of each notice; code and message of a refusal. */
        NOTICES,
        /** Code and reason of each stage not done. */
        STAGES,
        CARD,
        /** Units of the figures; names of steps, accounts, drivers, things to buy; cautions, verdicts. */
        LABELS,
        /** The numbers printed in all of these; the other kinds do not heed them. */
        PRINTED;

        /** The name in the files and after {@code -Dguard.write=}. */
        String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * One figure, or a list of figures of one meaning.
     *
     * @param <S> what it is read from
     */
    record Figure<S>(String id, Work work, Function<S, ?> reader) {}

    /** Figures of the whole plan. */
    static final List<Figure<MakingPlan>> PLAN = List.of(
            of("order.batches", Work.ORDER, plan -> plan.batches().size()),
            of("order.pieces", Work.ORDER, plan -> plan.pieces().size()),
            of("buy.mass", Work.FIBRE, each(MakingPlan::toBuy, ToBuy::mass)),
            of("hours.all", Work.HOURS, MakingPlan::workingHours),
            of("schedule.days", Work.SCHEDULE, plan -> plan.schedule().days()),
            of("schedule.least-days", Work.SCHEDULE, plan -> plan.schedule().leastDays()),
            of("schedule.step.days", Work.SCHEDULE, each(plan -> plan.schedule().steps(), Schedule.Step::days)),
            of(
                    "schedule.step.start",
                    Work.SCHEDULE,
                    each(plan -> plan.schedule().steps(), Schedule.Step::start)),
            of("schedule.start", Work.SCHEDULE, plan -> plan.schedule().start()),
            of("evidence.values", Work.EVIDENCE, plan -> plan.assumptionsUsed().size()),
            of("evidence.likely", Work.EVIDENCE, sorted(MakingPlan::assumptionsUsed, Assumption::likelySi)),
            of("evidence.low", Work.EVIDENCE, sorted(MakingPlan::assumptionsUsed, Assumption::lowSi)),
            of("evidence.high", Work.EVIDENCE, sorted(MakingPlan::assumptionsUsed, Assumption::highSi)),
            of("evidence.sensitivity.share", Work.EVIDENCE, each(MakingPlan::sensitivity, Sensitivity::share)),
            of("evidence.sensitivity.weight", Work.EVIDENCE, each(MakingPlan::sensitivity, Sensitivity::weight)));

    /** Figures of a batch. */
    static final List<Figure<BatchPlan>> BATCH = List.of(
            of("fibre.oven-dry", Work.FIBRE, batch -> batch.fibre().ovenDry()),
            of("fibre.as-bought", Work.FIBRE, batch -> batch.fibre().asBought()),
            of("fibre.kind.oven-dry", Work.FIBRE, each(batch -> batch.fibre().kinds(), FibreToWeigh.Line::ovenDry)),
            of("fibre.kind.from-hand", Work.FIBRE, each(batch -> batch.fibre().kinds(), FibreToWeigh.Line::fromHand)),
            of("fibre.kind.as-bought", Work.FIBRE, each(batch -> batch.fibre().kinds(), FibreToWeigh.Line::asBought)),
            of("fibre.soak-water", Work.FIBRE, batch -> batch.soak().water()),
            of("fibre.soak-time", Work.FIBRE, batch -> batch.soak().time()),
            of("fibre.pot.oven-dry", Work.FIBRE, each(GuardReadings::pots, CookingPlan.Pot::ovenDry)),
            of("fibre.pot.alkali", Work.FIBRE, each(GuardReadings::pots, CookingPlan.Pot::pureAlkali)),
            of("fibre.pot.liquor", Work.FIBRE, each(GuardReadings::pots, CookingPlan.Pot::liquor)),
            of("fibre.pot.stuff", Work.FIBRE, each(GuardReadings::pots, CookingPlan.Pot::stuff)),
            of("fibre.pot.wet", Work.FIBRE, each(GuardReadings::pots, CookingPlan.Pot::wet)),
            of("fibre.cooking.time", Work.FIBRE, batch -> batch.cooking().map(CookingPlan::time)),
            of("fibre.cooking.stuff", Work.FIBRE, batch -> batch.cooking().map(CookingPlan::stuff)),
            of("beating.done", Work.BEATING, batch -> batch.beatingStage().isDone()),
            of("beating.loads", Work.BEATING, batch -> batch.beatingStage().map(BeatingPlan::loads)),
            of(
                    "beating.load.oven-dry",
                    Work.BEATING,
                    batch -> batch.beatingStage().map(one -> one.runs().get(0).ovenDryEach())),
            of(
                    "beating.load.kind",
                    Work.BEATING,
                    batch -> batch.beatingStage().map(one -> one.runs().get(0).kindsEach())),
            of(
                    "beating.load.water",
                    Work.BEATING,
                    batch -> batch.beatingStage().map(one -> one.runs().get(0).waterEach())),
            of(
                    "beating.consistency",
                    Work.BEATING,
                    batch -> batch.beatingStage().map(BeatingPlan::consistency)),
            of(
                    "beating.time",
                    Work.BEATING,
                    batch -> batch.beatingStage().map(one -> one.runs().get(0).timeEach())),
            of("beating.drainability", Work.BEATING, BatchPlan::drainability),
            of("beating.water-retention", Work.BEATING, BatchPlan::waterRetention),
            of("beating.free-shrinkage", Work.BEATING, BatchPlan::freeShrinkage),
            of("beating.dose.share", Work.BEATING, each(BatchPlan::additives, AdditiveToWeigh::dose)),
            of("beating.dose.product-each", Work.BEATING, each(BatchPlan::additives, AdditiveToWeigh::productEach)),
            of("beating.dose.product-in-all", Work.BEATING, each(BatchPlan::additives, AdditiveToWeigh::productInAll)),
            of("beating.dose.wait", Work.BEATING, each(BatchPlan::additives, AdditiveToWeigh::waitAfter)),
            of("beating.stock.mass", Work.BEATING, batch -> batch.stock().mass()),
            of("beating.stock.volume", Work.BEATING, batch -> batch.stock().volume()),
            of("beating.stock.consistency", Work.BEATING, batch -> batch.stock().consistency()),
            of("beating.stock.dilution", Work.BEATING, batch -> batch.stock().dilutionEach()),
            of(
                    "beating.stock.real-consistency",
                    Work.BEATING,
                    batch -> batch.stock().realConsistency()),
            of("vat.kept-fibre", Work.VAT, BatchPlan::keptInVat),
            of("vat.stock-put-by", Work.VAT, BatchPlan::stockPutBy),
            of("vat.white-water-fibre", Work.VAT, BatchPlan::whiteWaterFibre),
            of("hours.batch", Work.HOURS, BatchPlan::workingHours),
            of("accounts.in", Work.ACCOUNTS, each(BatchPlan::balances, balance -> values(balance.in()))),
            of("accounts.out", Work.ACCOUNTS, each(BatchPlan::balances, balance -> values(balance.out()))),
            of("accounts.total-in", Work.ACCOUNTS, each(BatchPlan::balances, Balance::totalIn)),
            of("accounts.total-out", Work.ACCOUNTS, each(BatchPlan::balances, Balance::totalOut)));

    /** Figures of a piece; what is a choice from a list of the studio is counted in that list, from 0. */
    static final List<Figure<InPlan>> PIECE = List.of(
            piece("sheet.ordered", Work.SHEET, piece -> piece.counts().ordered()),
            piece("sheet.wanted", Work.SHEET, piece -> piece.counts().wanted()),
            piece("sheet.pieces", Work.SHEET, piece -> piece.counts().perSheet()),
            piece("sheet.count", Work.SHEET, piece -> piece.counts().sheets()),
            piece("sheet.trials", Work.SHEET, piece -> piece.counts().trials()),
            piece("sheet.good", Work.SHEET, piece -> piece.counts().good()),
            of(
                    "sheet.mould",
                    Work.SHEET,
                    at -> at.piece()
                            .forming()
                            .mould()
                            .map(mould -> at.plan().studio().moulds().indexOf(mould))),
            piece("sheet.deckle-to-make", Work.SHEET, piece -> piece.forming().deckleToMake()),
            piece(
                    "sheet.opening.width",
                    Work.SHEET,
                    piece -> piece.forming().opening().width()),
            piece(
                    "sheet.opening.height",
                    Work.SHEET,
                    piece -> piece.forming().opening().height()),
            piece(
                    "sheet.shaped.area",
                    Work.SHEET,
                    onlyWhereThereIs(piece -> piece.forming().shapedDeckle().map(ShapedDeckle::area))),
            piece(
                    "sheet.shaped.across",
                    Work.SHEET,
                    onlyWhereThereIs(piece -> piece.forming().shapedDeckle().map(ShapedDeckle::across))),
            piece(
                    "sheet.shaped.strip",
                    Work.SHEET,
                    onlyWhereThereIs(piece -> piece.forming().shapedDeckle().map(ShapedDeckle::strip))),
            piece("sheet.forming.pieces", Work.SHEET, piece -> piece.forming().perSheet()),
            piece("sheet.turned", Work.SHEET, piece -> piece.forming().turned()),
            piece("sheet.fibre", Work.SHEET, piece -> piece.forming().fibre()),
            piece("sheet.solids", Work.SHEET, piece -> piece.forming().solids()),
            piece("sheet.drain-time", Work.SHEET, PiecePlan::drainTimeStage),
            piece("sheet.time-at-vat", Work.HOURS, PiecePlan::timeAtVat),
            piece("sheet.mat", Work.SHEET, PiecePlan::matThickness),
            piece("sheet.couched-mass", Work.SHEET, PiecePlan::couchedMass),
            piece("vat.done", Work.VAT, piece -> piece.vatStage().isDone()),
            piece("vat.consistency", Work.VAT, piece -> piece.vatStage().map(VatPlan::consistency)),
            piece("vat.stock", Work.VAT, piece -> piece.vatStage().map(VatPlan::stock)),
            piece("vat.water", Work.VAT, piece -> piece.vatStage().map(VatPlan::water)),
            piece("vat.bail", Work.VAT, piece -> piece.vatStage().map(VatPlan::bail)),
            piece("vat.lift", Work.VAT, piece -> piece.vatStage().map(VatPlan::lift)),
            piece("vat.every", Work.VAT, piece -> piece.vatStage().map(VatPlan::every)),
            piece("vat.lightest", Work.VAT, piece -> piece.vatStage().map(VatPlan::lightest)),
            piece("vat.heaviest", Work.VAT, piece -> piece.vatStage().map(VatPlan::heaviest)),
            piece("vat.recharge.after", Work.VAT, each(GuardReadings::recharges, Recharge::afterSheet)),
            piece("vat.recharge.stock", Work.VAT, each(GuardReadings::recharges, Recharge::stock)),
            piece("vat.recharge.water", Work.VAT, each(GuardReadings::recharges, Recharge::water)),
            piece("vat.recharge.bail", Work.VAT, each(GuardReadings::recharges, Recharge::bail)),
            piece("vat.pour", Work.VAT, piece -> piece.pourStage().map(PourPlan::stock)),
            piece("post.done", Work.POST_AND_PRESS, piece -> piece.postsStage().isDone()),
            piece(
                    "post.sheets",
                    Work.POST_AND_PRESS,
                    piece -> piece.postsStage().map(PostsPlan::sheetsInPost)),
            piece(
                    "post.on-felt",
                    Work.POST_AND_PRESS,
                    piece -> piece.postsStage().map(PostsPlan::sheetsOnFelt)),
            piece("post.count", Work.POST_AND_PRESS, piece -> piece.postsStage().map(PostsPlan::posts)),
            piece("post.felts", Work.POST_AND_PRESS, piece -> piece.postsStage().map(PostsPlan::felts)),
            piece("post.mass", Work.POST_AND_PRESS, piece -> piece.postsStage().map(PostsPlan::mass)),
            piece(
                    "post.height",
                    Work.POST_AND_PRESS,
                    piece -> piece.postsStage().map(PostsPlan::height)),
            piece("press.done", Work.POST_AND_PRESS, piece -> piece.pressStage().isDone()),
            piece(
                    "press.force",
                    Work.POST_AND_PRESS,
                    piece -> piece.pressStage().map(PressingPlan::force)),
            piece(
                    "press.pressure",
                    Work.POST_AND_PRESS,
                    piece -> piece.pressStage().map(PressingPlan::pressure)),
            piece("press.area", Work.POST_AND_PRESS, piece -> piece.pressStage().map(PressingPlan::area)),
            piece(
                    "press.gauge",
                    Work.POST_AND_PRESS,
                    piece -> piece.pressStage().map(PressingPlan::gauge)),
            piece("press.pull", Work.POST_AND_PRESS, piece -> piece.pressStage().map(PressingPlan::pull)),
            piece(
                    "press.times",
                    Work.POST_AND_PRESS,
                    piece -> piece.pressStage().map(PressingPlan::times)),
            piece("press.time", Work.POST_AND_PRESS, piece -> piece.pressStage().map(PressingPlan::time)),
            piece(
                    "press.weakest",
                    Work.POST_AND_PRESS,
                    piece -> piece.pressStage()
                            .map(press -> press.press().parts().indexOf(press.weakest()))),
            piece(
                    "press.limited",
                    Work.POST_AND_PRESS,
                    piece -> piece.pressStage().map(PressingPlan::limited)),
            piece("press.solids", Work.POST_AND_PRESS, PiecePlan::solids),
            piece("drying.done", Work.DRYING, piece -> piece.dryingStage().isDone()),
            of(
                    "drying.dryer",
                    Work.DRYING,
                    at -> at.piece()
                            .dryingStage()
                            .map(drying -> at.plan().studio().dryers().indexOf(drying.dryer()))),
            piece("drying.loads", Work.DRYING, piece -> piece.dryingStage().map(DryingPlan::loads)),
            piece("drying.at-once", Work.DRYING, piece -> piece.dryingStage().map(DryingPlan::atOnce)),
            piece("drying.in-layer", Work.DRYING, piece -> piece.dryingStage().map(DryingPlan::inLayer)),
            piece(
                    "drying.blotter-changes",
                    Work.DRYING,
                    piece -> piece.dryingStage().map(DryingPlan::blotterChanges)),
            piece("drying.time", Work.DRYING, piece -> piece.dryingStage().map(DryingPlan::time)),
            piece("drying.left", Work.DRYING, piece -> piece.dryingStage().map(DryingPlan::left)),
            piece(
                    "drying.tighten",
                    Work.DRYING,
                    piece -> piece.dryingStage()
                            .map(drying -> drying.tighten().map(Amount::si).orElse(0.0))),
            piece("drying.water", Work.DRYING, piece -> piece.dryingStage().map(DryingPlan::water)),
            piece("size.done", Work.SIZE, piece -> piece.sizingStage().isDone()),
            piece("size.bath", Work.SIZE, piece -> piece.sizingStage().map(SizingPlan::bath)),
            piece("size.dry", Work.SIZE, piece -> piece.sizingStage().map(SizingPlan::drySize)),
            piece("size.taken", Work.SIZE, piece -> piece.sizingStage().map(SizingPlan::taken)),
            piece("size.gained", Work.SIZE, piece -> piece.sizingStage().map(SizingPlan::gained)),
            piece("size.dry-again", Work.SIZE, piece -> piece.sizingStage().map(SizingPlan::dryAgain)),
            piece("finish.width", Work.FINISH, piece -> piece.finished().width()),
            piece("finish.height", Work.FINISH, piece -> piece.finished().height()),
            piece("finish.folded-width", Work.FINISH, piece -> piece.finished().foldedWidth()),
            piece("finish.folded-height", Work.FINISH, piece -> piece.finished().foldedHeight()),
            piece("finish.grammage", Work.FINISH, piece -> piece.finished().grammage()),
            piece("finish.caliper", Work.FINISH, piece -> piece.finished().caliperStage()),
            piece("finish.mass", Work.FINISH, piece -> piece.finished().mass()),
            piece("finish.pile", Work.FINISH, piece -> piece.finished().pileStage()),
            piece(
                    "finish.shrinkage-along",
                    Work.FINISH,
                    piece -> piece.finished().shrinkageAlong()),
            piece(
                    "finish.shrinkage-across",
                    Work.FINISH,
                    piece -> piece.finished().shrinkageAcross()),
            piece("finish.load", Work.FINISH, piece -> piece.finished().load()),
            piece("envelope.done", Work.ENVELOPE, piece -> piece.envelopeStage().isDone()),
            piece(
                    "envelope.blank.width",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::blankWidth)),
            piece(
                    "envelope.blank.height",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::blankHeight)),
            piece(
                    "envelope.inside.width",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::insideWidth)),
            piece(
                    "envelope.inside.height",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::insideHeight)),
            piece(
                    "envelope.outside.width",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::outsideWidth)),
            piece(
                    "envelope.outside.height",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::outsideHeight)),
            piece("envelope.seam", Work.ENVELOPE, piece -> piece.envelopeStage().map(EnvelopePlan::seam)),
            piece(
                    "envelope.play-along",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::playAlong)),
            piece(
                    "envelope.play-across",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::playAcross)),
            piece(
                    "envelope.inside-dried.width",
                    Work.ENVELOPE,
                    onlyWhereThereIs(
                            piece -> piece.envelopeStage().optional().flatMap(EnvelopePlan::insideWidthDried))),
            piece(
                    "envelope.inside-dried.height",
                    Work.ENVELOPE,
                    onlyWhereThereIs(
                            piece -> piece.envelopeStage().optional().flatMap(EnvelopePlan::insideHeightDried))),
            piece(
                    "envelope.share-fit",
                    Work.ENVELOPE,
                    piece -> piece.envelopeStage().map(EnvelopePlan::sharePairsFit)),
            piece("mail.done", Work.MAIL, piece -> piece.mailStage().isDone()),
            piece("mail.mass", Work.MAIL, piece -> piece.mailStage().map(MailPlan::mass)),
            piece("mail.thickness", Work.MAIL, piece -> piece.mailStage().map(MailPlan::thickness)),
            piece(
                    "mail.service",
                    Work.MAIL,
                    piece -> piece.mailStage()
                            .map(mailed -> mailed.verdict()
                                    .service()
                                    .map(service -> MailLimits.of(mailed.country())
                                            .services()
                                            .indexOf(service)))),
            piece(
                    "mail.step",
                    Work.MAIL,
                    piece -> piece.mailStage().map(mailed -> mailed.verdict().step())),
            piece(
                    "mail.limits-broken",
                    Work.MAIL,
                    piece -> piece.mailStage()
                            .map(mailed -> mailed.verdict().failures().size())),
            piece("hours.piece", Work.HOURS, PiecePlan::workingHours));

    private GuardReadings() {}

    /** A piece and the plan it stands in. */
    record InPlan(MakingPlan plan, PiecePlan piece) {}

    private static List<CookingPlan.Pot> pots(BatchPlan batch) {
        return batch.cooking().map(CookingPlan::pots).orElse(List.of());
    }

    /** The batches and the pieces, for ids such as {@code piece[1].vat.stock}. */
    static List<BatchPlan> batches(MakingPlan plan) {
        return plan.batches();
    }

    static List<InPlan> pieces(MakingPlan plan) {
        return plan.pieces().stream().map(piece -> new InPlan(plan, piece)).toList();
    }

    // ------------------------------------------------------------------------------------------------ words

    static List<Notice> notices(MakingPlan plan) {
        return plan.notices();
    }

    static List<String> card(MakingPlan plan) {
        return MakingCard.of(plan).lines();
    }

    /** Every stage that may be missing, those within another with it. */
    static List<Stage<?>> stages(MakingPlan plan) {
        List<Stage<?>> stages = new ArrayList<>();
        plan.batches().forEach(batch -> stages.add(batch.beatingStage()));
        for (PiecePlan piece : plan.pieces()) {
            stages.addAll(List.of(
                    piece.vatStage(),
                    piece.pourStage(),
                    piece.drainTimeStage(),
                    piece.postsStage(),
                    piece.pressStage(),
                    piece.dryingStage(),
                    piece.sizingStage(),
                    piece.finished().caliperStage(),
                    piece.finished().pileStage(),
                    piece.envelopeStage(),
                    piece.mailStage()));
            piece.sizingStage().optional().ifPresent(sizing -> stages.add(sizing.dryAgain()));
        }
        return stages;
    }

    static List<String> labels(MakingPlan plan) {
        List<String> labels = new ArrayList<>();
        plan.toBuy().forEach(thing -> labels.add(thing.what() + " " + thing.why()));
        plan.schedule().steps().forEach(step -> labels.add(step.name()));
        plan.cautions().forEach(caution -> labels.add(caution.code() + " " + caution));
        plan.sensitivity()
                .forEach(one -> labels.add(one.assumption().key() + " " + one.widens() + " " + one.measurement()));
        plan.assumptionsUsed().stream().map(Assumption::key).sorted().forEach(labels::add);
        for (BatchPlan batch : plan.batches()) {
            for (Balance balance : batch.balances()) {
                labels.add(balance.substance() + " " + balance.in().keySet() + " "
                        + balance.out().keySet());
            }
        }
        for (PiecePlan piece : plan.pieces()) {
            piece.mailStage()
                    .optional()
                    .ifPresent(mailed -> labels.add(mailed.verdict().toString()));
        }
        GuardFigures.walk(plan, (work, id, given) -> {
            amounts(given, amount -> labels.add(id + " in " + amount.getUnit()));
            estimate(given)
                    .ifPresent(estimate -> estimate.drivers()
                            .forEach(driver ->
                                    labels.add(id + " by " + driver.assumption().key())));
        });
        labels.add(plan.toString());
        return labels;
    }

    // ------------------------------------------------------------------------------------------------ reading

    private static List<Recharge> recharges(PiecePlan piece) {
        return piece.vatStage().map(VatPlan::recharges).orElse(List.of());
    }

    private static List<Amount<?>> values(Map<String, ? extends Amount<?>> accounts) {
        return List.copyOf(accounts.values());
    }

    private static <S> Figure<S> of(String id, Work work, Function<S, ?> reader) {
        return new Figure<>(id, work, reader);
    }

    private static Figure<InPlan> piece(String id, Work work, Function<PiecePlan, ?> reader) {
        return new Figure<>(id, work, at -> reader.apply(at.piece()));
    }

    private static <S, E> Function<S, List<?>> each(Function<S, ? extends Collection<E>> list, Function<E, ?> reader) {
        return from -> list.apply(from).stream().map(reader).toList();
    }

    /** Values without the names they stand under: by size, so that the order of looking them up does not count. */
    private static <S, E> Function<S, List<?>> sorted(
            Function<S, ? extends Collection<E>> list, Function<E, Double> reader) {
        return from -> list.apply(from).stream().map(reader).sorted().toList();
    }

    /**
     * Turns what a reader gave into numbers in coherent SI. An estimate gives likely, low, high and, if it has one, its
     * scatter; a list gives those of its elements one after the other; a date its day number; what is not there, or a
     * stage that is not done, gives nothing.
     */
    static void numbers(Object given, DoubleConsumer to) {
        if (given instanceof Estimate<?> estimate) {
            to.accept(estimate.likely().si());
            to.accept(estimate.low().si());
            to.accept(estimate.high().si());
            estimate.scatter().ifPresent(to::accept);
        } else if (given instanceof Amount<?> amount) {
            to.accept(amount.si());
        } else if (given instanceof Number number) {
            to.accept(number.doubleValue());
        } else if (given instanceof Boolean yes) {
            to.accept(yes ? 1 : 0);
        } else if (given instanceof LocalDate date) {
            to.accept(date.toEpochDay());
        } else if (given instanceof Optional<?> optional) {
            optional.ifPresent(content -> numbers(content, to));
        } else if (given instanceof OptionalInt optional) {
            optional.ifPresent(to::accept);
        } else if (given instanceof OptionalDouble optional) {
            optional.ifPresent(to);
        } else if (given instanceof Stage<?> stage) {
            stage.optional().ifPresent(content -> numbers(content, to));
        } else if (given instanceof Collection<?> list) {
            list.forEach(element -> numbers(element, to));
        } else {
            throw new IllegalArgumentException("the guard cannot read " + given + " as a number");
        }
    }

    /** Reads what few plans have: the others have no such figure, not an empty one, so that they stay as they are. */
    private static <S> Function<S, Object> onlyWhereThereIs(Function<S, Optional<?>> reader) {
        return from -> reader.apply(from).<Object>map(content -> content).orElse(null);
    }

    /** Hands on every amount within what a reader gave; of an estimate the likely one. */
    private static void amounts(Object given, Consumer<Amount<?>> to) {
        if (given instanceof Estimate<?> estimate) {
            to.accept(estimate.likely());
        } else if (given instanceof Amount<?> amount) {
            to.accept(amount);
        } else if (given instanceof Optional<?> optional) {
            optional.ifPresent(content -> amounts(content, to));
        } else if (given instanceof Stage<?> stage) {
            stage.optional().ifPresent(content -> amounts(content, to));
        } else if (given instanceof Collection<?> list) {
            list.forEach(element -> amounts(element, to));
        }
    }

    /** Returns the estimate within what a reader gave, if there is one. */
    static Optional<Estimate<?>> estimate(Object given) {
        if (given instanceof Estimate<?> estimate) {
            return Optional.of(estimate);
        }
        if (given instanceof Optional<?> optional) {
            return optional.flatMap(GuardReadings::estimate);
        }
        return given instanceof Stage<?> stage ? stage.optional().flatMap(GuardReadings::estimate) : Optional.empty();
    }
}
