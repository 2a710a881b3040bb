package org.papermath.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.text.Digits;

/**
 * A class at the vat: so many people who each form so many sheets in so many hours. What has to stand ready, what pace a mould
 * has to keep, how posts and press turns follow, where it gets stuck and what one more would help, and what goes home wet.
 * Immutable.
 *
 * <pre>{@code
 * ClassDay day = ClassDay.of(studio, order.recipes().get(0)).people(8).sheetsEach(3)
 *         .size(mm(148), mm(210)).grammage(Grammage.gsm(120)).within(hours(3)).moulds(2).plan();
 * day.fits(); // true
 * }</pre>
 *
 * <p>All moulds work at once, each with a beginner who takes his time ({@code labour.sheet-time[beginner]}); a mould that
 * drains longer sets the pace instead. A post is built, then pressed; while it is, the next is built where there are felts for
 * it. The fibre is beaten before, out of the class.
 */
public final class ClassDay {
    private static final int MOST_PEOPLE = 200;

    private final MakingPlan plan;
    private final Builder given;
    private final int moulds;
    private final Run likely;
    private final Run quick;
    private final Run slow;

    /** How the hours go: when the last sheet is formed, and when the last post comes out of the press, s. */
    private record Run(double formed, double pressed) {}

    /** What a class is to be. */
    public static final class Builder {
        private final Studio studio;
        private final Recipe recipe;
        private int people;
        private int each;
        private @Nullable Amount<Length> width;
        private @Nullable Amount<Length> height;
        private @Nullable Amount<Grammage> grammage;
        private @Nullable Amount<Time> hours;
        private int moulds;

        private Builder(Studio studio, Recipe recipe) {
            this.studio = studio;
            this.recipe = recipe;
        }

        /**
         * Sets how many people form sheets.
         *
         * @param count 1 to 200
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder people(int count) {
            people = within(count, "people");
            return this;
        }

        /**
         * Sets how many sheets each of them takes home.
         *
         * @param sheets 1 to 200
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder sheetsEach(int sheets) {
            each = within(sheets, "sheets each");
            return this;
        }

        private static int within(int count, String what) {
            if (count < 1 || count > MOST_PEOPLE) {
                throw Refused.of(
                        "class.count",
                        "class: " + count + " " + what + " given; it must be from 1 to " + MOST_PEOPLE + ".",
                        "quantity",
                        what,
                        "given",
                        count,
                        "least",
                        1,
                        "most",
                        MOST_PEOPLE);
            }
            return count;
        }

        /**
         * Sets the size of a sheet when dry, with its deckle edges.
         *
         * @param across its width
         * @param along its height
         * @return this builder
         * @throws Refused if a side is out of range
         */
        public Builder size(Quantity<Length> across, Quantity<Length> along) {
            width = Limits.PIECE_SIDE.check(across, "width of a sheet");
            height = Limits.PIECE_SIDE.check(along, "height of a sheet");
            return this;
        }

        /**
         * Sets the weight of a sheet.
         *
         * @param wanted the grammage
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder grammage(Quantity<Grammage> wanted) {
            grammage = Kinds.GRAMMAGE.check(wanted, "grammage of a sheet");
            return this;
        }

        /**
         * Sets the time there is at the vat and the press, talk and clearing up apart.
         *
         * @param time above zero
         * @return this builder
         * @throws Refused if it is not
         */
        public Builder within(Quantity<Time> time) {
            hours = Kinds.TIME.ofSi(Kinds.TIME.siAboveZero(time, "hours of the class"), "h");
            return this;
        }

        /**
         * Sets how many moulds of the size work at once; without it as many as the studio has of the one that is chosen.
         *
         * @param count 1 to 200
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder moulds(int count) {
            moulds = within(count, "moulds");
            return this;
        }

        /**
         * Plans the class.
         *
         * @return the class
         * @throws Refused if something is not said, or the sheets cannot be made at all
         */
        public ClassDay plan() {
            List<String> unsaid = new ArrayList<>();
            if (people == 0) {
                unsaid.add("people");
            }
            if (each == 0) {
                unsaid.add("sheetsEach");
            }
            if (width == null) {
                unsaid.add("size");
            }
            if (grammage == null) {
                unsaid.add("grammage");
            }
            if (hours == null) {
                unsaid.add("within");
            }
            if (!unsaid.isEmpty()) {
                throw Refused.of(
                        "class.unsaid",
                        "class: " + String.join(", ", unsaid)
                                + " not said. Say how many people, how many sheets each, of"
                                + " what size and weight, within what time.",
                        "missing",
                        String.join(", ", unsaid));
            }
            Order order = Order.of("class")
                    .recipe(recipe)
                    .piece(Piece.of("sheet", people * each, recipe.name())
                            .size(Objects.requireNonNull(width), Objects.requireNonNull(height))
                            .grammage(Objects.requireNonNull(grammage))
                            .edge(Piece.Edge.DECKLE)
                            .build())
                    .build();
            return new ClassDay(MakingPlan.of(order, studio), this);
        }

        @Override
        public String toString() {
            return "class, being put together: " + people + " people, " + each
                    + (each == 1 ? " sheet each of " : " sheets each of ") + recipe.name();
        }
    }

