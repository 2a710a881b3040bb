package org.papermath.json.mapping;

import org.papermath.json.kit.ObjectWriter;
import org.papermath.mail.MailLimits;
import org.papermath.plan.PiecePlan;

/** What a plan says of a piece. Only written. */
final class PlanPieceMapping {
    private PlanPieceMapping() {}

    static void write(ObjectWriter out, PiecePlan piece) {
        out.member("name").text(piece.name());
        out.member("batch").text(piece.batch());
        out.member("counts").object(in -> counts(in, piece.counts()));
        out.member("forming").object(in -> forming(in, piece.forming()));
        PlanFigures.stageOf(out.member("vat"), piece.vatStage(), PlanPieceMapping::vat);
        PlanFigures.stageOf(
                out.member("pour"),
                piece.pourStage(),
                (in, pour) -> in.member("stock").figure(pour.stock()));
        PlanFigures.stage(out.member("drainTime"), piece.drainTimeStage(), PlanFigures::forecast);
        PlanFigures.forecast(out.member("matThickness"), piece.matThickness());
        PlanFigures.forecast(out.member("couchedMass"), piece.couchedMass());
        PlanFigures.stageOf(out.member("posts"), piece.postsStage(), PlanPieceMapping::posts);
        PlanFigures.stageOf(out.member("press"), piece.pressStage(), PlanPieceMapping::press);
        PlanFigures.forecast(out.member("solids"), piece.solids());
        PlanFigures.stageOf(out.member("drying"), piece.dryingStage(), PlanPieceMapping::drying);
        PlanFigures.stageOf(out.member("sizing"), piece.sizingStage(), (in, sizing) -> {
            in.member("bath").figure(sizing.bath());
            in.member("drySize").figure(sizing.drySize());
            in.member("taken").figure(sizing.taken());
            PlanFigures.forecast(in.member("gained"), sizing.gained());
            PlanFigures.stage(in.member("dryAgain"), sizing.dryAgain(), PlanFigures::forecast);
        });
        out.member("finished").object(in -> finished(in, piece.finished()));
        PlanFigures.stageOf(out.member("envelope"), piece.envelopeStage(), PlanPieceMapping::envelope);
        PlanFigures.stageOf(out.member("mailed"), piece.mailStage(), PlanPieceMapping::mailed);
        PlanFigures.forecast(out.member("workingHours"), piece.workingHours());
    }

    private static void counts(ObjectWriter out, PiecePlan.Counts counts) {
        out.member("ordered").count(counts.ordered());
        out.member("wanted").count(counts.wanted());
        out.member("perSheet").count(counts.perSheet());
        out.member("sheets").count(counts.sheets());
        out.member("trials").count(counts.trials());
        PlanFigures.forecast(out.member("good"), counts.good());
    }

    private static void forming(ObjectWriter out, PiecePlan.Forming forming) {
        forming.mould().ifPresent(mould -> out.member("mould").text(mould.name()));
        out.member("deckleToMake").flag(forming.deckleToMake());
        PlanFigures.sides(
                out.member("opening"),
                forming.opening().width(),
                forming.opening().height());
        out.member("perSheet").count(forming.perSheet());
        out.member("turned").flag(forming.turned());
        out.member("fibre").figure(forming.fibre());
        out.member("solids").figure(forming.solids());
    }

    private static void vat(ObjectWriter out, PiecePlan.VatPlan vat) {
        out.member("consistency").figure(vat.consistency());
        out.member("stock").figure(vat.stock());
        out.member("water").figure(vat.water());
        out.member("bail").figure(vat.bail());
        out.member("lift").figure(vat.lift());
        out.member("every").count(vat.every());
        PlanFigures.objects(out, "recharges", vat.recharges(), (in, recharge) -> {
            in.member("afterSheet").count(recharge.afterSheet());
            in.member("stock").figure(recharge.stock());
            in.member("water").figure(recharge.water());
            in.member("bail").figure(recharge.bail());
        });
        out.member("lightest").figure(vat.lightest());
        out.member("heaviest").figure(vat.heaviest());
    }

    private static void posts(ObjectWriter out, PiecePlan.Posts posts) {
        out.member("sheetsInPost").count(posts.sheetsInPost());
        out.member("posts").count(posts.posts());
        out.member("felts").count(posts.felts());
        PlanFigures.forecast(out.member("mass"), posts.mass());
        PlanFigures.forecast(out.member("height"), posts.height());
    }

    private static void press(ObjectWriter out, PiecePlan.Pressing press) {
        out.member("press").text(press.press().name());
        out.member("force").figure(press.force());
        out.member("pressure").figure(press.pressure());
        out.member("time").figure(press.time());
        out.member("weakestPart").text(press.weakest().name());
        out.member("limited").flag(press.limited());
    }

    private static void drying(ObjectWriter out, PiecePlan.Drying drying) {
        out.member("dryer").text(drying.dryer().name());
        out.member("loads").count(drying.loads());
        out.member("blotterChanges").count(drying.blotterChanges());
        PlanFigures.forecast(out.member("time"), drying.time());
        PlanFigures.forecast(out.member("water"), drying.water());
    }

    private static void finished(ObjectWriter out, PiecePlan.Finished finished) {
        PlanFigures.forecast(out.member("width"), finished.width());
        PlanFigures.forecast(out.member("height"), finished.height());
        PlanFigures.sides(out.member("folded"), finished.foldedWidth(), finished.foldedHeight());
        PlanFigures.forecast(out.member("grammage"), finished.grammage());
        PlanFigures.stage(out.member("caliper"), finished.caliperStage(), PlanFigures::forecast);
        PlanFigures.forecast(out.member("mass"), finished.mass());
        PlanFigures.stage(out.member("pile"), finished.pileStage(), PlanFigures::forecast);
        PlanFigures.forecast(out.member("shrinkageAlong"), finished.shrinkageAlong());
        PlanFigures.forecast(out.member("shrinkageAcross"), finished.shrinkageAcross());
        out.member("load").figure(finished.load());
    }

    private static void envelope(ObjectWriter out, PiecePlan.EnvelopePlan envelope) {
        out.member("style").text(envelope.style().words());
        PlanFigures.sides(out.member("blank"), envelope.blankWidth(), envelope.blankHeight());
        PlanFigures.sides(out.member("inside"), envelope.insideWidth(), envelope.insideHeight());
        PlanFigures.sides(out.member("outside"), envelope.outsideWidth(), envelope.outsideHeight());
        out.member("seam").figure(envelope.seam());
        PlanFigures.forecast(out.member("playAlong"), envelope.playAlong());
        PlanFigures.forecast(out.member("playAcross"), envelope.playAcross());
        out.member("sharePairsFit").figure(envelope.sharePairsFit());
    }

    private static void mailed(ObjectWriter out, PiecePlan.Mailed mailed) {
        MailLimits.Verdict verdict = mailed.verdict();
        out.member("country").text(mailed.country());
        PlanFigures.forecast(out.member("mass"), mailed.mass());
        PlanFigures.forecast(out.member("thickness"), mailed.thickness());
        verdict.service().ifPresent(service -> out.member("service").text(service));
        verdict.step().ifPresent(step -> out.member("step").count(step));
        out.member("failures").list(verdict.failures(), (item, failure) -> item.text(failure.toString()));
        PlanFigures.objects(out, "notices", verdict.notices(), PlanFigures::notice);
    }
}
