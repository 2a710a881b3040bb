package org.papermath.json.mapping;

import static org.papermath.json.mapping.PlanFigures.COUNT;
import static org.papermath.json.mapping.PlanFigures.FLAG;
import static org.papermath.json.mapping.PlanFigures.NOTICES;
import static org.papermath.json.mapping.PlanFigures.SIDES;
import static org.papermath.json.mapping.PlanFigures.TEXT;
import static org.papermath.json.mapping.PlanFigures.TEXTS;
import static org.papermath.json.mapping.PlanFigures.band;
import static org.papermath.json.mapping.PlanFigures.list;
import static org.papermath.json.mapping.PlanFigures.set;
import static org.papermath.json.mapping.PlanFigures.stage;

import java.util.List;
import java.util.Map;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.FinishedPiece;
import org.papermath.plan.FormingPlan;
import org.papermath.plan.MailPlan;
import org.papermath.plan.PieceCounts;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.PostsPlan;
import org.papermath.plan.PourPlan;
import org.papermath.plan.PressingPlan;
import org.papermath.plan.ShapedDeckle;
import org.papermath.plan.SizingPlan;
import org.papermath.plan.VatPlan;
import org.papermath.plan.VatPlan.Recharge;
import org.papermath.quantity.Kinds;
import org.papermath.shape.Outline;

/** What a plan states of a piece. */
final class PlanPieceMembers {
    private static final Members<PieceCounts> COUNTS = Members.<PieceCounts>of("How many of what.")
            .has("ordered", COUNT, PieceCounts::ordered)
            .says("Pieces ordered.", 70)
            .has("wanted", COUNT, PieceCounts::wanted)
            .says("Good pieces to make, the spare and the kept ones with them.", 79)
            .has("perSheet", COUNT, PieceCounts::perSheet)
            .says("Pieces on a sheet.", 2)
            .has("sheets", COUNT, PieceCounts::sheets)
            .says("Sheets to pull, the trials with them.", 53)
            .has("trials", COUNT, PieceCounts::trials)
            .says("Trial sheets.", 5)
            .has("good", band(Kinds.NUMBER), PieceCounts::good)
            .says("Good pieces that come out; the scatter is what chance does to the count.")
            .mayHave("chanceOfEnough", set(Kinds.SHARE), PieceCounts::chanceOfEnough)
            .says(
                    "How likely as many good pieces as ordered come out. Left out where nothing is known of rejects.",
                    "96 %");

    private static final Sort<Outline> CORNERS = Sort.of(
            Map.of("title", "corners, each by its place across and along"),
            outline -> list(SIDES)
                    .form(outline.corners().stream()
                            .map(corner -> List.of(corner.across(), corner.along()))
                            .toList()));

    private static final Members<ShapedDeckle> SHAPED = Members.<ShapedDeckle>of(
                    "The openings of a deckle cut to the outline of the piece, as they lie on the mould.")
            .has("outline", CORNERS, ShapedDeckle::outline)
            .says(
                    "One opening, in which the pulp settles: the shrinkage is taken in.",
                    List.of(List.of("0 mm", "0 mm"), List.of("82 mm", "0 mm"), List.of("41 mm", "82 mm")))
            .has("finished", CORNERS, ShapedDeckle::finished)
            .says(
                    "What dries of it.",
                    List.of(List.of("0 mm", "0 mm"), List.of("80 mm", "0 mm"), List.of("40 mm", "80 mm")))
            .has("across", COUNT, ShapedDeckle::across)
            .says("How many openings lie side by side.", 2)
            .has("along", COUNT, ShapedDeckle::along)
            .says("How many lie one behind the other.", 3)
            .has("strip", set(Kinds.LENGTH), ShapedDeckle::strip)
            .says("How far apart they are, where they come nearest in a row.", "10 mm")
            .has("area", set(Kinds.AREA), ShapedDeckle::area)
            .says("The area of them all.", "202 cm2");

