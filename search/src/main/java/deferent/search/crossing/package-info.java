/**
 * Crossings: where one pairing can become another, and the ways that lead from pairing to pairing.
 *
 * <p>At an instant a pairing has a state: where both hands and both heads are and how they move. A
 * spinner in that state cannot be told apart from one who spins another pairing that has the same
 * state at some instant of its own, and may go on as either. So two pairings are compared over the
 * torus of their two times, a of the one's cycle and b of the other's; {@link
 * deferent.search.crossing.Crossings} are the points of that torus at which the states are nearest
 * each other and within tolerance. One of the two may be let shift, turn, mirror, run at another
 * tempo or at another timing between its hands first ({@link deferent.search.crossing.Freedom}).
 *
 * <p>A {@link deferent.search.crossing.Passage} leads through a crossing smoothly and on a cord; a
 * {@link deferent.search.crossing.ShelfTable} compares a whole shelf with itself, and a {@link
 * deferent.search.crossing.ShelfMap} of it finds routes and sets.
 *
 * <p>Everything is in SI units, in the frame of {@code deferent.motion.pairing}; accelerations that
 * are told to spinners are in weights, that is, over standard gravity.
 */
@NullMarked
package deferent.search.crossing;

import org.jspecify.annotations.NullMarked;
