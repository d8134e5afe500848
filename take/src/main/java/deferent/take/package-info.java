/**
 * Taking patterns away: one place that knows every ending a file may have, what may be wished of
 * each, and how it is written and previewed. The command line's {@code draw} and the studio's panel
 * both ask here, so they offer the same and refuse with the same words. An {@link
 * deferent.take.Ending} is one value that holds all of that, and {@link deferent.take.Endings} the
 * table of them: another ending is another row. A {@link deferent.take.Take} is written or
 * previewed; a transition ({@link deferent.take.TransitionTake}) is written by the same endings, a
 * set ({@link deferent.take.SetTake}) by a table of its own ({@link deferent.take.SetEndings}). A
 * shelf, a folder or a set that is taken to the hall ({@link deferent.take.HallTake}) is a page of
 * its own.
 */
@NullMarked
package deferent.take;

import org.jspecify.annotations.NullMarked;
