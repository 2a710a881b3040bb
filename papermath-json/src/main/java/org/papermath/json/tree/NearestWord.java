package org.papermath.json.tree;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The accepted word that looks most like what was found, and lists of the accepted ones. */
public final class NearestWord {
    private static final int LONGEST = 64;
    private static final int MOST_LISTED = 20;
    private static final int BEGINNING = 3;

    /**
     * What members are called otherwise: each line a word of the trade or of everyday, and the members it may mean, of which
     * the first that is known in an object is meant there. Common practice.
     */
    private static final Map<String, List<String>> ALSO_CALLED = also("""
            thickness: caliper
            gauge: caliper
            gsm: grammage
            weight: grammage, mass, stock, read
            basisweight: grammage
            substance: grammage
            qty: count
            quantity: count, dose
            number: count
            copies: count
            pieces: count
            format: size
            dimensions: size, sides, opening, platen
            opening: size
            size: opening, platen, sides, volume, trough
            shape: outline
            capacity: volume, trough
            litres: volume, trough
            liters: volume, trough
            deckle: opening
            paper: recipe
            pulp: recipe, furnish
            fibres: furnish
            fibers: furnish
            fiber: fibre
            percent: share, dose
            percentage: share, dose
            proportion: share
            amount: count, dose
            deadline: due
            date: due
            type: kind, style, purpose, what
            title: name
            extra: spare
            extras: spare
            overs: spare
            rh: humidity
            envelope: envelopeFor
            allowance: clearance
            play: clearance
            country: mailedIn
            steps: scaleStep
            ram: jack
            load: ratedLoad
            """);

    private static Map<String, List<String>> also(String lines) {
        Map<String, List<String>> all = new HashMap<>();
        for (String line : lines.strip().split("\n", -1)) {
            int colon = line.indexOf(": ");
            all.put(line.substring(0, colon), List.of(line.substring(colon + 2).split(", ", -1)));
        }
        return all;
    }

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
        return best.isEmpty() ? byBeginning(wanted, accepted) : best;
    }

    /** Returns the nearest of the members of an object: also one that is called otherwise in the trade. */
    static String ofMembers(String found, Collection<String> members) {
        for (String meant : ALSO_CALLED.getOrDefault(plain(found), List.of())) {
            if (members.contains(meant)) {
                return meant;
            }
        }
        return of(found, members);
    }

    /** The one word that begins with what was found, or that it begins with. */
    private static String byBeginning(String wanted, Collection<String> accepted) {
        String only = "";
        for (String word : accepted) {
            String known = plain(word);
            boolean begins = Math.min(wanted.length(), known.length()) >= BEGINNING
                    && (known.startsWith(wanted) || wanted.startsWith(known));
            if (begins && !only.isEmpty()) {
                return "";
            }
            only = begins ? word : only;
        }
        return only;
    }

    /** Lists the words that begin as a name with parts does, up to its first point, the nearest first. */
    public static List<String> ofOneFamily(String found, Collection<String> words) {
        int point = found.indexOf('.');
        if (point < 1 || found.length() > LONGEST) {
            return List.of();
        }
        String family = found.substring(0, point + 1).toLowerCase(Locale.ROOT);
        String wanted = plain(found);
        return words.stream()
                .filter(word -> word.length() <= LONGEST && word.startsWith(family))
                .sorted(Comparator.comparingInt(word -> distance(wanted, plain(word))))
                .toList();
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
