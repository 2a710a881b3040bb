package org.papermath.json.kit;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.format.ReamBasis;
import org.papermath.json.DocumentFormat;
import org.papermath.json.FaultCodes;
import org.papermath.json.tree.JsonTree;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.NearestWord;
import org.papermath.json.tree.Source;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * A value of a document while it is read: say what it should be, and get it. Whatever is wrong is reported at its place
 * and reading goes on.
 *
 * <p>An optional member that is not there gives an empty {@link ReadResult} whatever it is asked to be.
 */
public final class ValueReader {
    private static final Pattern A_NUMBER = Pattern.compile("\\s*[+-]?[0-9]{1,12}(\\.[0-9]{1,12})?\\s*");
    /** Two lengths in one text, as people say sizes: numbers, perhaps with a fraction, and their units. */
    private static final Pattern TWO_SIDES = Pattern.compile(
            "\\s*([0-9][0-9./ ½¼¾⅛⅜⅝⅞-]{0,14})([a-z\"″]{0,11})\\s*(?:[x×*]|by)\\s*([0-9][0-9./ ½¼¾⅛⅜⅝⅞-]{0,14})([a-z\"″]{0,11})\\s*");
    /** The unit meant where none is written is not known; this one stands in the example. */
    private static final String USUAL_UNIT = "mm";

    static final int MOST_NAME = Name.MOST;
    /** What is no number any more in the unit it is calculated in. */
    private static final String NOT_A_NUMBER = "quantity.not-a-number";

    /** A number with an exponent of three digits or more, or with so many that it may be as large. */
    private static final Pattern HUGE = Pattern.compile("^\\s*[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)[eE]\\+?[0-9]{3,}"
            + "(?:\\s+1(?:/.*)?|\\s*(?:[^0-9,'\\s].*)?)$");

    private enum State {
        GIVEN,
        ABSENT,
        FAULTY
    }

    private final Source source;
    private final JsonValue value;
    private final State state;

    private ValueReader(Source source, JsonValue value, State state) {
        this.source = source;
        this.value = value;
        this.state = state;
    }

    static ValueReader of(Source source, JsonValue value) {
        return new ValueReader(source, value, State.GIVEN);
    }

    static ValueReader absent(Source source, JsonValue object) {
        return new ValueReader(source, object, State.ABSENT);
    }

    static ValueReader faulty(Source source, JsonValue object) {
        return new ValueReader(source, object, State.FAULTY);
    }

    Source source() {
        return source;
    }

    JsonValue value() {
        return value;
    }

    String pointer() {
        return value.pointer();
    }

    void refuse(PapermathException refusal, Collection<String> codes) {
        source.refuse(value, refusal, codes);
    }

    /**
     * Reports a fault here.
     *
     * @param code a stable dotted name
     * @param text the sentence for a person
     * @param accepted what could stand here, if it can be listed; the nearest word is found among them
     */
    public void refuse(String code, String text, Collection<String> accepted) {
        String found = state == State.GIVEN ? value.found() : "";
        source.fault(value, code, found, accepted, found.isEmpty() ? "" : source.nearest(found, accepted), text);
    }

    String nearest(String found, Collection<String> words) {
        return source.nearest(found, words);
    }

    /**
     * Returns whether something is written here.
     *
     * @return whether the member is there
     */
    public boolean isGiven() {
        return state == State.GIVEN;
    }

    /**
     * Returns whether a text is written here, for members that may be a word or an object.
     *
     * @return whether it is a text
     */
    public boolean isText() {
        return state == State.GIVEN && value.type() == JsonValue.Type.TEXT;
    }

    /**
     * Returns whether an object is written here.
     *
     * @return whether it is an object
     */
    public boolean isObject() {
        return state == State.GIVEN && value.type() == JsonValue.Type.OBJECT;
    }

    /**
     * Returns whether a list is written here.
     *
     * @return whether it is a list
     */
    public boolean isList() {
        return state == State.GIVEN && value.type() == JsonValue.Type.LIST;
    }

