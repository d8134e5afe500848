package deferent.search.crossing;

import java.util.Optional;

/**
 * What a search for a set found: a route that comes back to where it starts, with no pattern twice.
 *
 * @param outcome how sure that is
 * @param route the gentlest found
 * @param looked how many part routes were looked at
 */
public record FlowingSet(Outcome outcome, Optional<Route> route, long looked) {
    /** How sure it is. */
    public enum Outcome {
        /** The gentlest there is: proven. */
        BEST,
        /** One that flows; the search stopped before it could prove that none is gentler. */
        FOUND,
        /** There is none: proven. */
        NONE,
        /** None found before the search stopped; there may be one. */
        UNKNOWN
    }
}
