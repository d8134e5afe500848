package deferent.record.cue;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import deferent.record.SetReading;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A set with the song that it is spun to.
 *
 * @param reading the set worked out, in seconds of its plan
 * @param song what the song is called
 * @param clock when in the song each of them comes
 * @param sound the song's file; empty where it is gone
 */
public record SungSet(SetReading reading, String song, SongClock clock, Optional<Path> sound) {
    public SungSet {
        if (song.isBlank()) {
            throw new Refusal("has no name", "the song of a set", "give it one");
        }
    }

    /**
     * The set with its own song; empty where it has none, or that is gone.
     *
     * @param shelf the shelf's folder, where the song's sound may lie
     */
    public static Optional<SungSet> of(SetReading reading, Path shelf) {
        return reading.plan()
                .song()
                .flatMap(
                        to ->
                                reading.song()
                                        .map(
                                                place ->
                                                        new SungSet(
                                                                reading,
                                                                place.name(),
                                                                to.clock(),
                                                                place.sound(shelf))));
    }

    public Beats beats() {
        return clock.beats();
    }

    /** When the set begins, seconds from the start of the sound. */
    public double begins() {
        return clock.time(0);
    }

    /** When it is over, seconds from the start of the sound. */
    public double ends() {
        return clock.time(reading.plan().seconds());
    }
}
