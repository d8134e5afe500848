package deferent.search.transition;

import deferent.motion.pairing.Pairing;
import deferent.reading.body.Performer;
import java.util.function.Supplier;

/**
 * The patterns that were drawn for transitions last, and what was found between two of them. A
 * drawing takes longer than what is then sought, and both are values with one answer to each
 * question, so whoever asks cannot tell but by the time. Safe to share between threads.
 */
public final class TransitionMemory {
    private static final int PATTERNS = 600;
    private static final int PAIRS = 20_000;

    /** Of the whole process: what could come next, sets, sheets and maps ask for the same pairs. */
    static final TransitionMemory SHARED = new TransitionMemory();

    private record Drawn(Pairing pairing, Performer performer) {}

    private record Asked(Pairing from, Pairing to, TransitionRequest request) {}

    private final Remembered<Drawn, SpunPattern> patterns = new Remembered<>(PATTERNS);
    private final Remembered<Asked, Transitions> pairs = new Remembered<>(PAIRS);

    /** One that knows nothing yet. */
    public TransitionMemory() {}

    SpunPattern pattern(Pairing pairing, Performer performer, Supplier<SpunPattern> draw) {
        return patterns.get(new Drawn(pairing, performer), draw);
    }

    Transitions between(
            Pairing from, Pairing to, TransitionRequest request, Supplier<Transitions> seek) {
        return pairs.get(new Asked(from, to, request), seek);
    }
}