    /**
     * Returns whether an object is written here whose member of a name is a text with nothing in it: a blank of a form that
     * was not filled in.
     *
     * @param member the name
     * @return whether it is blank
     */
    public boolean isBlank(String member) {
        JsonValue held = isObject() ? value.member(member) : null;
        return held != null && isBlank(held);
    }

    /**
     * Returns whether an object is written here that is a form nobody has filled in: its objects with a member of the name
     * have nothing in it, or, where it has no such objects, its own texts have nothing in them where numbers could stand.
     *
     * @param member the name of what is filled in
     * @return whether nothing is filled in
     */
    public boolean isUnfilled(String member) {
        if (!isObject()) {
            return false;
        }
        boolean any = false;
        boolean blanks = false;
        boolean numbers = false;
        for (JsonValue one : value.members()) {
            JsonValue inside = one.type() == JsonValue.Type.OBJECT ? one.member(member) : null;
            if (inside != null && !isBlank(inside)) {
                return false;
            }
            any |= inside != null;
            blanks |= isBlank(one);
            numbers |= one.type() == JsonValue.Type.NUMBER;
        }
        return any || (blanks && !numbers);
    }

    private static boolean isBlank(JsonValue one) {
        return one.type() == JsonValue.Type.TEXT && one.text().isBlank();
    }

    /** Returns what to hand on without reading: nothing for an absent value, a faulty one for any other. */
    private <T> ReadResult<T> unread() {
        return state == State.ABSENT ? ReadResult.nothing(this) : ReadResult.faulty(this);
    }

    private boolean isReadable(JsonValue.Type wanted) {
        if (state != State.GIVEN) {
            return false;
        }
        if (value.type() != wanted) {
            wrongType(wanted.words(), formToWrite(wanted));
            return false;
        }
        // A number too long or a broken text was reported while the document was taken apart.
        return value.type() == JsonValue.Type.OBJECT
                || value.type() == JsonValue.Type.LIST
                || !source.session().isFaulty(value);
    }

    /** What to write in place of a value of another type, where that can be told; else empty. */
    private String formToWrite(JsonValue.Type wanted) {
        if (wanted == JsonValue.Type.LIST && value.type() == JsonValue.Type.OBJECT) {
            return " Put [ ] round it.";
        }
        if (value.type() != JsonValue.Type.TEXT) {
            return "";
        }
        if (wanted == JsonValue.Type.NUMBER && A_NUMBER.matcher(value.text()).matches()) {
            return " Take the quotation marks away.";
        }
        String sides = wanted == JsonValue.Type.LIST ? twoSides() : "";
        return sides.isEmpty() ? "" : " Write " + sides + ".";
    }

    /**
     * Returns how two sides that are written in one text, such as {@code 148 x 210 mm}, are written in a document.
     *
     * @return for example {@code ["148 mm", "210 mm"]}; empty if the text is none of two sides
     */
    public String twoSides() {
        if (!isText()) {
            return "";
        }
        Matcher sides = TWO_SIDES.matcher(value.text());
        if (!sides.matches()) {
            return "";
        }
        String last = sides.group(4);
        String first = sides.group(2).isEmpty() ? last : sides.group(2);
        try {
            return "[" + side(sides.group(1), first) + ", " + side(sides.group(3), last) + "]"
                    + (last.isEmpty() ? " if millimetres are meant" : "");
        } catch (PapermathException e) {
            return "";
        }
    }

    private static String side(String number, String unit) {
        return "\"" + Units.print(Kinds.LENGTH.read(number.strip() + " " + (unit.isEmpty() ? USUAL_UNIT : unit)))
                + "\"";
    }

    private void wrongType(String wanted) {
        wrongType(wanted, "");
    }

