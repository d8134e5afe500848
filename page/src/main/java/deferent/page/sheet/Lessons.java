package deferent.page.sheet;

import deferent.record.PatternDocument;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** Works out many lessons at once, as many as there are processors. */
final class Lessons {
    private Lessons() {}

    /**
     * In the order of the patterns; empty where it was stopped.
     *
     * @param listener told after each, on the calling thread
     * @param stop asked before each is begun, by the thread that begins it
     */
    static Optional<List<Lesson>> of(
            List<PatternDocument> patterns,
            Edition edition,
            Consumer<PrintProgress> listener,
            BooleanSupplier stop) {
        int all = patterns.size();
        return Several.of(
                all,
                i -> Lesson.of(patterns.get(i), edition),
                done -> listener.accept(new PrintProgress(PrintProgress.Step.READING, done, all)),
                stop);
    }
}