    private static final Members<FormingPlan> FORMING = Members.<FormingPlan>of("The mould and the sheet.")
            .mayHave("mould", TEXT, forming -> forming.mould().map(Mould::name))
            .says("The name of the mould. Left out if none of the studio will do.", "octavo")
            .has("deckleToMake", FLAG, FormingPlan::deckleToMake)
            .says("Whether a deckle with this opening has to be made.", false)
            .has(
                    "opening",
                    SIDES,
                    forming ->
                            List.of(forming.opening().width(), forming.opening().height()))
            .says(
                    "The two sides inside the deckle; of a shaped or split one all its openings over all.",
                    List.of("240 mm", "310 mm"))
            .mayHave("shaped", SHAPED, FormingPlan::shapedDeckle)
            .says(
                    "Its openings, where the piece is formed to its outline, or several of it in a deckle that is split. Left out"
                            + " for a single opening with four sides.")
            .has("perSheet", COUNT, FormingPlan::perSheet)
            .says("Pieces on a sheet.", 2)
            .has("turned", FLAG, FormingPlan::turned)
            .says("Whether the pieces lie turned on it.", true)
            .has("fibre", set(Kinds.MASS), FormingPlan::fibre)
            .says("Oven-dry fibre of a sheet.", "8.728 g")
            .has("solids", set(Kinds.MASS), FormingPlan::solids)
            .says("Oven-dry fibre and all that stays with it.", "9.091 g")
            .mayHave("otherMould", TEXT, FormingPlan::otherMould)
            .says(
                    "The next best mould or number of openings, and what it would take. Only where there is one.",
                    "half: 0.4 h less at the vat, 31 % more fibre");

    private static final Members<Recharge> RECHARGE = Members.<Recharge>of("A recharge.")
            .has("afterSheet", COUNT, Recharge::afterSheet)
            .says("After which sheet.", 4)
            .has("strained", set(Kinds.VOLUME), Recharge::strained)
            .says("Water to strain out, where the vat is run down; the fibre goes back.", "0 L")
            .has("pail", set(Kinds.VOLUME), Recharge::pail)
            .says("What to give first of the pail the vat was let down into.", "0 L")
            .has("stock", set(Kinds.VOLUME), Recharge::stock)
            .says("Stock to add.", "2.5 L")
            .has("water", set(Kinds.VOLUME), Recharge::water)
            .says("Water to add.", "0 L")
            .has("bail", set(Kinds.VOLUME), Recharge::bail)
            .says("White water to take out through a sieve, unless the studio has none.", "2.3 L");

    private static final Members<VatPlan> VAT = Members.<VatPlan>of("How the vat is worked.")
            .has("consistency", set(Kinds.CONSISTENCY), VatPlan::consistency)
            .says("What it is held at, on the mean.", "0.5 %")
            .has("why", TEXT, VatPlan::why)
            .says("Why it is made so thick.", "so that the dip is about as deep as usual")
            .has("bounded", FLAG, VatPlan::bounded)
            .says("Whether a bound made it so, and the dip is not as deep as usual.", false)
            .has("turn", COUNT, VatPlan::turn)
            .says("The place among the pieces of its recipe in which it is formed.", 1)
            .has("dips", COUNT, VatPlan::dips)
            .says("Dips a sheet is built up of.", 1)
            .has("dipDepth", set(Kinds.LENGTH), VatPlan::dipDepth)
            .says("Depth of stock on the mould for each dip.", "21 mm")
            .has("letDown", set(Kinds.VOLUME), VatPlan::letDown)
            .says("What to take out into a pail before the first sheet, so that water lets the vat down.", "0 L")
            .has("pail", set(Kinds.VOLUME), VatPlan::pail)
            .says("What to give back of the pail before the first sheet.", "0 L")
            .has("stock", set(Kinds.VOLUME), VatPlan::stock)
            .says("Stock into the vat before the first sheet.", "25.88 L")
            .has("water", set(Kinds.VOLUME), VatPlan::water)
            .says("Water into the vat before the first sheet.", "44.1 L")
            .has("bail", set(Kinds.VOLUME), VatPlan::bail)
            .says("White water to take out before that.", "0 L")
            .has("lift", set(Kinds.MASS), VatPlan::lift)
            .says("Stock lifted on the mould for each dip.", "1.79 kg")
            .has("every", COUNT, VatPlan::every)
            .says("Sheets from one recharge to the next.", 4)
            .has("recharges", list(RECHARGE), VatPlan::recharges)
            .says("Each recharge.")
            .has("lightest", set(Kinds.NUMBER), VatPlan::lightest)
            .says("The lightest sheet of the run over the mean one.", "96.2 %")
            .has("heaviest", set(Kinds.NUMBER), VatPlan::heaviest)
            .says("The heaviest sheet of the run over the mean one.", "103.7 %");

