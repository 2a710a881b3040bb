package org.papermath.fibre;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.papermath.fibre.Fibre.SourceClass;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;
import org.papermath.text.EditDistance;

/** The fibres the library knows by name. A fibre that is not here is made with {@link Fibre#of}. */
public final class Fibres {
    /** Second-cut cotton linter: short, soft, nearly pure cellulose. */
    public static final Fibre LINTER_SECOND_CUT =
            Fibre.of("linter-second-cut", "cotton linter, second cut", SourceClass.SEED_HAIR, "linter", "cotton");

    /** First-cut cotton linter, longer than the second cut. */
    public static final Fibre LINTER_FIRST_CUT =
            Fibre.of("linter-first-cut", "cotton linter, first cut", SourceClass.SEED_HAIR, "linter", "cotton");

    /** Cotton rag, as cloth or as half-stuff; its sheets take up moisture as rag paper does. */
    public static final Fibre COTTON_RAG = Fibre.of("cotton-rag", "cotton rag", SourceClass.RAG, "rag-paper", "cotton");

    /** Denim: a cotton rag of hard-twisted yarn. */
    public static final Fibre DENIM = Fibre.of("denim", "denim", SourceClass.RAG, "cotton-rag", "rag-paper", "cotton");

    /** Abaca, from the leaf sheath of a banana plant. */
    public static final Fibre ABACA = Fibre.of("abaca", "abaca", SourceClass.LEAF);

    /** Raw flax. */
    public static final Fibre FLAX_RAW = Fibre.of("flax-raw", "raw flax", SourceClass.BAST, "flax", "linen");

    /** Linen rag. */
    public static final Fibre LINEN_RAG = Fibre.of("linen-rag", "linen rag", SourceClass.RAG, "linen", "flax");

    /** Raw hemp; flax and hemp take up moisture alike. */
    public static final Fibre HEMP_RAW = Fibre.of("hemp-raw", "raw hemp", SourceClass.BAST, "hemp", "linen");

    /** Kozo, the inner bark of paper mulberry. */
    public static final Fibre KOZO = Fibre.of("kozo", "kozo", SourceClass.BAST, "kraft");

    /** Mitsumata. */
    public static final Fibre MITSUMATA = Fibre.of("mitsumata", "mitsumata", SourceClass.BAST, "kraft");

    /** Gampi. */
    public static final Fibre GAMPI = Fibre.of("gampi", "gampi", SourceClass.BAST, "kraft");

    /** Sisal, cooked; the fibre of an agave leaf. */
    public static final Fibre SISAL = Fibre.of("sisal", "sisal", SourceClass.LEAF, "agave", "kraft");

    /** Jute, cooked. */
    public static final Fibre JUTE = Fibre.of("jute", "jute", SourceClass.BAST, "kraft");

    /** Esparto grass. */
    public static final Fibre ESPARTO = Fibre.of("esparto", "esparto", SourceClass.GRASS, "kraft");

    /** Straw, cooked. */
    public static final Fibre STRAW = Fibre.of("straw", "straw", SourceClass.GRASS, "kraft");

    /** Bleached kraft pulp of softwood. */
    public static final Fibre SOFTWOOD_KRAFT =
            Fibre.of("softwood-kraft", "softwood bleached kraft", SourceClass.WOOD, "kraft");

    /** Bleached kraft pulp of hardwood. */
    public static final Fibre HARDWOOD_KRAFT =
            Fibre.of("hardwood-kraft", "hardwood bleached kraft", SourceClass.WOOD, "kraft");

    private static final List<Fibre> ALL = List.of(
            LINTER_SECOND_CUT,
            LINTER_FIRST_CUT,
            COTTON_RAG,
            DENIM,
            ABACA,
            FLAX_RAW,
            LINEN_RAG,
            HEMP_RAW,
            KOZO,
            MITSUMATA,
            GAMPI,
            SISAL,
            JUTE,
            ESPARTO,
            STRAW,
            SOFTWOOD_KRAFT,
            HARDWOOD_KRAFT);

    private Fibres() {}

    /**
     * Returns every fibre the library knows.
     *
     * @return an unmodifiable list
     */
    public static List<Fibre> all() {
        return ALL;
    }

    /**
     * Finds a fibre by its id or name, whatever the case of the letters.
     *
     * @param text the id or the name
     * @return the fibre
     * @throws Unclear if several fibres go by the word, such as linter
     * @throws Refused if no fibre has that id or name; the nearest is named, and none is taken in its place
     */
    public static Fibre find(String text) {
        Objects.requireNonNull(text, "text");
        for (Fibre fibre : ALL) {
            if (fibre.id().equals(text)) {
                return fibre;
            }
        }
        String wanted = plain(text);
        for (Fibre fibre : ALL) {
            if (plain(fibre.id()).equals(wanted) || plain(fibre.name()).equals(wanted)) {
                return fibre;
            }
        }
        List<Fibre> called =
                ALL.stream().filter(fibre -> words(fibre).contains(wanted)).toList();
        if (called.size() > 1) {
            throw new Unclear(
                    "fibre.unclear",
                    "fibre: \"" + text + "\" is a name of several fibres.",
                    called.stream()
                            .map(fibre -> new Unclear.Candidate(fibre.id(), fibre.name()))
                            .toList(),
                    "found",
                    text,
                    "accepted",
                    called.stream().map(Fibre::id).toList());
        }
        Fibre nearest = called.size() == 1
                ? called.get(0)
                : ALL.stream()
                        .min(Comparator.comparingInt(fibre -> Math.min(
                                EditDistance.between(wanted, plain(fibre.id())),
                                EditDistance.between(wanted, plain(fibre.name())))))
                        .orElseThrow();
        throw Refused.of(
                "fibre.unknown",
                "fibre: \"" + text + "\" is not one the library knows. The nearest is " + nearest.id() + " ("
                        + nearest.name()
                        + "). Known: "
                        + String.join(", ", ALL.stream().map(Fibre::id).toList())
                        + ". For another fibre use Fibre.of with a name of your own.",
                "found",
                text,
                "nearest",
                nearest.id(),
                "accepted",
                ALL.stream().map(Fibre::id).toList());
    }

    private static String plain(String text) {
        return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s,_-]+", " ");
    }

    private static List<String> words(Fibre fibre) {
        return List.of(plain(fibre.id() + " " + fibre.name()).split(" "));
    }
}
