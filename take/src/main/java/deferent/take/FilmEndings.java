package deferent.take;

import deferent.motion.pairing.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The table of endings in which a film is taken away. A table of its own, since the same ending
 * means another file here: the film itself with something over it, where a pattern's is drawn from
 * nothing. What is not in it is written as of a pattern, of the measured trace: clips of other
 * kinds, pages, models and tables.
 */
public final class FilmEndings {
    private static final List<Ending> ALL = rows();

    private FilmEndings() {}

    private static List<Ending> rows() {
        List<Ending> own =
                List.of(
                        new FilmClipEnding(),
                        new FilmPictureEnding(Endings.of("png"), List.of(FilmForm.values())),
                        new FilmPictureEnding(Endings.of("svg"), List.of(FilmForm.OVER)),
                        new FilmPictureEnding(Endings.of("pdf"), List.of()),
                        new FilmTextEnding());
        List<Ending> rows = new ArrayList<>(own);
        // A lesson page tells of a pattern in words, and those would be read as of the film.
        Endings.all().stream()
                .filter(e -> !e.key().equals("html"))
                .filter(e -> own.stream().noneMatch(o -> o.key().equals(e.key())))
                .forEach(rows::add);
        return List.copyOf(rows);
    }

    /** In the order they are offered. */
    public static List<Ending> all() {
        return ALL;
    }

    /** By a file's name. */
    public static Ending of(Path file) {
        return of(Endings.of(file).key());
    }

    /** By its {@link Ending#key}. */
    public static Ending of(String key) {
        String known = Endings.of(key).key();
        return ALL.stream()
                .filter(ending -> ending.key().equals(known))
                .findFirst()
                .orElseThrow(
                        () ->
                                new Refusal(
                                        "is written of patterns alone",
                                        "a ." + known + " file",
                                        "end it in "
                                                + String.join(
                                                        ", ",
                                                        ALL.stream()
                                                                .map(e -> "." + e.key())
                                                                .toList())));
    }
}