    private void wrongType(String wanted, String form) {
        String advice =
                value.type() == JsonValue.Type.NULL ? " Leave the member out if there is nothing to give." : form;
        fault(
                FaultCodes.TYPE,
                List.of(wanted),
                wanted + " is expected here; " + value.type().words() + " is written." + advice);
    }

    private void fault(String code, Collection<String> accepted, String text, Object... namesAndValues) {
        source.fault(value, code, value.found(), accepted, "", text, namesAndValues);
    }

    /**
     * Reads a name or a short text on one line, not empty.
     *
     * @return the text, without blanks around it
     */
    public ReadResult<String> text() {
        if (!isReadable(JsonValue.Type.TEXT)) {
            return unread();
        }
        if (isPlain(value.text())) {
            return ReadResult.of(this, value.text());
        }
        String text = value.text().strip();
        if (text.isEmpty()) {
            fault(FaultCodes.BLANK, List.of(), "the text is empty. Write something, or leave the member out.");
        } else if (text.length() > MOST_NAME) {
            fault(FaultCodes.LONG_TEXT, List.of(), Name.longer(text), "most", MOST_NAME);
        } else if (isShowable(text, false)) {
            return ReadResult.of(this, text);
        }
        return ReadResult.faulty(this);
    }

    /**
     * Reads a text of any length that may be empty and may have several lines.
     *
     * @return the text as written
     */
    public ReadResult<String> note() {
        if (!isReadable(JsonValue.Type.TEXT)) {
            return unread();
        }
        return isShowable(value.text(), true) ? ReadResult.of(this, value.text()) : ReadResult.faulty(this);
    }

    /** Returns whether a name is of the usual sort: of signs that can all be shown, without blanks around it. */
    private static boolean isPlain(String text) {
        int length = text.length();
        if (length == 0 || length > MOST_NAME || text.charAt(0) == ' ' || text.charAt(length - 1) == ' ') {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (text.charAt(i) < ' ' || text.charAt(i) >= 0x7F) {
                return false;
            }
        }
        return true;
    }

    private boolean isShowable(String text, boolean lines) {
        int at = Name.hiddenIn(text, lines);
        if (at >= 0) {
            fault(FaultCodes.CHARACTER, List.of(), Name.hidden(text, at));
        }
        return at < 0;
    }

    /**
     * Reads a whole number.
     *
     * @param least the least accepted
     * @param most the greatest accepted
     * @return the number
     */
    public ReadResult<Integer> count(int least, int most) {
        if (!isReadable(JsonValue.Type.NUMBER)) {
            return unread();
        }
        if (value.text().length() < 9 && least >= 0) {
            int small = digits(value.text());
            if (small >= least && small <= most) {
                return ReadResult.of(this, small);
            }
        }
        BigDecimal number;
        try {
            number = new BigDecimal(value.text());
        } catch (NumberFormatException e) {
            fault(FaultCodes.NUMBER, List.of(), value.found() + " is too large or too small to be held.");
            return ReadResult.faulty(this);
        }
        // The order matters: a huge exponent must not be written out.
        if (number.signum() != 0 && number.stripTrailingZeros().scale() > 0) {
            fault(FaultCodes.WHOLE, List.of(), value.found() + " is written; must be a whole number.");
            return ReadResult.faulty(this);
        }
        if (number.compareTo(BigDecimal.valueOf(least)) < 0 || number.compareTo(BigDecimal.valueOf(most)) > 0) {
            fault(
                    FaultCodes.RANGE,
                    List.of(),
                    value.found() + " is written; must be a whole number "
                            + (most == Integer.MAX_VALUE && number.signum() < 0
                                    ? "of " + least + " or more."
                                    : "from " + least + " to " + most + "."),
                    "least",
                    least,
                    "most",
                    most);
            return ReadResult.faulty(this);
        }
        return ReadResult.of(this, number.signum() == 0 ? 0 : number.intValue());
    }

