package org.papermath.json;

import org.papermath.plan.PiecePlan;
import org.papermath.mail.MailLimits;

/** What a plan says of a piece. Only written. */
final class PlanPieceMapping {
    private PlanPieceMapping() {
    }

    static void write(ObjectOut out, PiecePlan piece) {
        out.member("name").text(piece.name());
        out.member("batch").text(piece.batch());
        out.member("counts").object(in -> counts(in, piece.counts()));
        out.member("forming").object(in -> forming(in, piece.forming()));
        PlanMapping.stageOf(out.member("vat"), piece.vatStage(), PlanPieceMapping::vat);
        PlanMapping.stageOf(out.member("pour"), piece.pourStage(),
                (in, pour) -> in.member("stock").figure(pour.stock()));
        PlanMapping.stage(out.member("drainTime"), piece.drainTimeStage(), PlanMapping::forecast);
        PlanMapping.forecast(out.member("matThickness"), piece.matThickness());
        PlanMapping.forecast(out.member("couchedMass"), piece.couchedMass());
        PlanMapping.stageOf(out.member("posts"), piece.postsStage(), PlanPieceMapping::posts);
        PlanMapping.stageOf(out.member("press"), piece.pressStage(), PlanPieceMapping::press);
        PlanMapping.forecast(out.member("solids"), piece.solids());
        PlanMapping.stageOf(out.member("drying"), piece.dryingStage(), PlanPieceMapping::drying);
        PlanMapping.stageOf(out.member("sizing"), piece.sizingStage(), (in, sizing) -> {
            in.member("bath").figure(sizing.bath());
            in.member("drySize").figure(sizing.drySize());
            in.member("taken").figure(sizing.taken());
            PlanMapping.forecast(in.member("gained"), sizing.gained());
            PlanMapping.stage(in.member("dryAgain"), sizing.dryAgain(), PlanMapping::forecast);
        });
        out.member("finished").object(in -> finished(in, piece.finished()));
        PlanMapping.stageOf(out.member("envelope"), piece.envelopeStage(), PlanPieceMapping::envelope);
        PlanMapping.stageOf(out.member("mailed"), piece.mailStage(), PlanPieceMapping::mailed);
        PlanMapping.forecast(out.member("workingHours"), piece.workingHours());
    }

    private static void counts(ObjectOut out, PiecePlan.Counts counts) {
        out.member("ordered").count(counts.ordered());
        out.member("wanted").count(counts.wanted());
        out.member("perSheet").count(counts.perSheet());
        out.member("sheets").count(counts.sheets());
        out.member("trials").count(counts.trials());
        PlanMapping.forecast(out.member("good"), counts.good());
    }

    private static void forming(ObjectOut out, PiecePlan.Forming forming) {
        forming.mould().ifPresent(mould -> out.member("mould").text(mould.name()));
        out.member("deckleToMake").flag(forming.deckleToMake());
        PlanMapping.sides(out.member("opening"), forming.opening().width(), forming.opening().height());
        out.member("perSheet").count(forming.perSheet());
        out.member("turned").flag(forming.turned());
        out.member("fibre").figure(forming.fibre());
        out.member("solids").figure(forming.solids());
    }

    private static void vat(ObjectOut out, PiecePlan.VatPlan vat) {
        out.member("consistency").figure(vat.consistency());
        out.member("stock").figure(vat.stock());
        out.member("water").figure(vat.water());
        out.member("bail").figure(vat.bail());
        out.member("lift").figure(vat.lift());
        out.member("every").count(vat.every());
        PlanMapping.objects(out, "recharges", vat.recharges(), (in, recharge) -> {
            in.member("afterSheet").count(recharge.afterSheet());
            in.member("stock").figure(recharge.stock());
            in.member("water").figure(recharge.water());
            in.member("bail").figure(recharge.bail());
        });
        out.member("lightest").figure(vat.lightest());
        out.member("heaviest").figure(vat.heaviest());
    }

    private static void posts(ObjectOut out, PiecePlan.Posts posts) {
        out.member("sheetsInPost").count(posts.sheetsInPost());
        out.member("posts").count(posts.posts());
        out.member("felts").count(posts.felts());
        PlanMapping.forecast(out.member("mass"), posts.mass());
        PlanMapping.forecast(out.member("height"), posts.height());
    }

    private static void press(ObjectOut out, PiecePlan.Pressing press) {
        out.member("press").text(press.press().name());
        out.member("force").figure(press.force());
        out.member("pressure").figure(press.pressure());
        out.member("time").figure(press.time());
        out.member("weakestPart").text(press.weakest().name());
        out.member("limited").flag(press.limited());
    }

    private static void drying(ObjectOut out, PiecePlan.Drying drying) {
        out.member("dryer").text(drying.dryer().name());
        out.member("loads").count(drying.loads());
        out.member("blotterChanges").count(drying.blotterChanges());
        PlanMapping.forecast(out.member("time"), drying.time());
        PlanMapping.forecast(out.member("water"), drying.water());
    }

    private static void finished(ObjectOut out, PiecePlan.Finished finished) {
        PlanMapping.forecast(out.member("width"), finished.width());
        PlanMapping.forecast(out.member("height"), finished.height());
        PlanMapping.sides(out.member("folded"), finished.foldedWidth(), finished.foldedHeight());
        PlanMapping.forecast(out.member("grammage"), finished.grammage());
        PlanMapping.stage(out.member("caliper"), finished.caliperStage(), PlanMapping::forecast);
        PlanMapping.forecast(out.member("mass"), finished.mass());
        PlanMapping.stage(out.member("pile"), finished.pileStage(), PlanMapping::forecast);
        PlanMapping.forecast(out.member("shrinkageAlong"), finished.shrinkageAlong());
        PlanMapping.forecast(out.member("shrinkageAcross"), finished.shrinkageAcross());
        out.member("load").figure(finished.load());
    }

    private static void envelope(ObjectOut out, PiecePlan.EnvelopePlan envelope) {
        out.member("style").text(envelope.style().words());
        PlanMapping.sides(out.member("blank"), envelope.blankWidth(), envelope.blankHeight());
        PlanMapping.sides(out.member("inside"), envelope.insideWidth(), envelope.insideHeight());
        PlanMapping.sides(out.member("outside"), envelope.outsideWidth(), envelope.outsideHeight());
        out.member("seam").figure(envelope.seam());
        PlanMapping.forecast(out.member("playAlong"), envelope.playAlong());
        PlanMapping.forecast(out.member("playAcross"), envelope.playAcross());
        out.member("sharePairsFit").figure(envelope.sharePairsFit());
    }

    private static void mailed(ObjectOut out, PiecePlan.Mailed mailed) {
        MailLimits.Verdict verdict = mailed.verdict();
        out.member("country").text(mailed.country());
        PlanMapping.forecast(out.member("mass"), mailed.mass());
        PlanMapping.forecast(out.member("thickness"), mailed.thickness());
        verdict.service().ifPresent(service -> out.member("service").text(service));
        verdict.step().ifPresent(step -> out.member("step").count(step));
        out.member("failures").list(verdict.failures(), (item, failure) -> item.text(failure.toString()));
        PlanMapping.objects(out, "notices", verdict.notices(), PlanMapping::notice);
    }
}
