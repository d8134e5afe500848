/**
 * Transitions: the short passages from one pattern to another that a body does and a cord allows.
 *
 * <p>Each pattern is taken as a practised hand draws it on a cord ({@link
 * deferent.search.transition.DrawnSide}). A passage of one hand begins as the blend of two such
 * motions, at any time of the one and any time of the other, over a quarter to four poi beats, with
 * whole turns of the poi chosen; then the head's path is made such that the hand's jerk is least
 * ({@link deferent.search.transition.Attempt}). Both hands share nothing but how much the joined
 * pattern's clock is ahead, so they are sought one by one and put together ({@link
 * deferent.search.transition.TransitionSearch}). What counts as possible stands in {@link
 * deferent.search.transition.Grade}, for every face.
 *
 * <p>Everything is in SI units, in the frame of {@code deferent.motion.pairing}.
 */
@NullMarked
package deferent.search.transition;

import org.jspecify.annotations.NullMarked;
