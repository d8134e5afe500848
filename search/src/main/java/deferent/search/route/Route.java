package deferent.search.route;

import deferent.motion.pairing.Refusal;
import deferent.search.transition.Grade;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A way over the shelf: patterns in order, each leading to the next.
 *
 * @param start where it starts, by its place on the shelf
 * @param steps each from where the one before led to; none where one is there already
 */
public record Route(int start, List<ShelfPair> steps) {
    /**
     * What a change costs beside its hardness: a tenth of a grade (our choice), so that of ways as
     * hard the shorter is taken, and ten easy changes are thought as much as one that only just can
     * be done with practice.
     */
    static final double A_CHANGE = 0.1;

    public Route {
        steps = List.copyOf(steps);
        int at = start;
        for (ShelfPair step : steps) {
            if (step.from() != at || !step.leads()) {
                throw new Refusal(
                        "does not lead on from " + at,
                        "a step of a route",
                        "give one that leads from there");
            }
            at = step.to();
        }
    }

    static double cost(ShelfPair step) {
        return step.hardness() + A_CHANGE;
    }

    /** What it costs: the hardness of all steps, and {@value #A_CHANGE} a change. */
    public double cost() {
        return steps.stream().mapToDouble(Route::cost).sum();
    }

    /** The patterns in order, by their places; the start first. */
    public List<Integer> patterns() {
        List<Integer> patterns = new ArrayList<>(List.of(start));
        steps.forEach(step -> patterns.add(step.to()));
        return patterns;
    }

    /** The grade of its hardest step; empty where it has none. */
    public Optional<Grade> hardest() {
        return steps.stream().flatMap(step -> step.grade().stream()).max(Comparator.naturalOrder());
    }
}