    private static final Members<PourPlan> POUR = Members.<PourPlan>of("What is poured.")
            .has("stock", set(Kinds.VOLUME), PourPlan::stock)
            .says("Stock for one sheet.", "1.8 L");

    private static final Members<PostsPlan> POSTS = Members.<PostsPlan>of("The posts.")
            .has("sheetsInPost", COUNT, PostsPlan::sheetsInPost)
            .says("Sheets in a post.", 10)
            .has("sheetsOnFelt", COUNT, PostsPlan::sheetsOnFelt)
            .says("Sheets side by side on one felt.", 4)
            .has("posts", COUNT, PostsPlan::posts)
            .says("How many posts.", 6)
            .has("felts", COUNT, PostsPlan::felts)
            .says("Felts in a post.", 11)
            .has("mass", band(Kinds.MASS), PostsPlan::mass)
            .says("What a post weighs, with its wet felts.")
            .has("height", band(Kinds.LENGTH), PostsPlan::height)
            .says("How high it is before pressing.");

    private static final Members<PressingPlan> PRESS = Members.<PressingPlan>of("The setting of the press.")
            .has("press", TEXT, pressing -> pressing.press().name())
            .says("The name of the press.", "the long press")
            .has("force", set(Kinds.FORCE), PressingPlan::force)
            .says("The load to set.", "29.5 kN")
            .mayHave("gauge", set(Kinds.GAUGE_PRESSURE), PressingPlan::gauge)
            .says("What the gauge then shows. Only of a press whose ram is known.", "10.4 MPa")
            .mayHave("pull", set(Kinds.FORCE), PressingPlan::pull)
            .says("What each at the lever then pulls. Only of a press whose screw is known.", "180 N")
            .has("pressure", set(Kinds.SHEET_PRESSURE), PressingPlan::pressure)
            .says("What that is on the sheets, not on the felts.", "396.5 kPa")
            .has("area", set(Kinds.AREA), PressingPlan::area)
            .says("The wet sheets of one felt, as far as the platen covers them; the pressure is on them.", "0.0744 m2")
            .has("times", COUNT, PressingPlan::times)
            .says("How often a post is pressed, its felts exchanged in between.", 1)
            .has("time", set(Kinds.TIME), PressingPlan::time)
            .says("How long it is held each time.", "15 min")
            .has("weakestPart", TEXT, pressing -> pressing.weakest().name())
            .says("The part that bears least.", "frame")
            .has("limited", FLAG, PressingPlan::limited)
            .says("Whether that part held the load down.", false);

    private static final Members<DryingPlan> DRYING = Members.<DryingPlan>of("The drying.")
            .has("dryer", TEXT, drying -> drying.dryer().name())
            .says("The name of the dryer.", "the boards")
            .has("loads", COUNT, DryingPlan::loads)
            .says("How often it is filled.", 3)
            .has("atOnce", COUNT, DryingPlan::atOnce)
            .says("How many sheets dry at once.", 24)
            .has("inLayer", COUNT, DryingPlan::inLayer)
            .says("How many lie side by side in one layer.", 1)
            .has("blotterChanges", COUNT, DryingPlan::blotterChanges)
            .says("Changes of blotters; 0 for other dryers.", 0)
            .has("time", band(Kinds.TIME), DryingPlan::time)
            .says("After how long one filling is dry.")
            .has("left", set(Kinds.TIME), DryingPlan::left)
            .says("How long one filling is left in the dryer; in a stack or a loft a day or more by habit.", "24 h")
            .mayHave("tighten", set(Kinds.TIME), DryingPlan::tighten)
            .says("When the straps or weights of a stack are drawn tight once more. Only if it has a weight.", "5 h")
            .has("water", band(Kinds.MASS), DryingPlan::water)
            .says("Water that all the sheets give off.");

    private static final Members<SizingPlan> SIZING = Members.<SizingPlan>of("The size bath.")
            .has("bath", set(Kinds.VOLUME), SizingPlan::bath)
            .says("Bath to make.", "2.4 L")
            .has("drySize", set(Kinds.MASS), SizingPlan::drySize)
            .says("Dry size to weigh for it.", "72 g")
            .has("taken", set(Kinds.VOLUME), SizingPlan::taken)
            .says("What the sheets take up of it.", "0.6 L")
            .has("gained", band(Kinds.NUMBER), SizingPlan::gained)
            .says("Dry size over the oven-dry sheet.")
            .has("dryAgain", stage(band(Kinds.TIME)), SizingPlan::dryAgain)
            .says("How long one filling of the dryer takes after sizing.");

