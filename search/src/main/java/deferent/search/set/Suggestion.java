package deferent.search.set;

import java.util.List;

/**
 * Patterns in an order that can be spun: each once, each leading into the next, harder and harder
 * up to the middle and easier again after it.
 *
 * @param outcome how sure it is
 * @param order the patterns by their place in the list they were given in; empty where none was
 *     found
 * @param cost the weights of the transitions less what the height of the hill is worth, in counts
 * @param looked how many beginnings of a set were looked at
 */
public record Suggestion(Outcome outcome, List<Integer> order, double cost, long looked) {
    /** How sure it is. */
    public enum Outcome {
        /** The best there is: proven. */
        BEST,
        /** One that flows; the search ended before it could prove that none is better. */
        FOUND,
        /** There is none: proven. */
        NONE,
        /** None found before the search ended; there may be one. */
        UNKNOWN
    }

    public Suggestion {
        order = List.copyOf(order);
    }
}
