/**
 * Taking patterns away: one place that knows every ending a file may have, which wishes go with
 * which, and which room writes it. The command line's {@code draw} and the studio's panel both ask
 * here, so they offer the same and refuse with the same words. {@link deferent.take.TakeAway}
 * writes; {@link deferent.take.Ending} and {@link deferent.take.Wish} list what there is.
 */
@NullMarked
package deferent.take;

import org.jspecify.annotations.NullMarked;
