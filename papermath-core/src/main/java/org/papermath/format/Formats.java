package org.papermath.format;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/**
 * The formats the library knows, and look-up by name and by size.
 *
 * <p>The ISO and JIS series follow from the size of their sheet 0: halve the longer side and drop the fraction of a
 * millimetre. A name that several standards share, such as a bare A6, is not resolved but asked about.
 *
 * @source ISO 216, ISO 217, ISO 269, JIS P 0138; size lists of the North American envelope trade; Tomlinson 1854 for
 *     writing papers; a printing list of 1901; the French tariff of 1741
 */
public final class Formats {
    private static final Map<String, Format> BY_NAME = new LinkedHashMap<>();
    private static final Map<String, Set<Format>> BY_SHORT = new LinkedHashMap<>();

    static {
        halving("ISO A", FormatSystem.ISO_A, Format.Use.SHEET, 841, 1189, 10, "A", "");
        halving("ISO B", FormatSystem.ISO_B, Format.Use.SHEET, 1000, 1414, 10, "B", "");
        halving("ISO C", FormatSystem.ISO_ENVELOPE, Format.Use.ENVELOPE_OUTSIDE, 917, 1297, 10, "C", "");
        halving("ISO RA", FormatSystem.ISO_RA, Format.Use.SHEET, 860, 1220, 4, "RA", "");
        halving("ISO SRA", FormatSystem.ISO_SRA, Format.Use.SHEET, 900, 1280, 4, "SRA", "");
        halving("JIS B", FormatSystem.JIS_B, Format.Use.SHEET, 1030, 1456, 10, "B", "Japan");
        isoEnvelope("ISO DL", 110, 220, "DL");
        isoEnvelope("ISO C6/C5", 114, 229, "C6/C5");
        isoEnvelope("ISO C7/C6", 81, 162, "C7/C6");
        isoEnvelope("ISO B4 envelope", 250, 353, "B4", "B4 envelope");
        isoEnvelope("ISO B5 envelope", 176, 250, "B5", "B5 envelope");
        isoEnvelope("ISO B6 envelope", 125, 176, "B6", "B6 envelope");
        isoEnvelope("ISO E4", 280, 400, "E4");
        load();
    }

    /** ISO A3, 297 × 420 mm. */
    public static final Format ISO_A3 = named("ISO A3");
    /** ISO A4, 210 × 297 mm. */
    public static final Format ISO_A4 = named("ISO A4");
    /** ISO A5, 148 × 210 mm. */
    public static final Format ISO_A5 = named("ISO A5");
    /** ISO A6, 105 × 148 mm. */
    public static final Format ISO_A6 = named("ISO A6");
    /** ISO A7, 74 × 105 mm. */
    public static final Format ISO_A7 = named("ISO A7");
    /** ISO B4, 250 × 353 mm, a sheet. */
    public static final Format ISO_B4 = named("ISO B4");
    /** ISO B5, 176 × 250 mm, a sheet. */
    public static final Format ISO_B5 = named("ISO B5");
    /** ISO B6, 125 × 176 mm, a sheet. */
    public static final Format ISO_B6 = named("ISO B6");
    /** ISO C4, 229 × 324 mm outside, an envelope. */
    public static final Format ISO_C4 = named("ISO C4");
    /** ISO C5, 162 × 229 mm outside, an envelope. */
    public static final Format ISO_C5 = named("ISO C5");
    /** ISO C6, 114 × 162 mm outside, an envelope. */
    public static final Format ISO_C6 = named("ISO C6");
    /** ISO DL, 110 × 220 mm outside, an envelope. */
    public static final Format ISO_DL = named("ISO DL");
    /** JIS B5, 182 × 257 mm. */
    public static final Format JIS_B5 = named("JIS B5");
    /** North American A1 (4 bar) envelope, 3 5/8 × 5 1/8 in outside. */
    public static final Format NA_A1_ENVELOPE = named("NA A1 envelope");
    /** North American A2 (5 1/2 bar) envelope, 4 3/8 × 5 3/4 in outside. */
    public static final Format NA_A2_ENVELOPE = named("NA A2 envelope");
    /** North American A6 (6 bar) envelope, 4 3/4 × 6 1/2 in outside. */
    public static final Format NA_A6_ENVELOPE = named("NA A6 envelope");
    /** North American A7 (Lee) envelope, 5 1/4 × 7 1/4 in outside. */
    public static final Format NA_A7_ENVELOPE = named("NA A7 envelope");
    /** North American A9 envelope, 5 3/4 × 8 3/4 in outside. */
    public static final Format NA_A9_ENVELOPE = named("NA A9 envelope");
    /** North American number 10 envelope, 4 1/8 × 9 1/2 in outside. */
    public static final Format NA_NUMBER_10_ENVELOPE = named("NA No. 10 envelope");
    /** Card for the North American A6 envelope, 4 1/2 × 6 1/4 in. */
    public static final Format NA_A6_CARD = named("NA A6 card");
    /** Card for the North American A7 envelope, 5 × 7 in. */
    public static final Format NA_A7_CARD = named("NA A7 card");
    /** North American letter sheet, 8 1/2 × 11 in. */
    public static final Format NA_LETTER = named("NA letter");
    /** The sheet of 2 × 3 shaku on which momme are based. */
    public static final Format SHAKU_2_BY_3 = named("2 x 3 shaku");

