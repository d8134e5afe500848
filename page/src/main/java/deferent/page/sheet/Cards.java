package deferent.page.sheet;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import java.io.IOException;
import java.io.OutputStream;
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
public record Cards(String title, List<PatternDocument> patterns, Edition edition) {
    public Cards {
        patterns = List.copyOf(patterns);
        if (patterns.isEmpty()) {
            throw new Refusal("are none", "cards", "save a pattern on the shelf first");
        }
    }

    /** Writes them as PDF. */
    public void write(OutputStream out) throws IOException {
        write(out, progress -> {}, () -> false);
    }

    /**
     * Writes them as PDF.
     *
     * @param listener told how far it is, on the calling thread
     * @param stop asked now and then; once stopped nothing is written
     * @return whether they were written
     */
    public boolean write(OutputStream out, Consumer<PrintProgress> listener, BooleanSupplier stop)
            throws IOException {
        Optional<List<Leaf>> leaves = leaves(listener, stop);
        return leaves.isPresent()
                && Press.print(
                        leaves.get(),
                        title,
                        out,
                        PrintProgress.printing(listener, leaves.get().size()),
                        stop);
    }

    /** The pages laid out; empty where it was stopped. */
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
