/**
 * What is called in a set and when: by the clock of the song that it is spun to, or of its own plan
 * where it has none. Every face that tells time to a set asks {@link deferent.record.cue.SetCues}.
 */
@NullMarked
package deferent.record.cue;

import org.jspecify.annotations.NullMarked;
