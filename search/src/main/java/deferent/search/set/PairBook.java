package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.search.transition.Grade;
import deferent.search.transition.Remembered;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.search.transition.TransitionMemory;
import deferent.search.transition.TransitionRequest;
import deferent.search.transition.Transitions;
import deferent.search.whole.Readings;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of patterns and of what leads from one to another, each worked out once: a set goes
 * through the same few patterns again and again, and so does whoever arranges it. Several threads
 * may ask it.
 */
public final class PairBook {
    private static final int MOST = 1000;

    /** Of a pair: as many as every face lists. */
    private static final int MOST_LISTED = 6;

    private final TransitionRequest request;
    private final Kit kit;
    private final TransitionFinder finder;
    private final Remembered<Pairing, Readings> readings = new Remembered<>(MOST);
    private final Remembered<Transition, SetWork.Passing> passings = new Remembered<>(MOST);

    /**
     * @param hardest how hard a transition may be
     * @param performer who spins it
     * @param kit with what
     */
    public PairBook(Grade hardest, Performer performer, Kit kit) {
        this(kit, new TransitionFinder(new TransitionRequest(hardest, performer, MOST_LISTED)));
    }

    private PairBook(Kit kit, TransitionFinder finder) {
        this.request = finder.request();
        this.kit = kit;
        this.finder = finder;
    }

    /** The usual one that knows nothing yet, for who measures how long it takes to know. */
    public static PairBook unread() {
        TransitionRequest request = TransitionRequest.USUAL.withMost(MOST_LISTED);
        return new PairBook(Kit.USUAL, new TransitionFinder(request, new TransitionMemory()));
    }

    public Performer performer() {
        return request.performer();
    }

    public Kit kit() {
        return kit;
    }

    /** A pattern as it is drawn between transitions, on cords: periodic. */
    public Trace spun(Pairing pairing) {
        return finder.spun(pairing);
    }

    /** What finds transitions for it, and plays them. */
    public TransitionFinder finder() {
        return finder;
    }

    /** What leads from one pattern to another. */
    public Transitions between(Pairing from, Pairing to) {
        return finder.between(from, to);
    }

    /** The same to a song with so many seconds a beat, or to none. */
    Transitions between(Pairing from, Pairing to, Optional<Double> beat) {
        return finder.between(
                from, to, beat.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    /** What a passage asks of grips and shoulders. */
    SetWork.Passing passing(Transition transition) {
        return passings.get(transition, () -> SetWork.Passing.of(transition, finder, kit));
    }

    /** What a pattern asks of whoever spins it. */
    public Readings readings(Pairing pairing) {
        return readings.get(
                pairing,
                () -> Readings.of(pairing, request.performer(), kit, Detail.LIVE, Lexicon.EMPTY));
    }
}
