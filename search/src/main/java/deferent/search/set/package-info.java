/**
 * Sets: patterns in order, each for so many counts, and the transitions between them.
 *
 * <p>A transition leaves a pattern at one moment of its common cycle and enters the next at one of
 * its own, so a pattern cannot be kept for just any time: {@link deferent.search.set.SetPlan}
 * chooses among each pair's transitions so that the whole is gentle and every pattern is kept for
 * nearly as many counts as were asked ({@link deferent.search.set.Chain}). {@link
 * deferent.search.set.SetWork} adds up what it asks of grip and shoulder, and {@link
 * deferent.search.set.Suggestion} puts patterns of a shelf in an order that can be spun.
 *
 * <p>A pattern may have a turn of the body on one of its counts ({@link
 * deferent.search.set.BodyTurn}): what is spun turns with the body from then on. Patterns and
 * passages are worked out as the body has them, the whole is turned in {@link
 * deferent.search.set.SetTrace}, and what that adds to the cords' pull is read in {@link
 * deferent.search.set.TurnLoad}.
 *
 * <p>A set may be spun to a song ({@link deferent.search.set.ToSong}): its patterns have the song's
 * tempo then and are counted from 1 on its beats, and what the song asks of each is read where it
 * goes slowest and fastest ({@link deferent.search.set.InSong}).
 *
 * <p>A count is a turn of the poi that turns more often ({@link deferent.search.set.Wanted}, our
 * choice). Everything else is in SI units.
 */
@NullMarked
package deferent.search.set;

import org.jspecify.annotations.NullMarked;
