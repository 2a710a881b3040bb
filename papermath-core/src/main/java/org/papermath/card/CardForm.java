package org.papermath.card;

import java.util.List;

/** A form a card is written in: as text, or as a page to print. */
interface CardForm {
    /** A cell of a table that is left to write on. */
    String TO_WRITE = "\uE006";
    /** A cell for two counts. */
    String TWO_TO_WRITE = "\uE007 / \uE007";

    /**
     * The head.
     *
     * @param kind what it is
     * @param order of which order
     * @param whose for whom
     * @param leaves when the parcel leaves; empty where that is not said
     * @param key what the marks mean
     */
    void title(String kind, String order, String whose, String leaves, String key);

    /**
     * Begins a section.
     *
     * @param number its number; 0 for none
     * @param name what it is called
     * @param aside what stands at the end of its head, such as the day; may be empty
     */
    void section(int number, String name, String aside);

    /** Begins a new page with the next section: the work goes on in another place. */
    void otherPlace();

    /** A sentence with its mark. */
    void line(Mark mark, String text);

    /** A sentence with its mark and a word in front of it. */
    default void row(Mark mark, String label, String text) {
        line(mark, label.isEmpty() ? text : label + ": " + text);
    }

    /**
     * Rows under heads, wrapped within their columns.
     *
     * @param mark what each row is
     * @param heads the heads of the columns, the first that of the names
     * @param rows the rows, each with as many cells as there are heads
     */
    void table(Mark mark, List<String> heads, List<List<String>> rows);

    /**
     * Pieces as columns, several below if there are many; for two or more.
     *
     * @param head the word over the labels
     * @param names the heads of the columns
     * @param rows the rows
     */
    void columns(String head, List<String> names, List<Across> rows);

    /** A picture; a form that has none leaves it out. */
    void picture(Picture picture);

    /** What comes before the card, and what it rests on. */
    void foot(String before, String rests);
}
