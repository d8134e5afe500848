package deferent.take;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.search.transition.Played;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.tell.PassageMoment;
import java.util.ArrayList;
import java.util.List;

/**
 * A transition as it is shown alone: at least once round of the first pattern, from a count on, the
 * passage, and at least once round of the second.
 *
 * @param starts when it starts on the first pattern's clock, seconds
 */
public record ShownTransition(Transition transition, double starts, Played played) {
    /** So long either pattern is seen at least, and about so long at most, seconds (our choice). */
    private static final double LEAST = 1.2;

    private static final double MOST = 4;

    public static ShownTransition of(TransitionFinder finder, Transition transition) {
        double cycle = transition.from().period();
        double count = cycle / Counts.aCycle(transition.from());
        double starts =
                (Math.floor(transition.leaves() / cycle) - Math.ceil(LEAST / cycle)) * cycle;
        while (transition.leaves() - starts > MOST && count < MOST) {
            starts += count;
        }
        double after = transition.to().period();
        double stays = Math.min(MOST, Math.ceil(LEAST / after) * after);
        Played played =
                finder.play(List.of(transition), starts, transition.leaves() - starts, stays);
        return new ShownTransition(transition, starts, played);
    }

    public double seconds() {
        return played.trace().period();
    }

    /** When the first hand leaves, seconds from the start. */
    public double leaves() {
        return played.left().get(0);
    }

    /** When both hands have joined, seconds from the start. */
    public double joined() {
        return played.entered().get(1);
    }

    /** When and where each hand leaves and joins, in order of time. */
    public List<PassageMoment> moments() {
        return PassageMoment.of(played, 0, transition);
    }

    /** The counts of the first pattern until it is left, and of the second from then on. */
    public List<Count> counts() {
        List<Count> counts = new ArrayList<>(counts(transition.from(), starts, 0, leaves()));
        double ahead = transition.joins() - joined();
        counts.addAll(counts(transition.to(), ahead, joined(), seconds()));
        return List.copyOf(counts);
    }

    /** The counts of a pattern, once round. */
    public static List<Count> counts(Pairing pairing) {
        return counts(pairing, 0, 0, pairing.period());
    }

    private static List<Count> counts(Pairing pairing, double ahead, double from, double to) {
        List<Count> round = Counts.of(Trace.of(pairing));
        double cycle = pairing.period();
        List<Count> counts = new ArrayList<>();
        for (double begins = cycle * Math.floor((from + ahead) / cycle); ; begins += cycle) {
            for (Count count : round) {
                double falls = begins + count.time() - ahead;
                if (falls > to - 1e-6) {
                    return counts;
                }
                if (falls >= from - 1e-6) {
                    counts.add(new Count(Math.max(from, falls), count.said()));
                }
            }
        }
    }
}
