/**
 * The least change of planes that clears a pattern: no cord through an arm, a cord or the body, no
 * head that knocks a head, a hand, an arm or the body.
 *
 * <p>What is in the way is read by {@link deferent.reading.body.InTheWay}, with the bounds of
 * {@link deferent.reading.danger.Bound} and the performer's heads; the figures stay as they are in
 * their planes, which are shifted and leaned. How large a change is, is measured by {@link
 * deferent.search.clear.PlaneChange}; the search is seeded, and says how it looks and what it may
 * miss in {@link deferent.search.clear.ClearSearch}.
 */
@NullMarked
package deferent.search.clear;

import org.jspecify.annotations.NullMarked;
