package deferent.search.seek;

import deferent.motion.pairing.Refusal;

/**
 * Which answers to keep; judged on each class's representative.
 *
 * @param exactOnly leave out those that a size must close first
 * @param reachable both hands get everywhere, the trunk turned where that helps: what a body does
 *     not reach is made smaller until it does, tethers and all, and left out where that would take
 *     tethers too short to spin; what is found by likeness keeps its size
 * @param slowest the greatest that the slowest tempo may be, hand cycles a minute; infinite for any
 * @param greatestGrowth how many times as far aside a slip may at most have put the head after a
 *     reaction time; infinite for any
 * @param leastSymmetry least order of turning symmetry of both figures
 * @param leastContrast least ratio of the figures' outer radii
 * @param nearShelf greatest distance to a pattern of the shelf, metres; infinite for any
 * @param newToShelf leave out what is on the shelf
 */
public record Filter(
        boolean exactOnly,
        boolean reachable,
        double slowest,
        double greatestGrowth,
        int leastSymmetry,
        double leastContrast,
        double nearShelf,
        boolean newToShelf) {
    public static final Filter NONE =
            new Filter(
                    false,
                    false,
                    Double.POSITIVE_INFINITY,
                    Double.POSITIVE_INFINITY,
                    0,
                    1,
                    Double.POSITIVE_INFINITY,
                    false);

    public Filter {
        if (!(slowest > 0 && greatestGrowth > 0 && leastContrast >= 1 && nearShelf >= 0)) {
            throw new Refusal(
                    "asks for what nothing can be",
                    "filter",
                    "give a slowest tempo and a growth above 0, a contrast of 1 or more");
        }
        Refusal.within(leastSymmetry, 0, 48, "least symmetry", "");
    }

    public Filter exact() {
        return new Filter(
                true,
                reachable,
                slowest,
                greatestGrowth,
                leastSymmetry,
                leastContrast,
                nearShelf,
                newToShelf);
    }

    public Filter reached() {
        return new Filter(
                exactOnly,
                true,
                slowest,
                greatestGrowth,
                leastSymmetry,
                leastContrast,
                nearShelf,
                newToShelf);
    }

    public Filter fresh() {
        return new Filter(
                exactOnly,
                reachable,
                slowest,
                greatestGrowth,
                leastSymmetry,
                leastContrast,
                nearShelf,
                true);
    }

    public Filter contrasting(double ratio) {
        return new Filter(
                exactOnly,
                reachable,
                slowest,
                greatestGrowth,
                leastSymmetry,
                ratio,
                nearShelf,
                newToShelf);
    }

    public Filter symmetric(int order) {
        return new Filter(
                exactOnly,
                reachable,
                slowest,
                greatestGrowth,
                order,
                leastContrast,
                nearShelf,
                newToShelf);
    }

    public Filter tautAt(double tempo) {
        return new Filter(
                exactOnly,
                reachable,
                tempo,
                greatestGrowth,
                leastSymmetry,
                leastContrast,
                nearShelf,
                newToShelf);
    }

    public Filter steady(double growth) {
        return new Filter(
                exactOnly,
                reachable,
                slowest,
                growth,
                leastSymmetry,
                leastContrast,
                nearShelf,
                newToShelf);
    }
}
