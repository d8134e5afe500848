package deferent.record;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** Known words near one that is not known, by Levenshtein's edit distance, best first. */
public final class Nearest {
    private Nearest() {}

    public static List<String> to(String word, Collection<String> known) {
        int most = Math.max(2, word.length() / 3);
        return known.stream()
                .filter(k -> distance(word, k) <= most || k.startsWith(word + "_"))
                .sorted(Comparator.comparingInt((String k) -> distance(word, k)))
                .limit(3)
                .toList();
    }

    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int kept = corner + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                corner = row[j];
                row[j] = Math.min(kept, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
