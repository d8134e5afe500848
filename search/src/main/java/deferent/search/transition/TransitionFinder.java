package deferent.search.transition;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Finds transitions, and remembers what was asked last ({@link TransitionMemory}). Safe to share
 * between threads.
 *
 * <pre>
 * TransitionFinder finder = new TransitionFinder(TransitionRequest.USUAL);
 * Transitions found = finder.between(isolations, extensions);
 * </pre>
 */
public final class TransitionFinder {
    private final TransitionRequest request;
    private final TransitionMemory memory;
    private final SideDrawings drawer = new SideDrawings();

    public TransitionFinder(TransitionRequest request) {
        this(request, TransitionMemory.SHARED);
    }

    /** With a memory of its own, for who measures how long it takes to know. */
    public TransitionFinder(TransitionRequest request, TransitionMemory memory) {
        this.request = request;
        this.memory = memory;
    }

    public TransitionRequest request() {
        return request;
    }

    /** All that was found from one pattern to another, best first. */
    public Transitions between(Pairing from, Pairing to) {
        return between(from, to, request.beat());
    }

    /** The same to a song with so many seconds a beat, or to none. */
    public Transitions between(Pairing from, Pairing to, OptionalDouble beat) {
        TransitionRequest asked =
                new TransitionRequest(request.hardest(), request.performer(), request.most(), beat);
        return memory.between(
                from, to, asked, () -> TransitionSearch.of(pattern(from), pattern(to), asked));
    }

    /** A pattern as it is drawn between transitions: on cords and periodic. */
    public Trace spun(Pairing pairing) {
        return pattern(pairing).trace();
    }

    SpunPattern pattern(Pairing pairing) {
        return memory.pattern(
                pairing,
                request.performer(),
                () -> new SpunPattern(pairing, request.performer(), drawer));
    }

    /**
     * Transitions one after the other as one trace on cords.
     *
     * @param transitions each from the pattern that the one before led to, one or more
     * @param starts when it starts on the first pattern's clock, seconds
     * @param stays how long each pattern is kept by both hands, seconds, one more than transitions;
     *     those in the middle must end when their transition leaves
     */
    public Played play(List<Transition> transitions, double starts, double... stays) {
        List<SpunPattern> gone = new ArrayList<>();
        gone.add(pattern(transitions.get(0).from()));
        transitions.forEach(t -> gone.add(pattern(t.to())));
        return Played.of(transitions, gone, starts, stays);
    }
}
