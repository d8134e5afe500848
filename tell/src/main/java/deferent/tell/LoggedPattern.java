package deferent.tell;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a log of practice holds of one pattern.
 *
 * @param pattern in trade words without a tempo, or its name
 * @param times how often it was practised, at least once
 * @param minutes in all
 * @param parts those of the minutes that went to a part of it alone, by that part
 * @param reached the quickest that did not go badly, of the whole pattern where one is known
 * @param last the day it was last practised, such as "2026-11-22"
 * @param went how it went then, such as "well"
 */
public record LoggedPattern(
        String pattern,
        int times,
        double minutes,
        Map<String, Double> parts,
        Optional<Reached> reached,
        String last,
        Optional<String> went) {
    /**
     * A tempo.
     *
     * @param tempo hand cycles a minute, or poi beats of a weave or where both hands are still
     * @param part of which part alone; empty for the whole pattern
     */
    public record Reached(double tempo, Optional<String> part) {}

    public LoggedPattern {
        parts = Collections.unmodifiableMap(new TreeMap<>(parts));
    }
}
