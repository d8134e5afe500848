/**
 * The page and the files that leave it in a real Chromium: what a spinner does with them, what is
 * seen, and how fast the page answers.
 */
@NullMarked
package deferent.studio.page;

import org.jspecify.annotations.NullMarked;
