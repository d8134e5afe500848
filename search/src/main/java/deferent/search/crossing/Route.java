package deferent.search.crossing;

import java.util.ArrayList;
import java.util.List;

/**
 * A chain of crossings from one pattern of a shelf to another.
 *
 * @param start the first pattern, by its place on the shelf
 * @param crossings the crossings, each from the pattern that the one before entered
 * @param roughness of all together, weights
 * @param difficulty of all patterns entered together
 */
public record Route(int start, List<ShelfCrossing> crossings, double roughness, double difficulty) {
    public Route {
        crossings = List.copyOf(crossings);
    }

    static Route of(int start, List<ShelfCrossing> crossings, double[] difficulty) {
        double rough = 0;
        double hard = 0;
        for (ShelfCrossing crossing : crossings) {
            rough += crossing.roughness();
            hard += difficulty[crossing.to()];
        }
        return new Route(start, crossings, rough, hard);
    }

    /** What routes are compared by. */
    public double cost() {
        return roughness + difficulty;
    }

    /** All patterns in order, the first among them. */
    public List<Integer> patterns() {
        List<Integer> all = new ArrayList<>();
        all.add(start);
        crossings.forEach(crossing -> all.add(crossing.to()));
        return List.copyOf(all);
    }

    /** The roughest crossing's, weights; 0 where there is none. */
    public double roughest() {
        return crossings.stream().mapToDouble(ShelfCrossing::roughness).max().orElse(0);
    }
}
