/**
 * The page and the files that leave it in a real Chromium: what a spinner does with them, what is
 * seen, how fast the page answers, and whether it asks the server what can be asked.
 */
@NullMarked
package deferent.studio.page;

import org.jspecify.annotations.NullMarked;
