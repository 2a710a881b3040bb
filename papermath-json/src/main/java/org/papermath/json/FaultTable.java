package org.papermath.json;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.papermath.evidence.Code;
import org.papermath.evidence.Codes;

/** What each code of a fault means. Refusals of the library keep the meaning they have there. */
final class FaultTable {
    /** What a document can lead to, alike ones together. */
    static final List<Code> FAULTS = faults();

    /** What only this module reports. */
    static final List<Code> OF_MODULE = ofModule();

    static final Map<String, String> MEANINGS = meanings();

    private FaultTable() {}

    private static List<Code> faults() {
        List<Code> all = new ArrayList<>();
        text(all);
        members(all);
        values(all);
        references(all);
        quantities(all);
        names(all);
        rules(all);
        return Collections.unmodifiableList(all);
    }

    private static List<Code> ofModule() {
        List<Code> all = new ArrayList<>(FAULTS);
        all.removeIf(one -> Codes.find(one.name()).isPresent());
        refusal(all, "jackson.not-read", "A type is to be read that is only written.", List.of(), "found", "type");
        refusal(all, "jackson.not-written", "A type is to be written that has no form.", List.of("type"));
        refusal(
                all,
                "jackson.other-type",
                "A value is of another of several types than the one that is declared.",
                List.of("found", "accepted"));
        refusal(
                all,
                "quantity.kind-unknown",
                "A quantity is read or written of which nothing says what it measures.",
                List.of(),
                "given");
        return Collections.unmodifiableList(all);
    }

    private static Map<String, String> meanings() {
        Map<String, String> all = new LinkedHashMap<>();
        FAULTS.forEach(one -> all.put(one.name(), one.meaning()));
        return Collections.unmodifiableMap(all);
    }

    /** A fault the reader finds, with the values it has beside what was found, what is accepted, and the nearest. */
    private static void fault(List<Code> all, String name, String meaning, String... always) {
        all.add(new Code(name, EnumSet.of(Code.Use.FAULT), List.of(always), List.of(), meaning));
    }

    private static void refusal(List<Code> all, String name, String meaning, List<String> always, String... sometimes) {
        all.add(new Code(name, EnumSet.of(Code.Use.REFUSAL), always, List.of(sometimes), meaning));
    }

    /** A fault, and a refusal where what is wrong is found by itself. */
    private static void both(List<Code> all, String name, String meaning, List<String> always, String... sometimes) {
        Set<Code.Use> uses = EnumSet.of(Code.Use.FAULT, Code.Use.REFUSAL);
        all.add(new Code(name, uses, always, List.of(sometimes), meaning));
    }

    /** Refusals of the library that a document can lead to. */
    private static void ofLibrary(List<Code> all, String... names) {
        for (String name : names) {
            all.add(Codes.find(name).orElseThrow(() -> new IllegalStateException(name + " is no code")));
        }
    }

    private static void text(List<Code> all) {
        fault(all, FaultCodes.EMPTY, "The text is empty.");
        fault(all, FaultCodes.SYNTAX, "The text is not JSON.");
        fault(all, FaultCodes.TRAILING, "Something follows the end of the document.");
        fault(all, FaultCodes.ENCODING, "The bytes are not UTF-8.");
        fault(all, FaultCodes.SIZE, "The document is larger than is read.");
        fault(all, FaultCodes.DEPTH, "Objects and lists stand deeper in one another than is read.");
        fault(all, FaultCodes.LIMIT, "A text or a name in the document is longer than is read.");
        fault(all, FaultCodes.MORE, "There are more faults than are reported; fix these and read it again.", "shown");
        fault(all, FaultCodes.FORMAT, "The head names another sort of document.");
        fault(all, FaultCodes.VERSION, "The version in the head cannot be read.");
        fault(all, FaultCodes.VERSION_OTHER, "The document was written for a newer or another version of the format.");
    }

    private static void members(List<Code> all) {
        fault(all, FaultCodes.MISSING, "A member that must be there is not.");
        fault(all, FaultCodes.UNKNOWN, "A member is not known; those of other programs begin with x-.");
        fault(all, FaultCodes.DUPLICATE, "A member stands twice in one object.", "firstLine", "firstColumn");
        fault(all, FaultCodes.RENAMED, "A note, not a fault: a member stands under an earlier name.");
        fault(all, FaultCodes.ONE_OF, "None or several are given of members of which exactly one is required.");
    }

