package deferent.motion.trade;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** How words are compared: what counts as one spelling, and which spellings are near. */
public final class Spelling {
    private Spelling() {}

    /** Letters and figures alone, lower case: "Cat-Eye", "cat eye" and "cateye" are one. */
    public static String key(String text) {
        StringBuilder kept = new StringBuilder();
        text.toLowerCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .forEach(kept::appendCodePoint);
        return kept.toString();
    }

    /** The key of one word with its short form written out: "isolation" of "iso". */
    public static String full(String word) {
        return ShortForms.full(key(word));
    }

    /** What has that {@link #key}, a plural ending forgiven. */
    public static <T> Optional<T> find(Map<String, T> byKey, String key) {
        T found = byKey.get(key);
        for (String plural : new String[] {"s", "es"}) {
            if (found == null && key.endsWith(plural)) {
                found = byKey.get(key.substring(0, key.length() - plural.length()));
            }
        }
        if (found == null && key.endsWith("ies")) {
            found = byKey.get(key.substring(0, key.length() - 3) + "y");
        }
        return Optional.ofNullable(found);
    }

    /** Whether a name can be told from the words and numbers around it. */
    public static boolean sayable(String name) {
        return name.length() <= 60
                && name.codePoints()
                        .allMatch(c -> Character.isLetterOrDigit(c) || c == ' ' || c == '-');
    }

    /** Those of {@code words} spelt nearest to {@code text}, at most three, nearest first. */
    public static List<String> nearest(String text, List<String> words) {
        String key = key(text);
        int most = Math.max(1, Math.min(3, key.length() / 3));
        Map<Integer, List<String>> byDistance = new TreeMap<>();
        Set<String> seen = new HashSet<>();
        for (String word : words) {
            String other = key(word);
            // Letters that one has more must all be added.
            if (Math.abs(other.length() - key.length()) > most || !seen.add(other)) {
                continue;
            }
            int distance = distance(key, other);
            if (distance <= most) {
                byDistance.computeIfAbsent(distance, d -> new ArrayList<>()).add(word);
            }
        }
        List<String> found = new ArrayList<>();
        for (List<String> equallyNear : byDistance.values()) {
            equallyNear.sort(Comparator.comparingInt(String::length));
            found.addAll(equallyNear);
        }
        return found.stream().limit(3).toList();
    }

    /**
     * How many letters to add, drop, change or swap with their neighbour to get from one to the
     * other: the optimal string alignment distance. Source: Damerau, Communications of the ACM 7
     * (1964); from memory.
     */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] =
                        Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
                if (i > 1
                        && j > 1
                        && a.charAt(i - 1) == b.charAt(j - 2)
                        && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
