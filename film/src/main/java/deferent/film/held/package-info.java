/**
 * A measured motion against a meant one: how each hand and head lies on it, which pairing of the
 * trade's is nearest, and what is off, in what order, said in words with what usually mends it.
 *
 * <p>A cord's hand is not where an ideal rod's is. A spinner keeps the figure, and the hand goes
 * where the cord asks; or keeps the hand's path, and the head goes where the cord takes it. So a
 * head is held against the meant figure and a hand against the meant hand path, and what lies
 * nearer is taken as what the spinner kept; which that was is said.
 */
@NullMarked
package deferent.film.held;

import org.jspecify.annotations.NullMarked;
