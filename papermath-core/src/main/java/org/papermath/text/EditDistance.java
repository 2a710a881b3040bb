package org.papermath.text;

/** How far two words are apart. */
public final class EditDistance {
    private EditDistance() {}

    /** The number of letters to change, add or leave out to turn one word into the other. */
    public static int between(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int change = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}
