package org.papermath.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** What each code of a fault means. */
final class FaultTable {
    static final Map<String, String> MEANINGS = meanings();

    private FaultTable() {}

    private static Map<String, String> meanings() {
        Map<String, String> all = new LinkedHashMap<>();
        text(all);
        members(all);
        values(all);
        references(all);
        quantities(all);
        names(all);
        rules(all);
        return Collections.unmodifiableMap(all);
    }

    private static void text(Map<String, String> all) {
        all.put(FaultCodes.EMPTY, "The text is empty.");
        all.put(FaultCodes.SYNTAX, "The text is not JSON.");
        all.put(FaultCodes.TRAILING, "Something follows the end of the document.");
        all.put(FaultCodes.ENCODING, "The bytes are not UTF-8.");
        all.put(FaultCodes.SIZE, "The document is larger than is read.");
        all.put(FaultCodes.DEPTH, "Objects and lists stand deeper in one another than is read.");
        all.put(FaultCodes.LIMIT, "A text or a name is longer than is read.");
        all.put(FaultCodes.MORE, "There are more faults than are reported; mend these and read it again.");
        all.put(FaultCodes.FORMAT, "The head names another sort of document.");
        all.put(FaultCodes.VERSION, "The version in the head cannot be read.");
        all.put(FaultCodes.VERSION_OTHER, "The document was written for a newer or another version of the format.");
    }

    private static void members(Map<String, String> all) {
        all.put(FaultCodes.MISSING, "A member that must be there is not.");
        all.put(FaultCodes.UNKNOWN, "A member nobody knows. Members of other programs begin with x-.");
        all.put(FaultCodes.DUPLICATE, "A member stands twice in one object.");
        all.put(FaultCodes.RENAMED, "A note, not a fault: a member stands under an earlier name.");
        all.put(FaultCodes.ONE_OF, "None or several of members stand there of which exactly one is wanted.");
    }

    private static void values(Map<String, String> all) {
        all.put(FaultCodes.TYPE, "A value of the wrong sort, such as a text where a list is wanted.");
        all.put(FaultCodes.BLANK, "A text with nothing in it.");
        all.put(FaultCodes.CHARACTER, "A text with a character that cannot be shown.");
        all.put(FaultCodes.LONG_TEXT, "A text longer than its use allows.");
        all.put(FaultCodes.NUMBER, "A number that is too large, too small or too long to be held.");
        all.put(FaultCodes.RANGE, "A number outside its limits.");
        all.put(FaultCodes.WHOLE, "A count with a fraction.");
        all.put(FaultCodes.LENGTH, "A list with too few or too many items.");
        all.put(FaultCodes.CHOICE, "A word that is none of those accepted.");
        all.put(FaultCodes.DATE, "A day that is not written as year, month and day.");
        all.put("date.range", "A day outside its limits.");
        all.put(FaultCodes.NO_DAY, "A day no calendar has, such as the 30th of February.");
    }

    private static void references(Map<String, String> all) {
        all.put(FaultCodes.REFERENCE_NONE, "A reference where none can be followed, as in a text without a folder.");
        all.put(FaultCodes.REFERENCE_FORM, "A reference that cannot be written so.");
        all.put(FaultCodes.REFERENCE_OUTSIDE, "A reference, or a link, that leads out of the folder.");
        all.put(FaultCodes.REFERENCE_MISSING, "A reference to a file that is not there.");
        all.put(FaultCodes.REFERENCE_UNREADABLE, "A reference to something that cannot be read.");
        all.put(FaultCodes.REFERENCE_DEPTH, "References that lead on and on.");
    }

    private static void quantities(Map<String, String> all) {
        all.put(FaultCodes.NO_UNIT, "A quantity without a unit.");
        all.put("quantity.unreadable-number", "A quantity that does not begin with a number.");
        all.put("quantity.range", "A quantity outside what its kind or its use can have.");
        all.put("quantity.not-above-zero", "A quantity that has to be above zero and is not.");
        all.put("unit.unknown", "A unit that is not in the table.");
        all.put("unit.unclear", "A unit that has more than one meaning, such as ton; each is said with what it gives.");
        all.put("grammage.ream-unclear", "A grammage in pounds without the sheet and the count of the ream.");
        all.put(
                "ream.count-missing",
                "The weight of a ream without the count of its sheets; each usual count is said"
                        + " with what it gives.");
        all.put("ream.sheet", "A sheet that is not the one of the named ream.");
    }

    private static void names(Map<String, String> all) {
        all.put(FaultCodes.NAME, "A name that is not said anywhere else in the document.");
        all.put("builder.twice", "A name that stands twice where each may stand once.");
        all.put("order.no-recipe", "A piece of a recipe the order has not got.");
        all.put("order.no-piece", "An envelope for a piece the order has not got.");
        all.put("order.too-many-pieces", "More pieces and trial sheets in all than an order may have.");
        all.put("order.envelope-in-envelope", "An envelope for an envelope.");
        all.put("piece.no-dryer", "A dryer the studio has not got.");
        all.put("fibre.unknown", "A fibre the library does not know; describe it in full.");
        all.put("fibre.unclear", "The name of several fibres; each is said.");
        all.put("format.unknown", "A format the library does not know; give its two sides.");
        all.put("format.unclear", "The name of several formats, such as A6; each is said with its sides.");
        all.put("mail.country", "A country without mail limits in the table.");
        all.put("restraint.unknown", "A word for what holds a sheet that the library does not know.");
        all.put("scope.name", "A name with one of the signs [ ] @, under which values of your own cannot be kept.");
        all.put("source.blank", "A source with nothing in it.");
        all.put("assumption.unknown", "An id that is not in the table of assumptions of the edition.");
        all.put("assumptions.edition", "An edition of the table of assumptions the library has not got.");
        all.put("plan.edition", "A plan and its studio that name different editions.");
    }

    private static void rules(Map<String, String> all) {
        all.put("assumption.unit", "A value with a unit its assumption does not have.");
        all.put("assumption.order", "A value outside its band or its bounds, or a band the wrong way round.");
        all.put("assumption.log-normal", "A value that has to be above zero with its whole band, and is not.");
        all.put("assumption.logit", "A value that has to lie between 0 and 1 with its whole band, and does not.");
        all.put("deckle.strips", "Strips that leave no opening in the deckle.");
        all.put("furnish.sum", "Shares of fibres that do not add up to 100 %.");
        all.put("furnish.twice", "A fibre that stands twice in a furnish.");
        all.put("recipe.doses", "Doses that come to more than all the fibre.");
        all.put(
                "piece.clash",
                "Members that do not go together, such as the style of an envelope in a piece that is none.");
        all.put("record.count", "More rejected than handled, or none handled.");
    }
}