    private ClassDay(MakingPlan plan, Builder given) {
        this.plan = plan;
        this.given = given;
        PiecePlan piece = piece();
        moulds = given.moulds > 0
                ? given.moulds
                : piece.forming().mould().map(mould -> mould.count()).orElse(1);
        Assumption pace = pace();
        likely = run(moulds, feltPosts(), pace.likelySi(), drain(Estimate::likely));
        quick = run(moulds, feltPosts(), pace.lowSi(), drain(Estimate::low));
        slow = run(moulds, feltPosts(), pace.highSi(), drain(Estimate::high));
    }

    /**
     * Begins a class.
     *
     * @param studio the studio
     * @param recipe the stuff
     * @return a builder
     */
    public static Builder of(Studio studio, Recipe recipe) {
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(recipe, "recipe");
        return new Builder(studio, recipe);
    }

    private PiecePlan piece() {
        return plan.pieces().get(0);
    }

    private Assumption pace() {
        Assumptions known = given.studio.assumptions();
        Scope beginner = Scope.of("beginner");
        return known.get("labour.sheet-time", beginner);
    }

    private interface End {
        Amount<Time> of(Estimate<Time> time);
    }

    /** How long a sheet keeps its mould, s; nothing where it is not known how it drains. */
    private double drain(End end) {
        double couch = given.studio.assumptions().si("labour.dip-couch", Scope.GENERAL);
        return piece().drainTimeStage().map(time -> end.of(time).si() + couch).orElse(0.0);
    }

    /** Posts that felts can be in at once; 1 where nothing limits them. */
    private int feltPosts() {
        Optional<Felts> felts = given.studio.felts();
        int each = piece().postsStage().map(PostsPlan::felts).orElse(1);
        return felts.map(set -> Math.max(1, set.count() / each)).orElse(Integer.MAX_VALUE);
    }

    /** Posts are built and pressed one after the other; the next is built while one is pressed, where there are felts. */
    private Run run(int withMoulds, int posts, double pace, double busy) {
        PiecePlan piece = piece();
        int sheets = piece.counts().sheets();
        int inPost = piece.postsStage().map(PostsPlan::sheetsInPost).orElse(sheets);
        double press = piece.pressStage()
                .map(pressing -> pressing.times() * pressing.time().si())
                .orElse(0.0);
        double each = Math.max(pace, busy);
        int count = (sheets + inPost - 1) / inPost;
        double[] out = new double[count];
        double built = 0;
        double pressed = 0;
        for (int i = 0; i < count; i++) {
            int here = Math.min(inPost, sheets - i * inPost);
            double rounds = Math.ceil((double) here / withMoulds);
            double free = i >= posts ? out[i - posts] : 0;
            built = Math.max(built, free) + rounds * each;
            pressed = Math.max(pressed, built) + press;
            out[i] = pressed;
        }
        return new Run(built, pressed);
    }

    // ------------------------------------------------------------------------------------------------ what it says

    /** {@return the plan of all the sheets together: fibre, vat, press, drying} */
    public MakingPlan plan() {
        return plan;
    }

    /** {@return how many people form sheets, 1 to 200} */
    public int people() {
        return given.people;
    }

    /** {@return how many sheets each of them takes home, 1 to 200} */
    public int sheetsEach() {
        return given.each;
    }

    /** {@return the sheets to form in all, with those that will fail and the trials} */
    public int sheets() {
        return piece().counts().sheets();
    }

    /** {@return the moulds that work at once} */
    public int moulds() {
        return moulds;
    }

    /** {@return the stock to have ready, beaten and dosed the day before} */
    public Amount<Volume> stock() {
        return plan.batches().get(0).stock().volume();
    }

    /** {@return the sheets each mould has to give in an hour} */
    public Amount<Dimensionless> perMouldAnHour() {
        return Kinds.NUMBER.ofSi(sheets() / (double) moulds / (hours().si() / 3600), "1");
    }

    /** {@return the sheets a mould gives in an hour with beginners at it} */
    public Estimate<Dimensionless> mouldGivesAnHour() {
        Assumption pace = pace();
        return Estimate.of(
                Kinds.NUMBER.ofSi(3600 / Math.max(pace.likelySi(), drain(Estimate::likely)), "1"),
                Kinds.NUMBER.ofSi(3600 / Math.max(pace.highSi(), drain(Estimate::high)), "1"),
                Kinds.NUMBER.ofSi(3600 / Math.max(pace.lowSi(), drain(Estimate::low)), "1"),
                List.of());
    }

    /** {@return how often the press is filled} */
    public int pressTurns() {
        return piece().postsStage().map(PostsPlan::posts).orElse(0);
    }

    /** {@return when the last sheet is formed, from the beginning} */
    public Estimate<Time> formed() {
        return time(likely.formed, quick.formed, slow.formed);
    }

    /** {@return when the last post comes out of the press, from the beginning} */
    public Estimate<Time> pressed() {
        return time(likely.pressed, quick.pressed, slow.pressed);
    }