    private static void values(List<Code> all) {
        fault(all, FaultCodes.TYPE, "A value is of the wrong sort, such as a text where a list is expected.");
        both(all, FaultCodes.BLANK, "A text has nothing in it.", List.of(), "given");
        fault(all, FaultCodes.UNFILLED, "A measurement of a form was filled in, but for one of its readings.");
        ofLibrary(all, FaultCodes.CHARACTER, FaultCodes.LONG_TEXT);
        both(all, FaultCodes.NUMBER, "A number is too large, too small or too long to be held.", List.of(), "found");
        fault(all, FaultCodes.RANGE, "A number is outside its limits.", "least", "most");
        fault(all, FaultCodes.WHOLE, "A count has a fraction.");
        both(all, FaultCodes.LENGTH, "A list has too few or too many items.", List.of(), "given", "least", "most");
        fault(all, FaultCodes.CHOICE, "A word is none of those accepted.");
        fault(all, FaultCodes.TIME_OF_DAY, "A time of day is not written as hours and minutes.");
        fault(all, FaultCodes.DATE, "A day is not written as year, month and day.");
        ofLibrary(all, "date.range");
        ofLibrary(all, "schedule.hours");
        ofLibrary(all, "schedule.days-off");
        fault(all, FaultCodes.NO_DAY, "A day is one that no calendar has, such as the 30th of February.");
    }

    private static void references(List<Code> all) {
        both(
                all,
                FaultCodes.REFERENCE_NONE,
                "A reference stands where none can be followed, as in a text alone.",
                List.of(),
                "found");
        both(all, FaultCodes.REFERENCE_FORM, "A reference cannot be written so.", List.of(), "found");
        both(all, FaultCodes.REFERENCE_OUTSIDE, "A reference, or a link, leads out of the folder.", List.of(), "found");
        both(all, FaultCodes.REFERENCE_MISSING, "A reference is to a file that is not there.", List.of(), "found");
        both(
                all,
                FaultCodes.REFERENCE_UNREADABLE,
                "A reference is to something that cannot be read.",
                List.of(),
                "found");
        fault(all, FaultCodes.REFERENCE_DEPTH, "References lead on and on.");
    }

    private static void quantities(List<Code> all) {
        ofLibrary(
                all,
                FaultCodes.NO_UNIT,
                "quantity.unreadable-number",
                "quantity.range",
                "quantity.not-above-zero",
                "unit.unknown",
                "unit.unclear",
                "grammage.ream-unclear",
                "ream.count-missing");
        both(all, "ream.sheet", "A sheet is not the one of the named ream.", List.of("name", "width", "length"));
    }

    private static void names(List<Code> all) {
        fault(all, FaultCodes.NAME, "A name is not given anywhere else in the document.");
        ofLibrary(
                all,
                "builder.twice",
                "order.no-recipe",
                "order.no-piece",
                "order.stuff-differs",
                "order.too-many-pieces",
                "order.envelope-in-envelope",
                "piece.no-dryer",
                "fibre.unknown",
                "fibre.unclear",
                "format.unknown",
                "format.unclear",
                "mail.country",
                "restraint.unknown",
                "scope.name",
                "source.blank",
                "assumption.unknown",
                "assumptions.edition");
        both(
                all,
                "plan.edition",
                "A plan and its studio name different editions of the assumptions.",
                List.of("member", "found", "accepted"));
    }

    private static void rules(List<Code> all) {
        both(all, "assumption.unit", "A value has a unit its assumption does not have.", List.of("found", "accepted"));
        ofLibrary(
                all,
                "assumption.order",
                "assumption.log-normal",
                "assumption.logit",
                "deckle.strips",
                "outline.not-simple",
                "vat.run-down",
                "screw.jams",
                "furnish.sum",
                "furnish.twice",
                "recipe.beaten-apart",
                "recipe.doses",
                "recipe.state-twice",
                "piece.clash",
                "step.band",
                "step.no-place",
                "step.no-time",
                "step.place",
                "step.working-days",
                "record.count");
        ofLibrary(
                all,
                "money.currency",
                "money.no-coin",
                "money.number",
                "money.no-currency",
                "money.which-currency",
                "money.finer-than-coin",
                "money.rate-text",
                "money.other-currency",
                "money.too-large",
                "price.below-zero",
                "price.other-currency",
                "price.profit-text",
                "price.which-per-cent",
                "price.other-share",
                "price.markup",
                "price.margin",
                "price.uses",
                "postage.twice",
                "postage.no-table",
                "quotation.days",
                "quotation.seconds",
                "quotation.per-cent");
    }
}
