package deferent.search.crossing;

/**
 * A crossing between two patterns of a shelf, by their places on it.
 *
 * @param from which pattern is left
 * @param to which is entered
 * @param fromTime when in the common cycle of the one, seconds
 * @param toTime when in that of the other
 * @param placeGap greatest distance of a point from its counterpart, metres
 * @param speedGap greatest velocity difference, metres a second
 * @param roughness least extra acceleration of a passage, weights
 */
public record ShelfCrossing(
        int from,
        int to,
        double fromTime,
        double toTime,
        double placeGap,
        double speedGap,
        double roughness) {
    /** The same moment the other way: what can be passed can be passed back. */
    public ShelfCrossing back() {
        return new ShelfCrossing(to, from, toTime, fromTime, placeGap, speedGap, roughness);
    }
}
