package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;

/**
 * The song that a set is spun to, as the set keeps it.
 *
 * @param id its place on the shelf: its file's name without ".json"
 * @param name what it was called, by which it is found where its file has another name now
 * @param fromBeat the beat on which the set begins, from 0
 */
public record SetSong(String id, String name, int fromBeat) {
    public SetSong {
        Wording.line(id, Wording.NAME, "place on the shelf");
        Wording.line(name, Wording.NAME, "name");
        Refusal.within(fromBeat, 0, Beats.MOST - 1.0, "beat on which a set begins", "");
    }

    /** The same from another beat on. */
    public SetSong from(int beat) {
        return new SetSong(id, name, beat);
    }
}
