package org.papermath.json;

import java.util.List;
import java.util.Map;
import org.papermath.evidence.Code;

/**
 * The codes of the faults the reader itself finds. Faults of quantities keep the code of the refusal they come from,
 * such as {@code quantity.range} or {@code unit.unclear}.
 */
public final class FaultCodes {
    /** The text is empty. */
    public static final String EMPTY = "document.empty";

    /** The text is not JSON. */
    public static final String SYNTAX = "document.syntax";

    /** Something follows the end of the document. */
    public static final String TRAILING = "document.trailing";

    /** The bytes are not UTF-8. */
    public static final String ENCODING = "document.encoding";

    /** The document is larger than {@link DocumentReader#MOST_BYTES}. */
    public static final String SIZE = "document.size";

    /** Objects and lists stand more than {@link DocumentReader#MOST_LEVELS} deep. */
    public static final String DEPTH = "document.depth";

    /** A text or a name is longer than the reader takes. */
    public static final String LIMIT = "document.limit";

    /** There are more faults than are reported. */
    public static final String MORE = "document.more-faults";

    /** The head names another sort of document. */
    public static final String FORMAT = "format.other";

    /** The version in the head cannot be read. */
    public static final String VERSION = "version.unreadable";

    /** The document was written for another version of the format. */
    public static final String VERSION_OTHER = "version.other";

    /** A member that must be there is not. */
    public static final String MISSING = "member.missing";

    /** A member that is not known. */
    public static final String UNKNOWN = "member.unknown";

    /** A member written twice in one object. */
    public static final String DUPLICATE = "member.duplicate";

    /** A note, not a fault: a member is written under an earlier name. */
    public static final String RENAMED = "member.renamed";

    /** None or several of members of which exactly one is required. */
    public static final String ONE_OF = "member.one-of";

    /** A value of the wrong sort, such as a text where a list is expected. */
    public static final String TYPE = "value.type";

    /** A measurement was filled in, but for one of its readings. */
    public static final String UNFILLED = "reading.unfilled";

    /** A text with nothing in it. */
    public static final String BLANK = "text.blank";

    /** A text with a character that cannot be shown. */
    public static final String CHARACTER = "text.character";

    /** A text longer than its use allows. */
    public static final String LONG_TEXT = "text.long";

    /** A number that is too large, too small or too long to be held. */
    public static final String NUMBER = "number.unreadable";

    /** A number outside its limits. */
    public static final String RANGE = "number.range";

    /** A count with a fraction. */
    public static final String WHOLE = "number.not-whole";

    /** A list with too few or too many items. */
    public static final String LENGTH = "list.length";

    /** A word that is none of those accepted. */
    public static final String CHOICE = "choice.unknown";

    /** A day that cannot be read. */
    public static final String DATE = "date.unreadable";

    /** A time of day is not written as hours and minutes. */
    public static final String TIME_OF_DAY = "time.unreadable";

    /** A day no calendar has, such as the 30th of February. */
    public static final String NO_DAY = "date.none";

    /** A quantity written as a bare number. */
    public static final String NO_UNIT = "quantity.no-unit";

    /** A name that is not defined elsewhere. */
    public static final String NAME = "name.unknown";

    /** A reference where none can be followed. */
    public static final String REFERENCE_NONE = "reference.not-followed";

    /** A reference that cannot be written so. */
    public static final String REFERENCE_FORM = "reference.form";

    /** A reference to a place outside the folder. */
    public static final String REFERENCE_OUTSIDE = "reference.outside";

    /** A reference to a file that is not there. */
    public static final String REFERENCE_MISSING = "reference.missing";

    /** A reference to something that cannot be read. */
    public static final String REFERENCE_UNREADABLE = "reference.unreadable";

    /** References that lead on and on. */
    public static final String REFERENCE_DEPTH = "reference.depth";

    private static final List<String> READER_ONLY = List.of(
            UNFILLED,
            EMPTY,
            SYNTAX,
            TRAILING,
            ENCODING,
            SIZE,
            DEPTH,
            LIMIT,
            MORE,
            DUPLICATE,
            CHARACTER,
            LONG_TEXT,
            NUMBER,
            NAME,
            NO_DAY,
            REFERENCE_NONE,
            REFERENCE_FORM,
            REFERENCE_OUTSIDE,
            REFERENCE_MISSING,
            REFERENCE_UNREADABLE,
            REFERENCE_DEPTH,
            // names that are given elsewhere, or stand in a table of the library
            "order.no-recipe",
            "schedule.hours",
            "schedule.days-off",
            "order.no-piece",
            "order.stuff-differs",
            "order.too-many-pieces",
            "order.envelope-in-envelope",
            "piece.no-dryer",
            "builder.twice",
            "fibre.unknown",
            "fibre.unclear",
            "format.unknown",
            "format.unclear",
            "mail.country",
            "restraint.unknown",
            "scope.name",
            "assumption.unknown",
            "assumptions.edition",
            "plan.edition",
            // values outside what the kind or the thing can have
            "quantity.range",
            "quantity.not-above-zero",
            "assumption.unit",
            "assumption.order",
            "assumption.log-normal",
            "assumption.logit",
            "deckle.strips",
            "outline.not-simple",
            "vat.run-down",
            "screw.jams",
            "ream.count-missing",
            "ream.sheet",
            // members that do not go together
            "furnish.sum",
            "furnish.twice",
            "recipe.beaten-apart",
            "recipe.doses",
            "recipe.state-twice",
            "piece.clash",
            "step.band",
            "step.no-time",
            "step.place",
            "step.working-days",
            "record.count",
            // money, prices and what is offered at them
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

    private FaultCodes() {}

    /**
     * Returns the codes of the faults a schema cannot see, since they concern the text before it is JSON, other files,
     * what is written elsewhere in the document, or what the values mean. Some of them come from refusals of the
     * library. Every fault with another code is seen by the schema of the document too.
     *
     * @return an unmodifiable list
     */
    public static List<String> seenByTheReaderOnly() {
        return READER_ONLY;
    }

    /**
     * Returns the codes this module has beside {@link org.papermath.evidence.Codes those of the library}: what is wrong
     * with a document before it says anything to the library, and what the module for Jackson refuses. A fault has the
     * values {@code found}, {@code accepted} and {@code nearest} too, where there are such.
     *
     * @return an unmodifiable list, alike ones together
     */
    public static List<Code> ofModule() {
        return FaultTable.OF_MODULE;
    }

    /**
     * Returns what each code of a fault means: those of the reader, and those of the refusals a document can lead to. A
     * code keeps its meaning; new ones may come.
     *
     * @return an unmodifiable map from the code to a sentence, alike ones together
     */
    public static Map<String, String> meanings() {
        return FaultTable.MEANINGS;
    }
}