    private static final Members<FinishedPiece> FINISHED = Members.<FinishedPiece>of(
                    "What comes out, in the air the order is weighed in.")
            .has("width", band(Kinds.LENGTH), FinishedPiece::width)
            .says("One side of the flat piece.")
            .has("height", band(Kinds.LENGTH), FinishedPiece::height)
            .says("Its other side.")
            .has("folded", SIDES, piece -> List.of(piece.foldedWidth(), piece.foldedHeight()))
            .says("The two sides after folding.", List.of("148 mm", "105 mm"))
            .has("grammage", band(Kinds.GRAMMAGE), FinishedPiece::grammage)
            .says("Its grammage.")
            .has("caliper", stage(band(Kinds.LENGTH)), FinishedPiece::caliperStage)
            .says("The thickness of one layer.")
            .has("mass", band(Kinds.MASS), FinishedPiece::mass)
            .says("What one piece weighs.")
            .has("pile", stage(band(Kinds.LENGTH)), FinishedPiece::pileStage)
            .says("How high all the pieces stack, folded.")
            .has("shrinkageAlong", band(Kinds.LINEAR_SHRINKAGE), FinishedPiece::shrinkageAlong)
            .says("Shrinkage along the mould.")
            .has("shrinkageAcross", band(Kinds.LINEAR_SHRINKAGE), FinishedPiece::shrinkageAcross)
            .says("Shrinkage across the mould.")
            .has("load", set(Kinds.NUMBER), FinishedPiece::load)
            .says("Additives that stayed, over fibre.", "4.28 %")
            .mayHave("insideTolerance", set(Kinds.SHARE), FinishedPiece::insideTolerance)
            .says(
                    "The share of single pieces whose grammage is inside what is agreed. Left out where none was ordered.",
                    "86 %");

    private static final Members<EnvelopePlan> ENVELOPE = Members.<EnvelopePlan>of("The envelope.")
            .has("style", TEXT, envelope -> envelope.style().words())
            .says("How it is folded.", "side seam")
            .has("blank", SIDES, envelope -> List.of(envelope.blankWidth(), envelope.blankHeight()))
            .says("The two sides of the flat blank.", List.of("189 mm", "274.4 mm"))
            .has("inside", SIDES, envelope -> List.of(envelope.insideWidth(), envelope.insideHeight()))
            .says("Its two sides inside.", List.of("154.8 mm", "111.8 mm"))
            .has("outside", SIDES, envelope -> List.of(envelope.outsideWidth(), envelope.outsideHeight()))
            .says("Its two sides outside.", List.of("155.2 mm", "112.2 mm"))
            .has("seam", set(Kinds.LENGTH), EnvelopePlan::seam)
            .says("The overlap that is glued.", "17 mm")
            .has("playAlong", band(Kinds.LENGTH), EnvelopePlan::playAlong)
            .says("How much longer it is inside than what goes in; below zero that does not go in.")
            .has("playAcross", band(Kinds.LENGTH), EnvelopePlan::playAcross)
            .says("The same the other way.")
            .has("sharePairsFit", set(Kinds.NUMBER), EnvelopePlan::sharePairsFit)
            .says("Of single pieces and envelopes taken at random, how many pairs fit.", "100 %")
            .mayHave("dampGrowthAlong", set(Kinds.LENGTH), EnvelopePlan::dampGrowthAlong)
            .says("By how much what goes in is longer along the width, if it comes out of damp air.", "0.3 mm")
            .mayHave("dampGrowthAcross", set(Kinds.LENGTH), EnvelopePlan::dampGrowthAcross)
            .says("The same along the height. Both left out where nothing is known of its moisture in air.", "0.2 mm")
            .mayHave("sharePairsFitDamp", set(Kinds.NUMBER), EnvelopePlan::sharePairsFitDamp)
            .says("The share of pairs that fit while what goes in is damp.", "99 %")
            .mayHave("insideWidthDried", band(Kinds.LENGTH), EnvelopePlan::insideWidthDried)
            .says("The first side inside, as it comes out of a blank that is formed to its outline and shrinks with its"
                    + " sheet. Left out if the blank is cut.")
            .mayHave("insideHeightDried", band(Kinds.LENGTH), EnvelopePlan::insideHeightDried)
            .says("The same of the other side.");