    private static Estimate<Time> time(double likely, double quick, double slow) {
        return Estimate.of(
                Kinds.TIME.ofSi(likely, "h"), Kinds.TIME.ofSi(quick, "h"), Kinds.TIME.ofSi(slow, "h"), List.of());
    }

    private Amount<Time> hours() {
        return Objects.requireNonNull(given.hours);
    }

    /** {@return whether all is pressed within the hours there are} */
    public boolean fits() {
        return likely.pressed <= hours().si();
    }

    /** {@return sheets that go home wet from the press, since they are not dry in the hours that are left} */
    public int wetSheets() {
        int ordered = piece().counts().ordered();
        double left = hours().si() - likely.pressed;
        int dry = piece().dryingStage()
                .map(drying -> drying.time().likely().si() <= left ? Math.min(ordered, drying.atOnce()) : 0)
                .orElse(0);
        return ordered - dry;
    }

    /** {@return what a sheet weighs as it goes home from the press} */
    public Amount<Mass> wetSheet() {
        double solids = piece().solids().likely().si();
        return PlainNumbers.grams(piece().forming().solids().si() / solids);
    }

    /** {@return what holds the others up: the moulds, the felts or the press} */
    public String narrowPlace() {
        return narrowest().what;
    }

    /** {@return how much sooner the last post is out with one more of it} */
    public Amount<Time> oneMoreSaves() {
        return Kinds.TIME.ofSi(Math.max(0, likely.pressed - narrowest().pressed), "min");
    }

    private record Narrow(String what, double pressed) {}

    private Narrow narrowest() {
        double pace = pace().likelySi();
        double busy = drain(Estimate::likely);
        Narrow best = new Narrow("the moulds", run(moulds + 1, feltPosts(), pace, busy).pressed);
        if (feltPosts() < Integer.MAX_VALUE) {
            Narrow felts = new Narrow("the felts", run(moulds, feltPosts() + 1, pace, busy).pressed);
            best = felts.pressed < best.pressed ? felts : best;
        }
        double press = piece().pressStage()
                .map(pressing -> pressing.times() * pressing.time().si())
                .orElse(0.0);
        // With one more press its turns no longer wait for each other, only for their posts.
        Narrow presses =
                new Narrow("the press", Math.max(likely.formed + press, run(moulds, feltPosts(), pace, busy).formed));
        return presses.pressed < best.pressed ? presses : best;
    }

    /**
     * Returns what the people hold in their hands: what each does, and what to keep away from.
     *
     * @return some lines of text
     */
    public String handout() {
        PiecePlan piece = piece();
        StringBuilder text = new StringBuilder("At the vat: " + given.people + " people, " + given.each
                + (given.each == 1 ? " sheet each\n" : " sheets each\n"));
        text.append("1 Dip the mould, let it drain until the sheen is gone");
        piece.drainTimeStage()
                .optional()
                .ifPresent(time -> text.append(", about ")
                        .append(Digits.significant(time.likely().in("s"), 2))
                        .append(" s"));
        text.append("; couch it on a damp felt, lay the next felt over it.\n");
        text.append("2 There are ")
                .append(moulds)
                .append(moulds == 1 ? " mould" : " moulds")
                .append(": a sheet has about ")
                .append(Digits.significant(moulds * hours().in("min") / sheets(), 2))
                .append(" min.\n");
        if (pressTurns() > 0) {
            text.append("3 The press is filled ")
                    .append(pressTurns() == 1 ? "once" : pressTurns() + " times")
                    .append("; whoever leads the class works it, nobody else.\n");
        }
        if (wetSheets() > 0) {
            text.append("4 ")
                    .append(wetSheets() == piece.counts().ordered() ? "The sheets go" : wetSheets() + " sheets go")
                    .append(" home wet, about ")
                    .append(wetSheet())
                    .append(
                            " each: between cloths in a flat bag; the same day onto a pane or a board, brushed down at the"
                                    + " rim, dry in a day or two.\n");
        }
        text.append(
                "Keep from the beater and the press. The floor is wet: shoes that hold, no cord near the vat. Lift the mould"
                        + " close to the body; the heaviest thing to carry is ");
        text.append(piece.postsStage()
                .map(posts ->
                        "a post of " + Digits.significant(posts.mass().likely().in("kg"), 2) + " kg and its boards")
                .orElse("a pail"));
        text.append("; whoever finds it heavy asks for a second pair of hands");
        return text.append(".\n").toString();
    }

    /** Returns first whether it can be done, then where it gets stuck. */
    @Override
    public String toString() {
        String all = given.people + " people, " + sheets() + " sheets to form on " + moulds
                + (moulds == 1 ? " mould" : " moulds") + ": ";
        String out = "out of the press after " + pressed() + " of " + hours() + "; ";
        String pace = "a mould has to give " + Digits.three(perMouldAnHour().si()) + " sheets an hour and gives about "
                + Digits.three(mouldGivesAnHour().likely().si());
        String narrow = oneMoreSaves().si() > 0
                ? "; the narrow place is " + narrowPlace() + ": one more saves " + oneMoreSaves()
                : "";
        return all + (fits() ? "it fits, " : "it does not fit, ") + out + pace + narrow;
    }
}
