package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import java.util.List;
import java.util.Optional;

/**
 * A song as kept on the shelf: when its beats fall, and which file it is heard from. The sound
 * itself is not in it; it stays where it lies.
 *
 * @param name how the user calls it
 * @param note free text, may be empty
 * @param author whose it is, or that it is invented
 * @param tags words to find it by
 * @param sound what it is heard from
 * @param beats when they fall, at most {@value #MOST_BEATS}
 * @param mended whether somebody tapped, moved or set beats, rather than that all were found
 * @param extras what other programs keep in it
 */
public record SongDocument(
        String name,
        String note,
        Optional<String> author,
        List<String> tags,
        SongSound sound,
        Beats beats,
        boolean mended,
        Extras extras)
        implements Document {
    /** Two hours of three hundred a minute are fewer. */
    public static final int MOST_BEATS = 40_000;

    public SongDocument {
        Wording.line(name, Wording.NAME, "name");
        Wording.note(note);
        author.ifPresent(a -> Wording.line(a, Wording.NAME, "author"));
        tags = Wording.tags(tags);
        if (beats.times().size() > MOST_BEATS) {
            throw new Refusal(
                    "are " + beats.times().size(), "beats of a song", "keep at most " + MOST_BEATS);
        }
        double last = beats.times().get(beats.times().size() - 1);
        if (beats.times().get(0) < 0 || last > sound.seconds()) {
            throw new Refusal(
                    "fall from " + beats.times().get(0) + " s to " + last + " s",
                    "beats of a song of " + sound.seconds() + " s",
                    "let each fall while the sound plays");
        }
    }

    @Override
    public String kind() {
        return "song";
    }

    /** With beats as they were found. */
    public static SongDocument of(String name, SongSound sound, Beats beats) {
        return new SongDocument(
                name, "", Optional.empty(), List.of(), sound, beats, false, Extras.NONE);
    }

    /** With its sound by name alone: where that lies is nobody else's matter. */
    @Override
    public SongDocument shared() {
        SongSound named = new SongSound(sound.name(), sound.sha256(), sound.seconds());
        return new SongDocument(name, note, author, tags, named, beats, mended, extras);
    }

    /** In a few words: "a song of 1:12 at 96 beats a minute". */
    public String told() {
        long seconds = Math.round(sound.seconds());
        return "a song of %d:%02d at %d beats a minute"
                .formatted(seconds / 60, seconds % 60, Math.round(beats.tempo()));
    }

    public SongDocument withName(String other) {
        return new SongDocument(other, note, author, tags, sound, beats, mended, extras);
    }

    /** The same, heard from another file. */
    public SongDocument withSound(SongSound other) {
        return new SongDocument(name, note, author, tags, other, beats, mended, extras);
    }

    /** The same with beats that somebody mended. */
    public SongDocument withMended(Beats other) {
        return new SongDocument(name, note, author, tags, sound, other, true, extras);
    }
}