    private static final Members<MailPlan> MAILED = Members.<MailPlan>of("What is mailed.")
            .has("country", TEXT, MailPlan::country)
            .says("The country.", "United States")
            .has("mass", band(Kinds.MASS), MailPlan::mass)
            .says("What it weighs.")
            .has("thickness", band(Kinds.LENGTH), MailPlan::thickness)
            .says("How thick it is.")
            .mayHave("service", TEXT, mailed -> mailed.verdict().service())
            .says("The service that takes it. Left out if none does.", "letter")
            .mayHave("step", COUNT, mailed -> PlanFigures.boxed(mailed.verdict().step()))
            .says("The weight step of that service. Left out if none takes it.", 1)
            .has("sameVerdict", set(Kinds.SHARE), MailPlan::sameVerdict)
            .says("The share of single letters that goes by that service and step.", "98 %")
            .has(
                    "failures",
                    TEXTS,
                    mailed -> mailed.verdict().failures().stream()
                            .map(MailLimits.Failure::toString)
                            .toList())
            .says(
                    "Limits that are broken, in words.",
                    List.of("postcard: thickness 1.029 mm is 0.622 mm over the limit of 0.406 mm"))
            .has("notices", NOTICES, mailed -> mailed.verdict().notices())
            .says("What to mind.");

    static final Members<PiecePlan> PIECE = Members.<PiecePlan>of("What is done for one piece, and what comes out.")
            .has("name", TEXT, PiecePlan::name)
            .says("The name of the piece.", "programme")
            .has("batch", TEXT, PiecePlan::batch)
            .says("The recipe of its batch.", "tide grey")
            .has("counts", COUNTS, PiecePlan::counts)
            .says("How many of what.")
            .has("forming", FORMING, PiecePlan::forming)
            .says("The mould and the sheet.")
            .has("vat", stage(VAT), PiecePlan::vatStage)
            .says("How the vat is charged and recharged, or why there is none.")
            .has("pour", stage(POUR), PiecePlan::pourStage)
            .says("What is poured for each sheet in a studio without a vat, or why nothing is.")
            .has("drainTime", stage(band(Kinds.TIME)), PiecePlan::drainTimeStage)
            .says("How long a sheet drains until its sheen is gone.")
            .has("timeAtVat", band(Kinds.TIME), PiecePlan::timeAtVat)
            .says(
                    "How long all its sheets take at the vat: what hands need, or what the moulds need where that is longer.")
            .has("sheetsADay", band(Kinds.NUMBER), PiecePlan::sheetsADay)
            .says("Sheets a working day at the vat gives, with nothing else done in it.")
            .has("matThickness", band(Kinds.LENGTH), PiecePlan::matThickness)
            .says("How thick the wet sheet is.")
            .has("couchedMass", band(Kinds.MASS), PiecePlan::couchedMass)
            .says("What a couched sheet weighs: put one on the scale.")
            .has("posts", stage(POSTS), PiecePlan::postsStage)
            .says("How the posts are laid, or why there are none.")
            .has("press", stage(PRESS), PiecePlan::pressStage)
            .says("How the press is set, or why there is none.")
            .has("solids", band(Kinds.SOLIDS), PiecePlan::solids)
            .says("Oven-dry mass over wet mass of a sheet that goes to dry.")
            .has("drying", stage(DRYING), PiecePlan::dryingStage)
            .says("How the sheets dry, or why that is not planned.")
            .has("sizing", stage(SIZING), PiecePlan::sizingStage)
            .says("The size bath, or why there is none.")
            .has("finished", FINISHED, PiecePlan::finished)
            .says("What comes out.")
            .has("envelope", stage(ENVELOPE), PiecePlan::envelopeStage)
            .says("The blank and the fit, if the piece is an envelope.")
            .has("mailed", stage(MAILED), PiecePlan::mailStage)
            .says("What is mailed, if it is.")
            .has("workingHours", band(Kinds.TIME), PiecePlan::workingHours)
            .says("Hours of hands from forming to folding.")
            .has("machineHours", set(Kinds.TIME), PiecePlan::machineHours)
            .says("How long the press holds the posts.", "1.5 h");

    private PlanPieceMembers() {}
}
