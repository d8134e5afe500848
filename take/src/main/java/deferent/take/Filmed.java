package deferent.take;

import deferent.film.FilmReading;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import java.nio.file.Path;

/**
 * A film and what was read from it.
 *
 * @param file the film's
 * @param performer who spins in it
 * @param kit their poi
 */
public record Filmed(Path file, FilmReading reading, Performer performer, Kit kit) {}
