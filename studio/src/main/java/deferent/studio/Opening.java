package deferent.studio;

import java.net.URI;
import java.nio.file.Path;

/**
 * A way into the studio, good for one use within a minute.
 *
 * @param file leads a browser there; only its owner can read it, and it is gone once it was used
 * @param address with the key in it, which belongs on no command line: everybody can read those
 */
public record Opening(Path file, URI address) {}
