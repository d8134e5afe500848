/**
 * Says readings and searches in words: the one place where a number becomes a sentence, for page,
 * sheet and command line alike. Top floor of the mathematics: it may use every other room, and none
 * uses it.
 */
@NullMarked
package deferent.tell;

import org.jspecify.annotations.NullMarked;
