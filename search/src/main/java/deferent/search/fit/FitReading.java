package deferent.search.fit;

import deferent.motion.shared.Side;
import java.util.List;
import java.util.Optional;

/**
 * What a fit found.
 *
 * @param carrier whose head leads
 * @param goal what the answers close
 * @param answers changes that close it, none where it is closed as it stands: those that leave both
 *     motions their names first, of these one size changed before several (the timing not counted),
 *     and then least moved; empty where nothing closes the link
 * @param nearest of all that was tried, what comes nearest; the first answer where there is one
 * @param obstacle why nothing closes it, or where the shape alone does, why not at every instant;
 *     of what closes only that an extension's hand radius does not; {@link Obstacle#NONE} where
 *     nothing stands in the way
 * @param have the number that the obstacle has, in its unit
 * @param need the number that would be needed
 * @param riding where nothing closes it at every instant because the two paths differ: the same
 *     motions with the rider's hand on the carrier's head, if that does
 */
public record FitReading(
        Side carrier,
        Goal goal,
        List<Remedy> answers,
        Remedy nearest,
        Obstacle obstacle,
        double have,
        double need,
        Optional<Remedy> riding) {
    public FitReading {
        answers = List.copyOf(answers);
    }

    public boolean closes() {
        return !answers.isEmpty();
    }

    /** The least gap that was found, metres. */
    public double leastGap() {
        return nearest.gapLeft();
    }
}
