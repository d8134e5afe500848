package deferent.record.landing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A file that comes in pieces, in a folder that nobody keeps: nothing stood there before, and
 * nobody reads it before it is whole.
 */
public final class Arriving {
    private Arriving() {}

    /** Makes it, empty. */
    public static void begin(Path file) throws IOException {
        Files.createFile(file);
    }

    /** Puts the next bytes behind those that are there; how many there are then. */
    public static long append(Path file, byte[] bytes) throws IOException {
        Files.write(file, bytes, StandardOpenOption.APPEND);
        return Files.size(file);
    }
}