    /** Returns the number written in digits alone; below zero for any other writing. */
    private static int digits(String text) {
        int number = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9') {
                return -1;
            }
            number = 10 * number + (c - '0');
        }
        return number;
    }

    /**
     * Reads a plain number.
     *
     * @param least the least accepted, or negative infinity
     * @param most the greatest accepted, or infinity
     * @return the number, finite
     */
    public ReadResult<Double> number(double least, double most) {
        if (!isReadable(JsonValue.Type.NUMBER)) {
            return unread();
        }
        double number = Double.parseDouble(value.text()) + 0.0;
        if (Double.isInfinite(number) || (number == 0 && !isZero(value.text()))) {
            fault(FaultCodes.NUMBER, List.of(), value.found() + " is too large or too small to be held.");
            return ReadResult.faulty(this);
        }
        if (!(number >= least && number <= most)) {
            String rule = Double.isInfinite(most)
                    ? Units.number(least) + " or more"
                    : Double.isInfinite(least)
                            ? "at most " + Units.number(most)
                            : "from " + Units.number(least) + " to " + Units.number(most);
            fault(
                    FaultCodes.RANGE,
                    List.of(),
                    value.found() + " is written; it must be " + rule + ".",
                    "least",
                    least,
                    "most",
                    most);
            return ReadResult.faulty(this);
        }
        return ReadResult.of(this, number);
    }

    /** Returns whether a number that came out as zero is written as zero, and not as a number too small to be held. */
    private static boolean isZero(String text) {
        int i = 0;
        while (i < text.length() && "+-.0".indexOf(text.charAt(i)) >= 0) {
            i++;
        }
        return i == text.length() || text.charAt(i) < '1' || text.charAt(i) > '9';
    }

    /**
     * Reads {@code true} or {@code false}.
     *
     * @return the flag
     */
    public ReadResult<Boolean> flag() {
        return isReadable(JsonValue.Type.FLAG)
                ? ReadResult.of(this, value.text().equals("true"))
                : unread();
    }

    /**
     * Reads a number or a flag, whichever is written: a whole number is a count, one with a fraction is not.
     *
     * @return an {@link Integer}, a {@link Long}, a {@link Double} or a {@link Boolean}
     */
    public ReadResult<Object> plain() {
        if (state == State.GIVEN && value.type() == JsonValue.Type.FLAG) {
            return flag().map(flag -> flag);
        }
        boolean whole = state == State.GIVEN
                && value.type() == JsonValue.Type.NUMBER
                && value.text().chars().noneMatch(c -> c == '.' || c == 'e' || c == 'E');
        return number(
                        whole ? Long.MIN_VALUE : Double.NEGATIVE_INFINITY,
                        whole ? Long.MAX_VALUE : Double.POSITIVE_INFINITY)
                .map(number -> whole ? whole(value.text()) : (Object) number);
    }

    private static Object whole(String text) {
        long number = Long.parseLong(text);
        return number == (int) number ? (Object) (int) number : (Object) number;
    }

    /**
     * Reads a day such as {@code 2026-11-25}, from {@link Limits#FIRST_DAY} to {@link Limits#LAST_DAY}.
     *
     * @return the day
     */
    public ReadResult<LocalDate> date() {
        if (!isReadable(JsonValue.Type.TEXT)) {
            return unread();
        }
        boolean form = isDay(value.text());
        if (form) {
            try {
                return ReadResult.of(
                                this,
                                LocalDate.of(
                                        digits(value.text().substring(0, 4)),
                                        digits(value.text().substring(5, 7)),
                                        digits(value.text().substring(8))))
                        .check(day -> Limits.day(day, "day"));
            } catch (DateTimeException e) {
                // falls to the fault below
            }
        }
        fault(
                form ? FaultCodes.NO_DAY : FaultCodes.DATE,
                List.of("YYYY-MM-DD"),
                "\"" + value.found()
                        + "\" is not a day of the calendar. Write the year, the month and the day, such as 2026-11-25.");
        return ReadResult.faulty(this);
    }

    /**
     * Reads a time of day such as {@code 09:30}; {@code 24:00} is the end of a day.
     *
     * @return the time, midnight for the end of a day too
     */
    public ReadResult<LocalTime> clock() {
        if (!isReadable(JsonValue.Type.TEXT)) {
            return unread();
        }
        String text = value.text();
        if (text.length() == 5 && text.charAt(2) == ':') {
            int hour = digits(text.substring(0, 2));
            int minute = digits(text.substring(3));
            if (hour >= 0 && minute >= 0 && minute < 60 && 60 * hour + minute <= 24 * 60) {
                return ReadResult.of(this, LocalTime.of(hour % 24, minute));
            }
        }
        fault(
                FaultCodes.TIME_OF_DAY,
                List.of("HH:MM"),
                "\"" + value.found() + "\" is not a time of day. Write hours and minutes, such as 09:30.");
        return ReadResult.faulty(this);
    }

    /** Returns whether a text has the form of a day: YYYY-MM-DD, the month from 01 to 12, the day from 01 to 31. */
    private static boolean isDay(String text) {
        if (text.length() != 10 || text.charAt(4) != '-' || text.charAt(7) != '-') {
            return false;
        }
        int month = digits(text.substring(5, 7));
        int day = digits(text.substring(8));
        return digits(text.substring(0, 4)) >= 0 && month >= 1 && month <= 12 && day >= 1 && day <= 31;
    }

    /**
     * Reads one of several words.
     *
     * @param <T> the type of the values
     * @param values the values that can be chosen
     * @param word gives the word of a value
     * @return the value whose word is written
     */
    public <T> ReadResult<T> choice(Collection<T> values, Function<? super T, String> word) {
        if (!isReadable(JsonValue.Type.TEXT)) {
            return unread();
        }
        for (T one : values) {
            if (word.apply(one).equals(value.text())) {
                return ReadResult.of(this, one);
            }
        }
        List<String> words = new ArrayList<>();
        values.forEach(one -> words.add(word.apply(one)));
        notAmong(FaultCodes.CHOICE, words, "\"" + value.found() + "\" is not one of the words for this");
        return ReadResult.faulty(this);
    }

    /**
     * Reads a name that must be defined elsewhere.
     *
     * @param names the names that are defined
     * @param what what they are names of, for the message, such as {@code recipe}
     * @return the name
     */
    public ReadResult<String> nameAmong(Collection<String> names, String what) {
        ReadResult<String> name = text();
        if (name.isFaulty() || !name.isGiven() || names.contains(name.get())) {
            return name;
        }
        notAmong(FaultCodes.NAME, names, "no " + what + " is called \"" + value.found() + "\"");
        return ReadResult.faulty(this);
    }

    private void notAmong(String code, Collection<String> words, String sentence) {
        String nearest = source.nearest(value.text(), words);
        source.fault(
                value,
                code,
                value.found(),
                words,
                nearest,
                sentence + "."
                        + (nearest.isEmpty() ? "" : " Did you mean \"" + nearest + "\"?")
                        + (words.isEmpty() ? "" : " Accepted: " + NearestWord.listed(words) + "."));
    }

    /**
     * Reads a quantity: {@code "260 g/m2"} or {@code {"value": 260, "unit": "g/m2"}}. A grammage may also be the
     * weight of a ream: {@code {"weight": "80 lb", "sheet": ["20 in", "26 in"], "count": 500}}.
     *
     * @param <Q> the quantity type
     * @param kind the kind wanted; its unit codes and its range hold
     * @return the amount
     */
    @SuppressWarnings("unchecked")
    public <Q extends Quantity<Q>> ReadResult<Amount<Q>> quantity(Kind<Q> kind) {
        if (state != State.GIVEN) {
            return unread();
        }
        switch (value.type()) {
            case TEXT -> {
                return quantityOfText(kind);
            }
            case OBJECT -> {
                ObjectReader object = object();
                boolean ream = kind == (Kind<?>) Kinds.GRAMMAGE && (object.has("weight") || object.has("sheet"));
                return ream
                        ? grammageOfReam(object).map(grammage -> (Amount<Q>) (Amount<?>) grammage)
                        : quantityOfParts(object, kind);
            }
            case NUMBER -> {
                fault(
                        FaultCodes.NO_UNIT,
                        kind.codes(),
                        kind.name() + ": " + value.found()
                                + " is written without a unit. Write a text such as \"" + value.found() + " "
                                + kind.codes().get(0)
                                + "\". Accepted units: " + String.join(", ", kind.codes()) + ".");
            }
            case LIST, FLAG, NULL ->
                wrongType("a quantity such as \"12.5 " + kind.codes().get(0) + "\"");
        }
        return ReadResult.faulty(this);
    }

    private <Q extends Quantity<Q>> ReadResult<Amount<Q>> quantityOfText(Kind<Q> kind) {
        if (source.session().isFaulty(value) || (!isPlain(value.text()) && !isShowable(value.text(), false))) {
            return ReadResult.faulty(this);
        }
        if (value.text().length() > JsonTree.MOST_QUANTITY) {
            fault(
                    FaultCodes.LONG_TEXT,
                    List.of(),
                    "the quantity has " + value.text().length() + " characters; at most " + JsonTree.MOST_QUANTITY
                            + " are read.",
                    "most",
                    JsonTree.MOST_QUANTITY);
            return ReadResult.faulty(this);
        }
        try {
            Amount<Q> amount = Units.read(kind, value.text());
            if (amount.value() != 0 || isZero(value.text().strip())) {
                return ReadResult.of(this, amount);
            }
            fault(FaultCodes.NUMBER, List.of(), value.found() + " is too small to be held.");
            return ReadResult.faulty(this);
        } catch (PapermathException e) {
            if (e.code().equals(NOT_A_NUMBER)
                    || (e.code().equals("quantity.unreadable-number")
                            && HUGE.matcher(value.text()).find())) {
                fault(FaultCodes.NUMBER, List.of(), value.found() + " is too large to be held.");
            } else {
                refuse(e, kind.codes());
            }
            return ReadResult.faulty(this);
        }
    }

    private <Q extends Quantity<Q>> ReadResult<Amount<Q>> quantityOfParts(ObjectReader object, Kind<Q> kind) {
        ReadResult<Double> number = object.required("value").number(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        ValueReader unitAt = object.required("unit");
        ReadResult<String> code = unitAt.text().check(kind::unit);
        object.closeAgainstOthers();
        return object.make(() -> {
            try {
                return kind.of(number.get(), code.get());
            } catch (PapermathException e) {
                throw e.code().equals(NOT_A_NUMBER)
                        ? Refused.of(
                                FaultCodes.NUMBER,
                                Units.number(number.get()) + " " + code.get() + " is too large to be held.",
                                "found",
                                Units.number(number.get()))
                        : e;
            }
        });
    }

    private ReadResult<Amount<Grammage>> grammageOfReam(ObjectReader object) {
        ReadResult<Amount<Mass>> weight = object.required("weight").quantity(Kinds.MASS);
        ReadResult<List<Amount<Length>>> sheet = sheet(object);
        ReadResult<Integer> count = object.optional("count").count(1, 100_000);
        object.closeAgainstOthers();
        return object.make(() -> {
            double pounds = weight.get().in("lb");
            Amount<Length> width = sheet.get().get(0);
            Amount<Length> length = sheet.get().get(1);
            ReamBasis basis = count.isGiven()
                    ? ReamBasis.of(width, length, count.get())
                    : ReamBasis.ofUnknownCount(pounds, width, length);
            // In the unit it is written in, so that it is the same when it is read again.
            return basis.pounds(pounds).to("g/m2");
        });
    }

    private static ReadResult<List<Amount<Length>>> sheet(ObjectReader object) {
        return object.required("sheet")
                .list(
                        2,
                        2,
                        side -> side.quantity(Kinds.LENGTH).check(q -> Kinds.LENGTH.siAboveZero(q, "ream sheet side")));
    }

    /**
     * Reads the basis of a ream: {@code {"name": "cover", "sheet": ["20 in", "26 in"], "count": 480}}; the name may be
     * left out.
     *
     * @return the basis
     */
    public ReadResult<ReamBasis> reamBasis() {
        if (state != State.GIVEN) {
            return unread();
        }
        ObjectReader object = object();
        ReadResult<ReamBasis> named = object.optional("name").choice(Reams.NAMED, ReamBasis::name);
        ReadResult<List<Amount<Length>>> sheet = sheet(object);
        ReadResult<Integer> count = object.required("count").count(1, 100_000);
        object.closeAgainstOthers();
        return object.make(
                () -> Reams.of(named.optional(), sheet.get().get(0), sheet.get().get(1), count.get()));
    }

    /**
     * Reads an object member by member. For an absent value use {@link #object(Function)}.
     *
     * @return the object; one whose members are all faulty if no object is written
     */
    public ObjectReader object() {
        return isReadable(JsonValue.Type.OBJECT) ? ObjectReader.of(source, value) : ObjectReader.faulty(source, value);
    }

    /**
     * Reads an object by a mapping.
     *
     * @param <T> the type of the value
     * @param mapping asks for the members and makes the value
     * @return the value
     */
    public <T> ReadResult<T> object(Function<? super ObjectReader, ReadResult<T>> mapping) {
        if (!isReadable(JsonValue.Type.OBJECT)) {
            return unread();
        }
        return guarded(mapping, ObjectReader.of(source, value));
    }

    /**
     * Reads a list of any length.
     *
     * @param <T> the type of the items
     * @param item reads one item
     * @return an unmodifiable list
     */
    public <T> ReadResult<List<T>> list(Function<? super ValueReader, ReadResult<T>> item) {
        return list(0, Integer.MAX_VALUE, item);
    }

    /**
     * Reads a list of which somebody may write a text instead.
     *
     * @param <T> the type of the items
     * @param least the fewest items accepted
     * @param most the most items accepted
     * @param item reads one item
     * @param example what to write in place of a text, in words with an example
     * @return an unmodifiable list
     */
    public <T> ReadResult<List<T>> list(
            int least, int most, Function<? super ValueReader, ReadResult<T>> item, String example) {
        if (isText() && twoSides().isEmpty()) {
            wrongType(JsonValue.Type.LIST.words(), " Write " + example + ".");
            return ReadResult.faulty(this);
        }
        return list(least, most, item);
    }

    /**
     * Reads a list.
     *
     * @param <T> the type of the items
     * @param least the fewest items accepted
     * @param most the most items accepted
     * @param item reads one item
     * @return an unmodifiable list
     */
    public <T> ReadResult<List<T>> list(int least, int most, Function<? super ValueReader, ReadResult<T>> item) {
        if (!isReadable(JsonValue.Type.LIST)) {
            return unread();
        }
        int held = value.size();
        int size = held + value.unheld();
        boolean good = true;
        if (size < least || size > most) {
            String rule = least == most
                    ? String.valueOf(least)
                    : most == Integer.MAX_VALUE ? least + " or more" : least + " to " + most;
            source.fault(
                    value,
                    FaultCodes.LENGTH,
                    String.valueOf(size),
                    List.of(rule),
                    "",
                    "the list has " + size + (size == 1 ? " item; " : " items; ") + "must have " + rule + ".",
                    "least",
                    least,
                    "most",
                    most);
            good = false;
        }
        List<T> all = new ArrayList<>(held);
        for (int i = 0; i < held; i++) {
            ValueReader at = of(source, value.at(i));
            ReadResult<T> got = at.guarded(item, at);
            if (got.isFaulty() || !got.isGiven()) {
                good = false;
            } else {
                all.add(got.get());
            }
        }
        return good ? ReadResult.of(this, Collections.unmodifiableList(all)) : ReadResult.faulty(this);
    }

    /** Returns whether a list was so long that not all of it is held. */
    boolean isCut() {
        return state == State.GIVEN && value.unheld() > 0;
    }

    /**
     * Reads an object whose member names are free, as a map.
     *
     * @param <T> the type of the values
     * @param item reads one value
     * @return an unmodifiable map in the order written; names that begin with {@code x-} are kept for others, not part
     *     of it
     */
    public <T> ReadResult<Map<String, T>> map(Function<? super ValueReader, ReadResult<T>> item) {
        if (!isReadable(JsonValue.Type.OBJECT)) {
            return unread();
        }
        boolean good = true;
        Map<String, T> all = new LinkedHashMap<>();
        for (JsonValue member : value.members()) {
            ValueReader at = of(source, member);
            if (member.step().isBlank()) {
                source.faultAtName(member, FaultCodes.BLANK, List.of(), "", "the name is empty. Write one.");
                good = false;
            }
            ReadResult<T> got = at.guarded(item, at);
            if (got.isFaulty() || !got.isGiven()) {
                good = false;
            } else {
                all.put(member.step(), got.get());
            }
        }
        good &= !source.session().isFaulty(value);
        return good ? ReadResult.of(this, Collections.unmodifiableMap(all)) : ReadResult.faulty(this);
    }

    /**
     * Reads an object written here, or in another document: {@code {"ref": "studio.json"}}. The other document has a
     * head of its own; its faults are reported with its name, at their places in it.
     *
     * @param <T> the type of the value
     * @param format the format of the other document
     * @param mapping asks for the members and makes the value
     * @return the value
     */
    public <T> ReadResult<T> reference(DocumentFormat format, Function<? super ObjectReader, ReadResult<T>> mapping) {
        if (!isReadable(JsonValue.Type.OBJECT)) {
            return unread();
        }
        ObjectReader object = ObjectReader.of(source, value);
        if (!object.has("ref")) {
            return guarded(mapping, object);
        }
        ValueReader refAt = object.required("ref");
        ReadResult<String> reference = refAt.text();
        object.close();
        if (reference.isFaulty() || source.session().isFaulty(value)) {
            return ReadResult.faulty(this);
        }
        ReadResult<T> got = WholeDocuments.follow(source, refAt.value, reference.get(), format, mapping);
        if (got.isFaulty()) {
            source.session().mark(refAt.value);
            return ReadResult.faulty(this);
        }
        return ReadResult.of(this, got.get());
    }

    /**
     * States in which order the items of this list will be written, for what is kept in them.
     *
     * @param read the items as they were read
     * @param written the items as they will be written; what is not among them is written nowhere
     */
    public void writtenAs(List<?> read, List<?> written) {
        if (state == State.GIVEN && !source.kept().isEmpty()) {
            source.kept()
                    .reorder(
                            value.pointer(),
                            read.stream().mapToInt(written::indexOf).toArray());
        }
    }

    /** Reads a value of one sort as it stands, whatever is in it. */
    ReadResult<JsonValue> tree(JsonValue.Type wanted) {
        return isReadable(wanted) ? ReadResult.of(this, value.detached()) : unread();
    }

    /** Runs a mapping; a refusal or a faulty value taken too early ends up at this place. */
    <I, T> ReadResult<T> guarded(Function<? super I, ReadResult<T>> mapping, I input) {
        try {
            ReadResult<T> got = mapping.apply(input);
            return got.isFaulty() || source.session().isFaulty(value) ? ReadResult.faulty(this) : got;
        } catch (PapermathException e) {
            refuse(e, List.of());
        } catch (ReadResult.Faulty e) {
            source.session().mark(value);
        }
        return ReadResult.faulty(this);
    }

    @Override
    public String toString() {
        return state == State.GIVEN ? value.found() : "nothing";
    }
}
