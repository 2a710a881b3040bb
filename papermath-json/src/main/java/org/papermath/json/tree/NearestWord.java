package org.papermath.json.tree;

import java.util.Collection;
import java.util.Locale;
import java.util.stream.Collectors;

/** The accepted word that looks most like what was found, and lists of the accepted ones. */
public final class NearestWord {
    private static final int LONGEST = 64;
    private static final int MOST_LISTED = 20;

    private NearestWord() {}

    /** Returns the nearest word, or an empty text if none is near. */
    static String of(String found, Collection<String> accepted) {
        if (found.length() > LONGEST) {
            return "";
        }
        String wanted = plain(found);
        String best = "";
        int least = Math.max(1, wanted.length() / 3) + 1;
        for (String word : accepted) {
            if (word.length() > LONGEST) {
                continue;
            }
            int distance = distance(wanted, plain(word));
            if (distance < least) {
                least = distance;
                best = word;
            }
        }
        return best;
    }

    /** Lists words, but not so many that nobody reads them. */
    public static String listed(Collection<String> words) {
        String few = words.stream().limit(MOST_LISTED).map(JsonValue::shown).collect(Collectors.joining(", "));
        return words.size() > MOST_LISTED ? few + " and " + (words.size() - MOST_LISTED) + " more" : few;
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace("-", "").replace("_", "").replace(" ", "");
    }

    /** Counts the letters put in, left out, changed or swapped with their neighbour. */
    private static int distance(String a, String b) {
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] now = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            now[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                now[j] = Math.min(Math.min(now[j - 1], last[j]) + 1, last[j - 1] + change);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    now[j] = Math.min(now[j], before[j - 2] + 1);
                }
            }
            int[] spare = before;
            before = last;
            last = now;
            now = spare;
        }
        return last[b.length()];
    }
}
