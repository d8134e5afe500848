/**
 * The shelf as a map, and routes over it.
 *
 * <p>Patterns are places, and the gentlest transition from one to another is what leads there; it
 * goes one way, since a passage that a body makes is not made backwards. A {@link
 * deferent.search.route.ShelfTable} holds what was found from each pattern to each other, however
 * much of it is worked out; a {@link deferent.search.route.ShelfMap} tells which patterns can be
 * reached from each other and come back; a {@link deferent.search.route.RouteSearch} finds the
 * gentlest way from one pattern to another and works out no more pairs than it needs. What counts
 * as possible and how hard it is stands in {@link deferent.search.transition.Grade}; how a route is
 * played, in {@code deferent.search.set}: a route is a set.
 */
@NullMarked
package deferent.search.route;

import org.jspecify.annotations.NullMarked;
