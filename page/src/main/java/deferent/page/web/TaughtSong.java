package deferent.page.web;

import deferent.motion.song.SongClock;
import deferent.record.cue.SungSet;
import deferent.tell.TellSungSet;
import deferent.tell.Told;
import java.util.Arrays;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The song of a set as a page plays it: the set with its song, and the part of its sound that is
 * heard.
 *
 * @param sung the set with its song
 * @param sound a sound file, as a browser plays it; empty where the song's file is gone, or is not
 *     taken along
 * @param mediaType of the sound
 * @param begins at which second of the song that sound begins
 */
public record TaughtSong(SungSet sung, byte[] sound, String mediaType, double begins) {
    /** The clock's places in a beat; between them it is taken as even. */
    private static final int A_BEAT = 4;

    public TaughtSong {
        sound = sound.clone();
    }

    @Override
    public byte[] sound() {
        return sound.clone();
    }

    /** Why it is not heard; empty where it is. */
    Optional<Told> unheard() {
        return sound.length > 0
                ? Optional.empty()
                : Optional.of(TellSungSet.unheard(sung.song(), sung.sound().isPresent()));
    }

    /** What the player needs: its name, and which second of the set each second of the sound is. */
    void put(ObjectNode node) {
        SongClock clock = sung.clock();
        node.put("name", sung.song());
        node.put("tempo", clock.beatsAMinute());
        node.put("seconds", sung.reading().plan().seconds());
        ArrayNode pairs = node.putArray("clock");
        double last = clock.beat(sung.reading().plan().seconds()) + 1;
        double first = Math.floor(clock.fromBeat()) - sung.beats().beatsABar();
        for (int i = 0; i <= Math.ceil((last - first) * A_BEAT); i++) {
            double plan = clock.onBeat(first + (double) i / A_BEAT);
            pairs.addArray().add(thousandth(clock.time(plan) - begins)).add(thousandth(plan));
        }
    }

    private static double thousandth(double seconds) {
        return Math.rint(1e4 * seconds) / 1e4;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TaughtSong song
                && sung.equals(song.sung)
                && Arrays.equals(sound, song.sound)
                && mediaType.equals(song.mediaType)
                && begins == song.begins;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(sound);
    }

    @Override
    public String toString() {
        return "TaughtSong[" + sung.song() + ", " + sound.length + " bytes]";
    }
}
