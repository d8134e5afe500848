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
 */
public record StudioOptions(int port, Path shelf, Optional<Path> page) {
    public StudioOptions {
        Refusal.within(port, 0, 65535, "port", "");
    }

    /** Any free port, the packed page. */
    public static StudioOptions of(Path shelf) {
        return new StudioOptions(0, shelf, Optional.empty());
    }

    public StudioOptions withPort(int other) {
        return new StudioOptions(other, shelf, page);
    }

    public StudioOptions withPage(Path folder) {
        return new StudioOptions(port, shelf, Optional.of(folder));
    }
}
