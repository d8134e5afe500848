package deferent.page.web;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.page.sheet.Taught;
import deferent.record.SetReading;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Patterns and sets with all that is said of them: what the hall file and a site are made of.
 *
 * @param title of the whole
 * @param patterns those to choose from, then those that only stand in sets
 * @param listed how many there are to choose from
 * @param sets of these patterns
 * @param lexicon the user's own words
 */
public record TaughtShelf(
        String title, List<Taught> patterns, int listed, List<TaughtSet> sets, Lexicon lexicon) {
    public TaughtShelf {
        patterns = List.copyOf(patterns);
        sets = List.copyOf(sets);
    }

    /** The number of the pattern of that name. */
    Optional<Integer> named(String name) {
        return first(one -> one.pattern().name().equals(name));
    }

    /**
     * The number of the pattern that is spun in a step of a set, as it is there, or else as it is
     * kept: a song gives it another tempo.
     */
    Optional<Integer> spun(SetReading set, int step) {
        return set.plan()
                .stays()
                .get(step)
                .flatMap(
                        stay ->
                                that(stay.wanted().pairing())
                                        .or(
                                                () ->
                                                        set.places()
                                                                .get(step)
                                                                .pattern()
                                                                .flatMap(p -> that(p.pairing()))));
    }

    private Optional<Integer> that(Pairing pairing) {
        return first(one -> one.pattern().pairing().equals(pairing));
    }

    private Optional<Integer> first(Predicate<Taught> which) {
        return IntStream.range(0, patterns.size())
                .filter(i -> which.test(patterns.get(i)))
                .boxed()
                .findFirst();
    }
}
