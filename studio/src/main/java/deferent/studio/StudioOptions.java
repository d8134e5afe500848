package deferent.studio;

import deferent.motion.pairing.Refusal;
import java.nio.file.Path;
import java.util.Optional;

/**
 * How to open a studio.
 *
 * @param port on the loopback address; 0 for any that is free
 * @param shelf the folder of saved patterns
 * @param page a folder to take the page's files from instead of the packed ones, read afresh each
 *     time; for working on the page
 * @param answers a folder of answers that {@code deferent-far} found, to leaf through
 */
public record StudioOptions(int port, Path shelf, Optional<Path> page, Optional<Path> answers) {
    public StudioOptions {
        Refusal.within(port, 0, 65535, "port", "");
    }

    /** Any free port, the packed page. */
    public static StudioOptions of(Path shelf) {
        return new StudioOptions(0, shelf, Optional.empty(), Optional.empty());
    }

    public StudioOptions withPort(int other) {
        return new StudioOptions(other, shelf, page, answers);
    }

    public StudioOptions withPage(Path folder) {
        return new StudioOptions(port, shelf, Optional.of(folder), answers);
    }

    public StudioOptions withAnswers(Path folder) {
        return new StudioOptions(port, shelf, page, Optional.of(folder));
    }
}
