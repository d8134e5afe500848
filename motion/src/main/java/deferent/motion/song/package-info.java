/**
 * Music as a clock: when the beats of a song fall, which of them begin a bar, and how many there
 * are to a minute. What is heard and how beats are found in it is not known here.
 *
 * <p>Music counts beats a minute, a pattern hand cycles a minute; neither is ever called by the
 * other's name.
 */
@NullMarked
package deferent.motion.song;

import org.jspecify.annotations.NullMarked;
