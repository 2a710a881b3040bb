package org.papermath.mail;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * The limits of size, thickness, mass and shape of the letter services of one country, as dated data. Immutable.
 *
 * <p>Limits of the mail change. The library ships what was found, with the year where one is known; {@link #read} takes
 * the limits of today in the same form.
 */
public final class MailLimits {
    private static final String HEADER =
            "country;service;dated;min-short;min-long;max-short;max-long;max-sum;min-thick;max-thick;"
                    + "max-mass;steps;min-aspect;max-aspect;plus-short;plus-long;plus-thick;note";

    private final String country;
    private final List<Service> services;

    /** Loads the table on first use only. */
    private static final class Shipped {
        static final Map<String, MailLimits> TABLE = load();
    }

    /** A service; lengths in metres, masses in kilograms, a limit that is not set is not a number. */
    private record Service(
            String name,
            int year,
            double minShort,
            double minLong,
            double maxShort,
            double maxLong,
            double maxSum,
            double minThick,
            double maxThick,
            double maxMass,
            List<Double> steps,
            double minAspect,
            double maxAspect,
            double plusShort,
            double plusLong,
            double plusThick,
            String note) {}

    private MailLimits(String country, List<Service> services) {
        this.country = country;
        this.services = services;
    }

    /**
     * Returns the countries whose limits the library ships.
     *
     * @return an unmodifiable list of names
     */
    public static List<String> countries() {
        return List.copyOf(Shipped.TABLE.keySet());
    }

    /**
     * Returns the limits the library ships for a country.
     *
     * @param country one of {@link #countries()}, whatever the case of the letters
     * @return the limits
     * @throws Refused if the library ships none for it
     */
    public static MailLimits of(String country) {
        Objects.requireNonNull(country, "country");
        for (Map.Entry<String, MailLimits> entry : Shipped.TABLE.entrySet()) {
            if (entry.getKey().equalsIgnoreCase(country.strip())) {
                return entry.getValue();
            }
        }
        throw Refused.of(
                "mail.country",
                "mail: no limits for \"" + country + "\". There are limits for " + String.join(", ", countries())
                        + ". Use one of these, or leave the country out.",
                "given",
                country,
                "accepted",
                countries());
    }

    /**
     * Reads limits of one's own: one country, a line for each service from the smallest to the largest, cells parted by
     * semicolons, millimetres and grams, a cell left empty where there is no limit.
     *
     * <p>The first line names the columns: {@code country;service;dated;min-short;min-long;max-short;max-long;max-sum;
     * min-thick;max-thick;max-mass;steps;min-aspect;max-aspect;plus-short;plus-long;plus-thick;note} (in one line).
     * Steps are parted by a vertical bar. A piece outside the aspect is still taken, as what the note says. A piece
     * over plus-short or plus-long must be plus-thick. Lines that begin with a number sign are remarks.
     *
     * @param table the text
     * @return the limits
     * @throws Refused if the text cannot be read or is of more than one country
     */
    public static MailLimits read(CharSequence table) {
        Objects.requireNonNull(table, "table");
        Map<String, MailLimits> found = parse(table.toString());
        if (found.size() != 1) {
            throw Refused.of(
                    "mail.table",
                    "mail: the table holds " + found.size() + " countries; exactly one is needed.",
                    "found",
                    found.size());
        }
        return found.values().iterator().next();
    }

    private static Map<String, MailLimits> load() {
        try (InputStream stream = MailLimits.class.getResourceAsStream("mail-limits.csv")) {
            if (stream == null) {
                throw new IllegalStateException("the library is incomplete: mail-limits.csv is missing");
            }
            return parse(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, MailLimits> parse(String text) {
        Map<String, List<Service>> byCountry = new LinkedHashMap<>();
        boolean header = true;
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            if (header) {
                if (!line.strip().equals(HEADER)) {
                    throw Refused.of(
                            "mail.table",
                            "mail: line " + number + " should name the columns: " + HEADER,
                            "line",
                            number,
                            "found",
                            line);
                }
                header = false;
                continue;
            }
            String[] cell = line.split(";", -1);
            if (cell.length != 18) {
                throw Refused.of(
                        "mail.table",
                        "mail: line " + number + " has " + cell.length + " cells; must have 18.",
                        "line",
                        number,
                        "found",
                        cell.length);
            }
            double mm = 1e-3;
            List<Double> steps = new ArrayList<>();
            if (!cell[11].isBlank()) {
                for (String step : cell[11].split("\\|", -1)) {
                    steps.add(limit(step, mm, number));
                }
            }
            double year = limit(cell[2], 1, number);
            byCountry
                    .computeIfAbsent(cell[0].strip(), k -> new ArrayList<>())
                    .add(new Service(
                            cell[1].strip(),
                            Double.isNaN(year) ? 0 : (int) year,
                            limit(cell[3], mm, number),
                            limit(cell[4], mm, number),
                            limit(cell[5], mm, number),
                            limit(cell[6], mm, number),
                            limit(cell[7], mm, number),
                            limit(cell[8], mm, number),
                            limit(cell[9], mm, number),
                            limit(cell[10], mm, number),
                            List.copyOf(steps),
                            limit(cell[12], 1, number),
                            limit(cell[13], 1, number),
                            limit(cell[14], mm, number),
                            limit(cell[15], mm, number),
                            limit(cell[16], mm, number),
                            cell[17].strip()));
        }
        Map<String, MailLimits> limits = new LinkedHashMap<>();
        byCountry.forEach((country, services) -> limits.put(country, new MailLimits(country, List.copyOf(services))));
        return limits;
    }

    private static double limit(String cell, double factor, int line) {
        if (cell.isBlank()) {
            return Double.NaN;
        }
        try {
            double value = Double.parseDouble(cell.strip()) * factor;
            if (value >= 0 && value < Double.POSITIVE_INFINITY) {
                return value;
            }
        } catch (NumberFormatException e) {
            // refused below
        }
        throw Refused.of(
                "mail.table",
                "mail: line " + line + ": \"" + cell + "\" is not a limit. Write a number of zero or more.",
                "line",
                line,
                "found",
                cell);
    }

    /**
     * Returns the country.
     *
     * @return the name
     */
    public String country() {
        return country;
    }

    /**
     * Returns the services, from the smallest to the largest.
     *
     * @return an unmodifiable list of names
     */
    public List<String> services() {
        return services.stream().map(Service::name).toList();
    }

    /**
     * Judges a piece of mail; its sides may be given in either order.
     *
     * @param side one side of the closed envelope or the card, outside, above zero
     * @param otherSide the other side, above zero
     * @param thickness the greatest thickness, above zero
     * @param mass the mass with all that is in it, above zero
     * @param day the day on which it is to be mailed, to judge the age of the limits
     * @return the verdict
     * @throws Refused if one of them is not above zero
     */
    public Verdict check(
            Quantity<Length> side,
            Quantity<Length> otherSide,
            Quantity<Length> thickness,
            Quantity<Mass> mass,
            LocalDate day) {
        double a = Kinds.LENGTH.siAboveZero(side, "side of the piece");
        double b = Kinds.LENGTH.siAboveZero(otherSide, "other side of the piece");
        double t = Kinds.LENGTH.siAboveZero(thickness, "thickness of the piece");
        double m = Kinds.MASS.siAboveZero(mass, "mass of the piece");
        double shorter = Math.min(a, b);
        double longer = Math.max(a, b);
        List<Failure> failures = new ArrayList<>();
        List<Notice> notices = new ArrayList<>();
        String taking = "";
        int step = 0;
        for (Service service : services) {
            List<Failure> own = failures(service, shorter, longer, t, m);
            failures.addAll(own);
            if (own.isEmpty() && taking.isEmpty()) {
                taking = service.name();
                step = step(service, m);
                age(service, day).ifPresent(notices::add);
                aspect(service, shorter, longer).ifPresent(notices::add);
            }
        }
        if (taking.isEmpty()) {
            age(services.get(services.size() - 1), day).ifPresent(notices::add);
        }
        return new Verdict(country, taking, step, List.copyOf(failures), List.copyOf(notices));
    }

    private static int step(Service service, double mass) {
        for (int i = 0; i < service.steps().size(); i++) {
            if (atMost(mass, service.steps().get(i))) {
                return i + 1;
            }
        }
        return 0;
    }

    /** A limit includes itself, also when the same figure comes by another unit. */
    private static boolean atMost(double value, double limit) {
        return !(value > limit * (1 + 1e-12));
    }

    private static boolean atLeast(double value, double limit) {
        return !(value < limit * (1 - 1e-12));
    }

    private static List<Failure> failures(Service s, double shorter, double longer, double thick, double mass) {
        List<Failure> list = new ArrayList<>();
        least(list, s, "short side", shorter, s.minShort(), "mm");
        least(list, s, "long side", longer, s.minLong(), "mm");
        most(list, s, "short side", shorter, s.maxShort(), "mm");
        most(list, s, "long side", longer, s.maxLong(), "mm");
        most(list, s, "sum of length, width and thickness", longer + shorter + thick, s.maxSum(), "mm");
        least(list, s, "thickness", thick, s.minThick(), "mm");
        most(list, s, "thickness", thick, s.maxThick(), "mm");
        if (!atMost(shorter, s.plusShort()) || !atMost(longer, s.plusLong())) {
            least(list, s, "thickness for this size", thick, s.plusThick(), "mm");
        }
        most(list, s, "mass", mass, s.maxMass(), "g");
        return list;
    }

    private static void least(List<Failure> list, Service s, String what, double value, double limit, String unit) {
        if (!atLeast(value, limit)) {
            list.add(new FoundFailure(
                    s.name(), what, "under", text(value, unit), text(limit, unit), text(limit - value, unit)));
        }
    }

    private static void most(List<Failure> list, Service s, String what, double value, double limit, String unit) {
        if (!atMost(value, limit)) {
            list.add(new FoundFailure(
                    s.name(), what, "over", text(value, unit), text(limit, unit), text(value - limit, unit)));
        }
    }

    private static String text(double si, String unit) {
        return Units.number(Math.rint(si * 1e6) / 1e3) + " " + unit;
    }

    private static Optional<Notice> aspect(Service s, double shorter, double longer) {
        double aspect = longer / shorter;
        if (atLeast(aspect, s.minAspect()) && atMost(aspect, s.maxAspect())) {
            return Optional.empty();
        }
        String word = s.note().isEmpty() ? "outside the usual shape" : s.note();
        return Optional.of(Notice.warning(
                "mail.aspect",
                "Length over height is " + Units.fourDigits(aspect) + ", outside " + Units.fourDigits(s.minAspect())
                        + " to "
                        + Units.fourDigits(s.maxAspect()) + ", so the piece is " + word + ".",
                "aspect",
                aspect,
                "least",
                s.minAspect(),
                "most",
                s.maxAspect(),
                "consequence",
                word));
    }

    private Optional<Notice> age(Service s, LocalDate day) {
        if (s.year() == 0) {
            return Optional.of(Notice.warning(
                    "mail.undated",
                    "The limits of " + country + " carry no date. Ask the carrier before the pieces are made.",
                    "country",
                    country));
        }
        if (LocalDate.of(s.year(), 12, 31).plusYears(1).isBefore(day)) {
            return Optional.of(Notice.warning(
                    "mail.old",
                    "The limits of " + country + " are of " + s.year() + ", more than a year before " + day
                            + ". Ask the carrier before the pieces are made.",
                    "country",
                    country,
                    "year",
                    s.year(),
                    "day",
                    day.toString()));
        }
        return Optional.empty();
    }

    @Override
    public String toString() {
        return country + ": " + String.join(", ", services());
    }

    /** A limit a piece breaks. */
    public sealed interface Failure permits FoundFailure {
        /** {@return the service} */
        String service();

        /** {@return what is limited} */
        String limit();

        /** {@return {@code over} or {@code under}} */
        String direction();

        /** {@return what the piece has, with its unit} */
        String given();

        /** {@return the limit, with its unit} */
        String allowed();

        /** {@return the difference, with its unit} */
        String by();
    }

    private record FoundFailure(String service, String limit, String direction, String given, String allowed, String by)
            implements Failure {
        @Override
        public String toString() {
            return service + ": " + limit + " " + given + " is " + by + " " + direction + " the limit of " + allowed;
        }
    }

    /** What a carrier makes of a piece. Immutable. */
    public static final class Verdict {
        private final String country;
        private final String service;
        private final int step;
        private final List<Failure> failures;
        private final List<Notice> notices;

        private Verdict(String country, String service, int step, List<Failure> failures, List<Notice> notices) {
            this.country = country;
            this.service = service;
            this.step = step;
            this.failures = failures;
            this.notices = notices;
        }

        /**
         * Returns the first service that takes the piece.
         *
         * @return its name, or nothing if none does
         */
        public Optional<String> service() {
            return service.isEmpty() ? Optional.empty() : Optional.of(service);
        }

        /**
         * Returns the step by mass within the service; on the boundary the lower.
         *
         * @return 1 for the first, or nothing where the service has no steps or none takes the piece
         */
        public OptionalInt step() {
            return step == 0 ? OptionalInt.empty() : OptionalInt.of(step);
        }

        /**
         * Returns the limits the piece breaks, of every service that does not take it.
         *
         * @return an unmodifiable list
         */
        public List<Failure> failures() {
            return failures;
        }

        /**
         * Returns the limits of one service the piece breaks.
         *
         * @param name the name of the service
         * @return an unmodifiable list
         */
        public List<Failure> failures(String name) {
            return failures.stream()
                    .filter(failure -> failure.service().equals(name))
                    .toList();
        }

        /**
         * Returns what should be known beside the verdict: an awkward shape, the age of the limits.
         *
         * @return an unmodifiable list
         */
        public List<Notice> notices() {
            return notices;
        }

        @Override
        public String toString() {
            return country + ": "
                    + (service.isEmpty() ? "no service takes it" : service + (step == 0 ? "" : ", step " + step))
                    + (failures.isEmpty()
                            ? ""
                            : "; "
                                    + String.join(
                                            "; ",
                                            failures.stream()
                                                    .map(Failure::toString)
                                                    .toList()));
        }
    }
}
