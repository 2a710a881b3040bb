package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.metres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.squareMetres;

import org.papermath.air.Air;
import org.papermath.examples.Embed;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.OvenDry;
import org.papermath.fibre.SorptionModel;
import org.papermath.format.Substance;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.press.Felts;
import org.papermath.press.Post;
import org.papermath.press.Press;
import org.papermath.press.Vacuum;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amount;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.shape.Caliper;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.FormedSheet;

/** Questions of the sheet and the press: weight, thickness, force and pressure, felts and posts. */
public final class PressQuestions {
    private PressQuestions() {}

    /** Will a sheet be heavier to the square metre after it has shrunk? */
    @Question(number = "B12", words = "grammage shrinkage deckle size")
    public static String b12HeavierAfterShrinking() {
        Shrinkage shrinkage = Shrinkage.across(percent(4)).along(percent(6));
        return "yes: " + Grammage.gsm(115) + " of the deckle becomes " + shrinkage.grammage(Grammage.gsm(115)) + " ("
                + shrinkage + ")";
    }

    /** How hard may I press, and which ton is on the jack? */
    @Question(number = "B28", words = "jack ton tonnage pressure frame rating weakest part")
    public static String b28HowHardToPress() {
        Press press = Press.of("the press", kilonewtons(120), mm(300), mm(400)).part("frame", kilonewtons(100));
        return "stop at " + press.atRating(Share.percent(100), squareMetres(0.12)) + "; 12 tons would be "
                + Press.tonsOn(12, squareMetres(0.12)).get(0) + " to "
                + Press.tonsOn(12, squareMetres(0.12)).get(2);
    }

    /** A small post in a big press: is it crushed? */
    @Question(number = "B29", words = "small sheet pressure force crush area")
    public static String b29SmallPostInABigPress() {
        Press press = Press.of("the press", kilonewtons(100), mm(400), mm(500));
        return "hold the pressure: " + press.forceFor(SheetPressure.kilopascals(500), squareMetres(0.03108))
                + "; not the force: " + press.setting(kilonewtons(60), squareMetres(0.03108)) + ", where it was "
                + press.setting(kilonewtons(60), squareMetres(0.12));
    }

    /** How many felts does a post take, how heavy and how high is it? */
    @Question(number = "B30", words = "felts post daylight lift weight height")
    public static String b30FeltsOfAPost() {
        CouchedSheet sheet = FormedSheet.of(grams(21), mm(300), mm(400)).couched(Solids.percent(15));
        Post post = Post.of(Felts.of(mm(350), mm(470), Grammage.gsm(600), 26), 25, sheet)
                .wetFelt(grams(296))
                .layers(mm(6), mm(1.5));
        return post.verdict(
                Press.of("the press", kilonewtons(100), mm(350), mm(470)).daylight(mm(230)));
    }

    /** This sheet was weighed in a damp room: is it on weight? */
    @Question(number = "B39", words = "humidity conditioned moisture hygrometer air-dry")
    public static String b39WeighedInADampRoom() {
        Air damp = Air.of(celsius(23), RelativeHumidity.percent(65));
        return OvenDry.of(grams(12.4), Moisture.percent(8.9)).at(Moisture.percent(6.9))
                + " at 50 % of humidity by your own two moistures; by the table "
                + SorptionModel.standard().massIn(grams(12.4), damp, Air.reference());
    }

    /** The vacuum gauge says twenty-two: of what? */
    @Question(number = "B44", words = "vacuum table inches of mercury psi altitude")
    public static String b44VacuumGauge() {
        return Vacuum.of(GaugePressure.inchesOfMercury(22)) + "; at most "
                + Vacuum.atAltitude(GaugePressure.inchesOfMercury(22), metres(1500))
                        .atmosphere() + " at 1500 m";
    }

    /** There are sheets and no numbers: what are they? */
    @Question(number = "B45", words = "grammage thickness caliper density bulk stack")
    public static String b45SheetsWithoutNumbers() {
        Amount<Grammage> grammage = Substance.ofSheets(grams(62.5), 10, mm(148), mm(205));
        Caliper stack = Caliper.ofPack(mm(3.4), 10, SheetPressure.kilopascals(1));
        return grammage + ", " + stack + ", " + stack.density(grammage) + ", bulk " + stack.bulk(grammage);
    }

    /** How do I come to the thickness of this sample? */
    @Question(number = "G14", words = "sample caliper thickness match press")
    public static String g14ThicknessOfASample() {
        DensityModel rag = DensityModel.standard(Furnish.of(Fibres.COTTON_RAG));
        return "press the wet sheets at "
                + rag.pressureFor(mm(0.31), Grammage.gsm(160), BeatingState.at(Share.percent(40)));
    }

    /** There are nine felts only: what becomes of the posts? */
    @Question(number = "G20", words = "felts few posts")
    public static String g20NineFelts() {
        Studio nine = Embed.studio().with(studio -> studio.felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 9)));
        return MakingPlan.of(Embed.order(), nine).piece("programme").posts().toString();
    }
}
