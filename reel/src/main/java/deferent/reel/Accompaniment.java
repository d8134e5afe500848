package deferent.reel;

import deferent.motion.pairing.Refusal;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A song that a clip is made to: its clock, and its sound where that is there. The clip is as long
 * as its scene takes by that clock, and each frame shows what the clock has at its time.
 *
 * @param pace how the scene goes along with the song
 * @param sound the song's file; empty where it is gone, and the clip is silent
 * @param begins at which second of the sound the clip begins; below 0 it begins in silence
 */
public record Accompaniment(Pace pace, Optional<Path> sound, double begins) {
    /** The longest sound, seconds: ten hours. */
    private static final double MOST = 36_000;

    /** How a scene goes along with a song. Both clocks are 0 at the clip's start, and go up. */
    public interface Pace {
        /** What is shown at a time of the clip: seconds of the scene. */
        double moment(double seconds);

        /** When something of the scene is shown: seconds of the clip. */
        double seen(double moment);
    }

    public Accompaniment {
        Refusal.within(begins, -MOST, MOST, "begin of a song's part", "seconds");
    }
}
