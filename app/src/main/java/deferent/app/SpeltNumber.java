package deferent.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/** Numbers said in words, "sixty" or "twenty-five", for whoever typed one where digits stand. */
final class SpeltNumber {
    private static final List<String> SMALL =
            List.of(
                    "zero",
                    "one",
                    "two",
                    "three",
                    "four",
                    "five",
                    "six",
                    "seven",
                    "eight",
                    "nine",
                    "ten",
                    "eleven",
                    "twelve",
                    "thirteen",
                    "fourteen",
                    "fifteen",
                    "sixteen",
                    "seventeen",
                    "eighteen",
                    "nineteen");
    private static final List<String> TENS =
            List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

    private static final Map<String, Integer> WORDS = words();

    private SpeltNumber() {}

    private static Map<String, Integer> words() {
        Map<String, Integer> words = new LinkedHashMap<>();
        for (int i = 0; i < SMALL.size(); i++) {
            words.put(SMALL.get(i), i);
        }
        for (int i = 0; i < TENS.size(); i++) {
            words.put(TENS.get(i), 20 + 10 * i);
        }
        words.put("hundred", 100);
        return words;
    }

    /** The number that words say, or nearly say; empty where they are no number. */
    static OptionalInt of(String text) {
        List<Integer> parts = new ArrayList<>();
        for (String word : text.strip().toLowerCase(Locale.ROOT).split("[\\s-]+")) {
            List<String> near =
                    WORDS.containsKey(word)
                            ? List.of(word)
                            : word.length() < 3
                                    ? List.of()
                                    : NotFound.near(word, WORDS.keySet()).stream()
                                            // "long" is not spelt nearly as "one" is.
                                            .filter(known -> known.charAt(0) == word.charAt(0))
                                            .toList();
            if (near.isEmpty()) {
                return OptionalInt.empty();
            }
            parts.add(WORDS.getOrDefault(near.get(0), 0));
        }
        int sum = 0;
        for (int part : parts) {
            sum = part == 100 ? Math.max(1, sum) * part : sum + part;
        }
        return OptionalInt.of(sum);
    }
}
