package deferent.page.sheet;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Patterns as cards to cut out, eight a page, each with its figure, name and sizes. A card is 3.5
 * by 2.5 inches, as playing cards are, and so fits their sleeves; marks in the margins show where
 * to cut.
 *
 * @param title of the file
 * @param patterns a card each
 * @param edition for which paper, onlooker and hand
 */
public record Cards(String title, List<PatternDocument> patterns, Edition edition)
        implements Print {
    public Cards {
        patterns = List.copyOf(patterns);
        if (patterns.isEmpty()) {
            throw new Refusal("are none", "cards", "save a pattern on the shelf first");
        }
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        CardPage page = new CardPage(edition);
        List<Leaf> leaves = new ArrayList<>();
        for (int from = 0; from < patterns.size(); from += CardPage.CARDS) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            int to = Math.min(patterns.size(), from + CardPage.CARDS);
            leaves.add(page.leaf(patterns.subList(from, to)));
            listener.accept(new PrintProgress(PrintProgress.Step.READING, to, patterns.size()));
        }
        return Optional.of(leaves);
    }
}
