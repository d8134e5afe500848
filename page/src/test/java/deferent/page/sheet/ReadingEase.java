package deferent.page.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How easily sentences are read. Reading ease: 206.835 − 1.015 · words a sentence − 84.6 ·
 * syllables a word (R. Flesch, A new readability yardstick, Journal of Applied Psychology 32, 1948;
 * 70 and more is what he calls fairly easy, read in the seventh grade, at about twelve). Grade:
 * 0.39 · words a sentence + 11.8 · syllables a word − 15.59 (Kincaid, Fishburne, Rogers, Chissom,
 * Navy Research Branch Report 8-75, 1975). Syllables are an estimate of ours from the letters, with
 * the few words of the sheets that it gets wrong listed. No word is left out, the trade's neither.
 */
record ReadingEase(int sentences, int words, int syllables) {
    private static final Map<String, Integer> WRITTEN_OTHERWISE =
            Map.of("poi", 1, "people", 2, "opposite", 3, "triquetra", 3, "audience", 3, "being", 2);

    static ReadingEase of(List<String> sentences) {
        int words = 0;
        int syllables = 0;
        for (String sentence : sentences) {
            for (String word : sentence.split("[^A-Za-z0-9']+")) {
                if (!word.isEmpty()) {
                    words++;
                    syllables += syllables(word);
                }
            }
        }
        return new ReadingEase(sentences.size(), words, syllables);
    }

    double ease() {
        return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words;
    }

    double grade() {
        return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
    }

    /** Groups of vowels, less an e at the end that is not heard. */
    static int syllables(String said) {
        String word = said.toLowerCase(Locale.ROOT);
        if (WRITTEN_OTHERWISE.containsKey(word)) {
            return WRITTEN_OTHERWISE.get(word);
        }
        String heard =
                word.replaceFirst("(?<=[^aeiouyl])e$|(?<=[aeiouy]l)e$", "")
                        .replaceFirst("(?<=[^aeioutd])ed$", "d")
                        .replaceFirst("(?<=[^aeiouyscxzh])es$", "s");
        int groups = 0;
        boolean before = false;
        for (int i = 0; i < heard.length(); i++) {
            boolean vowel = "aeiouy".indexOf(heard.charAt(i)) >= 0;
            groups += vowel && !before ? 1 : 0;
            before = vowel;
        }
        return Math.max(1, groups);
    }
}
