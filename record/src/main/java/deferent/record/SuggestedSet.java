package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.search.set.PairBook;
import deferent.search.set.SetPlan;
import deferent.search.set.Suggestion;
import deferent.search.set.SuggestionTable;
import deferent.tell.TellSet;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A set that a shelf suggests.
 *
 * @param told what was found, in a sentence
 * @param set where one was found
 */
public record SuggestedSet(Told told, Suggestion found, Optional<SetDocument> set) {
    /** Counts of each pattern in it: four times round, our choice. */
    public static final int COUNTS = 16;

    /** What such a set is called until somebody gives it a name. */
    public static final String NAME = "Suggested set";

    /** Patterns of a shelf that a set can be made of. */
    public static List<Kept> patterns(Shelf.Listing listing) {
        return listing.kept().stream()
                .filter(kept -> kept.document() instanceof PatternDocument)
                .toList();
    }

    /**
     * So many patterns of a shelf, hardest in the middle.
     *
     * @param from the id of the one it begins with, where that is said
     * @return empty where it was stopped before any order was looked for
     */
    public static Optional<SuggestedSet> of(
            List<Kept> patterns,
            int length,
            Optional<String> from,
            PairBook book,
            Consumer<SetPlan.Progress> listener,
            BooleanSupplier stop) {
        OptionalInt first = OptionalInt.empty();
        if (from.isPresent()) {
            first = OptionalInt.of(place(patterns, from.get()));
        }
        if (patterns.size() < length) {
            throw new Refusal(
                    "has " + patterns.size() + " patterns and not " + length,
                    "the shelf",
                    "ask for at most as many as it has, or save more");
        }
        OptionalInt begins = first;
        return SuggestionTable.of(
                        patterns.stream()
                                .map(kept -> ((PatternDocument) kept.document()).pairing())
                                .toList(),
                        book,
                        listener,
                        stop)
                .map(table -> found(patterns, table.suggest(length, begins, stop), length));
    }

    private static int place(List<Kept> patterns, String id) {
        for (int i = 0; i < patterns.size(); i++) {
            if (patterns.get(i).id().equals(id)) {
                return i;
            }
        }
        throw new Refusal(
                "is no pattern of the shelf", "\"" + id + "\"", "give one that shelf list shows");
    }

    private static SuggestedSet found(List<Kept> patterns, Suggestion found, int length) {
        List<SetStep> steps = new ArrayList<>();
        found.order().forEach(i -> steps.add(SetStep.of(patterns.get(i), COUNTS)));
        return new SuggestedSet(
                TellSet.suggested(
                        found,
                        patterns.stream().map(kept -> kept.document().name()).toList(),
                        length),
                found,
                steps.isEmpty() ? Optional.empty() : Optional.of(SetDocument.of(NAME, steps)));
    }
}
