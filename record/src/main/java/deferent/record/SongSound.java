package deferent.record;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The file that a song is heard from, and by what it is known again.
 *
 * @param file its path, or its name alone: then it is looked for in the shelf's folder, in {@value
 *     #FOLDER} there, and where the program was started
 * @param sha256 hash of its bytes, 64 hexadecimal digits in lower case
 * @param seconds how long it plays, above 0 and at most {@value #LONGEST}
 */
public record SongSound(String file, String sha256, double seconds) {
    /** Two hours, seconds. */
    public static final double LONGEST = 7200;

    /** Where a shelf's songs may lie, beside its documents. */
    public static final String FOLDER = "sound";

    static final int PATH = 1000;
    static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

    public SongSound {
        Wording.line(file, PATH, "sound's file");
        if (!HASH.matcher(sha256).matches()) {
            throw new Refusal(
                    "is \"" + sha256 + "\"",
                    "sound's hash",
                    "give SHA-256 as 64 hexadecimal digits in lower case");
        }
        if (!(seconds > 0 && seconds <= LONGEST)) {
            throw new Refusal(
                    "plays for " + seconds + " s",
                    "sound",
                    "give more than 0 and at most " + LONGEST + " s");
        }
    }

    /** The sound of a file as it is now. */
    public static SongSound of(Path file, double seconds) throws IOException {
        return new SongSound(
                file.toAbsolutePath().normalize().toString(), Fingerprint.of(file), seconds);
    }

    /**
     * Where the sound is, or why it cannot be heard.
     *
     * @param file the very file; empty where it is gone or is another now
     * @param told why not, one sentence; empty where it is there
     */
    public record Whereabouts(Optional<Path> file, Optional<String> told) {}

    /** Looks for it, given the shelf's folder. Reads the file once, to see that it is the same. */
    public Whereabouts find(Path shelf) {
        boolean another = false;
        for (Path above : new Path[] {shelf, shelf.resolve(FOLDER), Path.of("")}) {
            try {
                Path place = above.resolve(file);
                if (Files.isRegularFile(place)) {
                    if (Fingerprint.of(place).equals(sha256)) {
                        return new Whereabouts(Optional.of(place), Optional.empty());
                    }
                    another = true;
                }
            } catch (IOException | InvalidPathException unreadable) {
                // As if it were not there.
            }
        }
        return new Whereabouts(
                Optional.empty(),
                Optional.of(
                        another
                                ? "The sound \""
                                        + name()
                                        + "\" has changed since its beats were kept, so the song is"
                                        + " not heard; its beats still count."
                                : "The sound \""
                                        + name()
                                        + "\" is not where it was, so the song is not heard; its"
                                        + " beats still count."));
    }

    /** The file's name without its folders. */
    public String name() {
        return file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    }
}
