/**
 * Clips. A {@link deferent.reel.Clip} says which scene is shown how and as what; {@link
 * deferent.reel.Clips} paints its frames one by one with the page's painter and hands them, in
 * order, to a {@link deferent.reel.Spool} that writes the file: {@link deferent.reel.Film} through
 * FFmpeg's libraries, {@link deferent.reel.PngSpool} without any native code. Films and sounds come
 * in the same way: {@link deferent.reel.Footage}, {@link deferent.reel.Hearing}. The natives are
 * loaded when the first clip that needs them is asked for, never before, and nothing outside this
 * package needs them.
 */
@NullMarked
package deferent.reel;

import org.jspecify.annotations.NullMarked;
