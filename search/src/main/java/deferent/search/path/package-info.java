/**
 * An order to learn in: what a pattern is made of, how hard each part is, and which days it takes.
 *
 * <p>A {@link deferent.search.path.Path} is a pattern's drills, each a pairing of its own: each
 * hand alone while the other rests, both hands apart, easier versions, a neighbour from which
 * little changes, and the pattern itself. None stands before what it is made of, nor before an
 * easier version of itself; what was thought of and left out says why. How hard one is says {@link
 * deferent.search.path.Hardness}: it comes from the readings, by weights of our choice, and is a
 * model and no measurement.
 *
 * <p>A {@link deferent.search.path.Plan} lays a path out over days of so many minutes, taking in
 * what was practised so far; when a drill comes back is said by {@link
 * deferent.search.path.Spacing}, a published method. Days are counted from any day, the same for
 * all: this room knows no calendar. Everything else is in SI units; minutes are said as minutes.
 */
@NullMarked
package deferent.search.path;

import org.jspecify.annotations.NullMarked;
