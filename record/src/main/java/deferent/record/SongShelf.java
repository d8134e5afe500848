package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Landing;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * How songs come onto a shelf, each under a name of its own, and where sounds without a place go.
 */
public final class SongShelf {
    private SongShelf() {}

    /**
     * Keeps a song.
     *
     * @param replace whether in the place of the song of that name; of the same sound, its note,
     *     author, tags and what other programs wrote stay
     * @param otherwise what could be done but to give it another name, where the name is taken
     * @throws Refusal where the name is taken
     */
    public static Kept keep(Shelf shelf, SongDocument song, boolean replace, String otherwise) {
        Optional<Kept> there = seeFree(shelf, song.name(), replace, otherwise);
        if (there.isEmpty()) {
            return shelf.saveNew(song);
        }
        SongDocument before = (SongDocument) there.get().document();
        SongDocument after =
                before.sound().sha256().equals(song.sound().sha256())
                        ? new SongDocument(
                                song.name(),
                                before.note(),
                                before.author(),
                                before.tags(),
                                song.sound(),
                                song.beats(),
                                song.mended(),
                                before.extras())
                        : song;
        return shelf.save(there.get().id(), after, there.get().revision());
    }

    /** What is to be replaced, if anything; refuses a name that is taken. */
    private static Optional<Kept> seeFree(
            Shelf shelf, String name, boolean replace, String otherwise) {
        Optional<Kept> there = shelf.find(name);
        if (there.isPresent() && !(there.get().document() instanceof SongDocument)) {
            throw new Refusal("is no song", "\"" + name + "\"", "give it another name");
        }
        if (there.isPresent() && !replace) {
            throw new Refusal(
                    "is on the shelf already",
                    "\"" + name + "\"",
                    "give it another name, or " + otherwise);
        }
        return there;
    }

    /**
     * Keeps a song whose sound has no place where it stays: with that which the song of that name
     * has, where it is the same and still there, else with a copy in the shelf's folder {@value
     * SongSound#FOLDER}. Else as {@link #keep}.
     *
     * @param song with the sound of that very file
     * @param file the sound
     */
    public static Kept keepWithSound(
            Shelf shelf, SongDocument song, Path file, boolean replace, String otherwise)
            throws IOException {
        SongSound asIs = song.sound();
        Optional<SongSound> before =
                seeFree(shelf, song.name(), replace, otherwise)
                        .map(kept -> ((SongDocument) kept.document()).sound())
                        .filter(sound -> sound.sha256().equals(asIs.sha256()))
                        .filter(sound -> sound.find(shelf.folder()).file().isPresent());
        SongSound sound =
                before.isPresent()
                        ? before.get()
                        : new SongSound(
                                copied(shelf, file, asIs.sha256()), asIs.sha256(), asIs.seconds());
        return keep(shelf, song.withSound(sound), replace, otherwise);
    }

    /** The name of the copy; what is there already is not copied again. */
    private static String copied(Shelf shelf, Path file, String hash) throws IOException {
        Path folder = Files.createDirectories(shelf.folder().resolve(SongSound.FOLDER));
        String called = String.valueOf(file.getFileName());
        int dot = called.lastIndexOf('.');
        String ending = dot > 0 ? "." + Shelf.slug(called.substring(dot + 1)) : "";
        String plain = Shelf.slug(dot > 0 ? called.substring(0, dot) : called);
        for (int i = 1; ; i++) {
            String name = plain + (i == 1 ? "" : "-" + i) + ending;
            Path place = folder.resolve(name);
            if (!Files.exists(place)) {
                copy(file, place);
                return name;
            }
            if (Files.isRegularFile(place) && Fingerprint.of(place).equals(hash)) {
                return name;
            }
        }
    }

    private static void copy(Path file, Path place) {
        try (InputStream in = Files.newInputStream(file);
                Landing landing = Landing.at(place)) {
            in.transferTo(Channels.newOutputStream(landing.channel()));
            landing.land();
        } catch (IOException e) {
            throw Landing.cannot(place, e);
        }
    }
}