    private Formats() {}

    private static void halving(
            String prefix,
            FormatSystem system,
            Format.Use use,
            int width,
            int height,
            int last,
            String shortPrefix,
            String country) {
        int w = width;
        int h = height;
        for (int n = 0; n <= last; n++) {
            put(Format.of(prefix + n, system, use, Amounts.mm(w), Amounts.mm(h), null, country, 0), shortPrefix + n);
            int half = h / 2;
            h = w;
            w = half;
        }
    }

    private static void isoEnvelope(String name, double width, double height, String... shortNames) {
        put(
                Format.of(
                        name,
                        FormatSystem.ISO_ENVELOPE,
                        Format.Use.ENVELOPE_OUTSIDE,
                        Amounts.mm(width),
                        Amounts.mm(height)),
                shortNames);
    }

    private static void put(Format format, String... shortNames) {
        if (BY_NAME.put(key(format.name()), format) != null) {
            throw new IllegalStateException("format twice: " + format.name());
        }
        for (String text : shortNames) {
            BY_SHORT.computeIfAbsent(key(text), k -> new LinkedHashSet<>()).add(format);
        }
    }

    private static void load() {
        try (InputStream stream = Formats.class.getResourceAsStream("formats.csv")) {
            if (stream == null) {
                throw new IllegalStateException("the library is incomplete: formats.csv is missing");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            boolean header = true;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.startsWith("#") || line.isBlank()) {
                    continue;
                }
                if (header) {
                    header = false;
                    continue;
                }
                String[] cell = line.split(";", -1);
                Format format = Format.of(
                        cell[0],
                        FormatSystem.valueOf(cell[2]),
                        Format.Use.valueOf(cell[3]),
                        Kinds.LENGTH.of(Double.parseDouble(cell[4]), cell[6]),
                        Kinds.LENGTH.of(Double.parseDouble(cell[5]), cell[6]),
                        cell[7],
                        cell[8],
                        cell[9].isEmpty() ? 0 : Integer.parseInt(cell[9]));
                put(format, cell[1].isEmpty() ? new String[0] : cell[1].split("\\|"));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String key(String name) {
        return name.strip().replaceAll("\\s+", " ").replace('×', 'x').toLowerCase(Locale.ROOT);
    }

    private static Format named(String name) {
        Format format = BY_NAME.get(key(name));
        if (format == null) {
            throw new IllegalStateException("no format " + name);
        }
        return format;
    }

    /**
     * Returns every format.
     *
     * @return an unmodifiable list, standard by standard
     */
    public static List<Format> all() {
        return List.copyOf(BY_NAME.values());
    }

    /**
     * Finds a format by its name, whatever the case of the letters.
     *
     * @param name a full name such as {@code ISO A6}, or a short one that only one format has
     * @return the format
     * @throws Unclear if several formats share the name, such as a bare {@code A6} or {@code demy}, with all of them
     * @throws Refused if no format has the name
     */
    public static Format find(String name) {
        Objects.requireNonNull(name, "name");
        String wanted = key(name);
        Format exact = BY_NAME.get(wanted);
        if (exact != null) {
            return exact;
        }
        Set<Format> sharing = BY_SHORT.getOrDefault(wanted, Set.of());
        if (sharing.size() == 1) {
            return sharing.iterator().next();
        }
        if (!sharing.isEmpty()) {
            throw new Unclear(
                    "format.unclear",
                    "format: \"" + name.strip() + "\" is the name of " + sharing.size()
                            + " formats. Give the full name.",
                    sharing.stream()
                            .map(f -> new Unclear.Candidate(f.name(), size(f)))
                            .toList(),
                    "found",
                    name.strip());
        }
        List<String> near = BY_NAME.values().stream()
                .map(Format::name)
                .filter(known -> !wanted.isEmpty() && (key(known).contains(wanted) || wanted.contains(key(known))))
                .limit(6)
                .toList();
        throw Refused.of(
                "format.unknown",
                "format: \"" + name.strip() + "\" is not known."
                        + (near.isEmpty()
                                ? " Give its two sides instead."
                                : " Near it: " + String.join("; ", near) + "."),
                "found",
                name.strip(),
                "near",
                near);
    }

    private static String size(Format format) {
        return format.width() + " × " + format.height()
                + switch (format.use()) {
                    case SHEET -> ", sheet";
                    case CARD -> ", card";
                    case ENVELOPE_OUTSIDE -> ", envelope outside";
                };
    }

    /**
     * Finds the formats of about a size; the sides may be given in either order.
     *
     * @param side one side, above zero
     * @param otherSide the other side, above zero
     * @param tolerance the most each side may differ, zero or more
     * @return the formats whose two sides both lie within the tolerance, the nearest first
     * @throws Refused if a side is not above zero
     */
    public static List<Format> near(Quantity<Length> side, Quantity<Length> otherSide, Quantity<Length> tolerance) {
        double a = Kinds.LENGTH.siAboveZero(side, "side");
        double b = Kinds.LENGTH.siAboveZero(otherSide, "other side");
        double within = Kinds.LENGTH.si(tolerance, "tolerance") + rounding(Math.max(a, b));
        double w = Math.min(a, b);
        double h = Math.max(a, b);
        List<Format> found = new ArrayList<>();
        for (Format format : BY_NAME.values()) {
            if (Math.abs(format.width().si() - w) <= within
                    && Math.abs(format.height().si() - h) <= within) {
                found.add(format);
            }
        }
        found.sort(Comparator.comparingDouble(
                f -> Math.max(Math.abs(f.width().si() - w), Math.abs(f.height().si() - h))));
        return List.copyOf(found);
    }

    /**
     * Finds the envelopes that take a piece with a clearance, judged by their outside size. The inside is smaller: see
     * {@link #envelopesTaking(Quantity, Quantity, Quantity, Quantity)}.
     *
     * @param side one side of the piece, above zero
     * @param otherSide the other side of the piece, above zero
     * @param clearance the least play wanted each way in all, zero or more
     * @return the envelopes, the tightest first
     * @throws Refused if a side is not above zero
     */
    public static List<Format> envelopesTaking(
            Quantity<Length> side, Quantity<Length> otherSide, Quantity<Length> clearance) {
        return envelopesTaking(side, otherSide, clearance, Amounts.mm(0));
    }

    /**
     * Finds the envelopes that take a format with a clearance, judged by their outside size.
     *
     * @param piece a card or sheet, or an envelope that goes into another
     * @param clearance the least play wanted each way in all, zero or more
     * @return the envelopes, the tightest first
     * @throws Refused if the clearance is out of range
     */
    public static List<Format> envelopesTaking(Format piece, Quantity<Length> clearance) {
        Objects.requireNonNull(piece, "piece");
        return envelopesTaking(piece.width(), piece.height(), clearance);
    }

    /**
     * Finds the envelopes that take a piece with a clearance, judged by their inside size. A filling of some thickness
     * takes that thickness again each way: add it to the clearance.
     *
     * @param side one side of the piece, above zero
     * @param otherSide the other side of the piece, above zero
     * @param clearance the least play wanted each way in all, zero or more
     * @param outsideLessInside how much smaller the inside is each way in all, zero or more
     * @return the envelopes, the tightest first
     * @throws Refused if a side is not above zero
     */
    public static List<Format> envelopesTaking(
            Quantity<Length> side,
            Quantity<Length> otherSide,
            Quantity<Length> clearance,
            Quantity<Length> outsideLessInside) {
        double a = Kinds.LENGTH.siAboveZero(side, "side of the piece");
        double b = Kinds.LENGTH.siAboveZero(otherSide, "other side of the piece");
        double needed = Kinds.LENGTH.si(clearance, "clearance")
                + Kinds.LENGTH.si(outsideLessInside, "outside less inside")
                - rounding(Math.max(a, b));
        double w = Math.min(a, b);
        double h = Math.max(a, b);
        return BY_NAME.values().stream()
                .filter(f -> f.use() == Format.Use.ENVELOPE_OUTSIDE)
                .filter(f -> f.width().si() - w >= needed && f.height().si() - h >= needed)
                .sorted(Comparator.comparingDouble(
                        f -> f.width().si() * f.height().si()))
                .toList();
    }

    /** A length that only rounding makes: a play of 6.35 mm out of 133.35 mm less 127 mm is 6.35 mm. */
    private static double rounding(double size) {
        return 1e-12 + 1e-14 * size;
    }

    /**
     * Returns the tolerance of a trimmed sheet side.
     *
     * @param side the nominal side, above zero
     * @return 1.5 mm up to 150 mm, 2 mm up to 600 mm, 3 mm above
     * @throws Refused if the side is not above zero
     * @source ISO 216, recalled, not looked up
     */
    public static Amount<Length> trimmedTolerance(Quantity<Length> side) {
        return step(side, 0.150, 1.5, 0.600, 2, 3);
    }

    /**
     * Returns the tolerance of an untrimmed sheet side.
     *
     * @param side the nominal side, above zero
     * @return 3 mm up to 600 mm, 4 mm up to 1000 mm, 5 mm above
     * @throws Refused if the side is not above zero
     * @source ISO 479:1975, now in ISO 217
     */
    public static Amount<Length> untrimmedTolerance(Quantity<Length> side) {
        return step(side, 0.600, 3, 1.000, 4, 5);
    }

    private static Amount<Length> step(
            Quantity<Length> side, double first, double a, double second, double b, double c) {
        double length = Kinds.LENGTH.siAboveZero(side, "side") - 1e-12;
        return Amounts.mm(length <= first ? a : length <= second ? b : c);
    }
}
