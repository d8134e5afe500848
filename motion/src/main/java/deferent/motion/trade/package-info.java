/**
 * The table of the trade's motions, one row each: how a motion is spelt, what it means, which sizes
 * it takes, how it is made and how it is recognised. Phrases are read and written by it; the list
 * of words and what completes a word are made of it. Adding a motion is adding a row.
 *
 * <p>Words that name no motion (sizes, timing, planes) have rows of their own in {@link
 * deferent.motion.trade.Word}. A hand path that a few sizes make brings its row with its form,
 * {@link deferent.motion.pairing.Form}.
 */
@NullMarked
package deferent.motion.trade;

import org.jspecify.annotations.NullMarked;
