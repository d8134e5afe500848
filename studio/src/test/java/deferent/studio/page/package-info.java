/** The page in a real Chromium: what a spinner does with it, and how fast it answers. */
@NullMarked
package deferent.studio.page;

import org.jspecify.annotations.NullMarked;
