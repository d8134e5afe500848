package deferent.search.route;

import deferent.search.transition.Hindrance;
import java.util.Optional;

/**
 * What a search for a route found.
 *
 * @param route the gentlest; of a search that was stopped, the gentlest it had found; empty where
 *     there is none
 * @param done whether it ran to its end
 * @param straight why nothing leads straight from the start to the goal; {@link Hindrance#NONE}
 *     where something does, or it was not looked at
 * @param looked how many pairs were worked out for it
 */
public record RouteFound(Optional<Route> route, boolean done, Hindrance straight, int looked) {}
