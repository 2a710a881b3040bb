package org.papermath.card;

import java.util.List;

/** A form a card is written in: as text, or as a page to print. */
interface CardForm {
    /** The head: what it is, of which order, for whom, and how to read it. */
    void title(String kind, String order, String whose, String how);

    /** Begins a section. */
    void section(int number, String name);

    /** A line with a word in front of it; an empty word goes on with the line above. */
    void row(String label, String text);

    /** A line that is alike for all pieces. */
    void alike(String label, String cell);

    /** A line with a cell for each piece. */
    void cells(String label, List<String> cells);

    /** A sentence, with its mark: {@code !} for a caution or warning, {@code -} for a note, or none. */
    void line(String mark, String text);

    /** The days in their order. */
    void days(List<DatedWork> days);

    /** What comes before the card, and what it rests on. */
    void foot(String before, String rests);
}
