package deferent.studio;

import deferent.record.landing.Landing;
import deferent.record.landing.Scratch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The files that lead a browser into the studio, in a folder of their own which only its owner may
 * enter. A browser is told to open such a file rather than an address, since what stands on a
 * command line can be read by every user of the machine.
 */
final class OpeningFolder implements AutoCloseable {
    private Optional<Scratch> scratch = Optional.empty();
    private int count;

    /** Writes a file that leads to an address. */
    synchronized Path write(URI address) {
        if (scratch.isEmpty() || !Files.isDirectory(scratch.get().folder())) {
            scratch = Optional.of(Scratch.open());
        }
        count++;
        Path file = scratch.get().folder().resolve("open-" + count + ".html");
        try (Landing landing = Landing.at(file, Landing.PRIVATE)) {
            landing.write(leading(address).getBytes(StandardCharsets.UTF_8));
            landing.land();
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String leading(URI address) {
        return """
               <!doctype html>
               <html lang="en">
               <meta charset="utf-8">
               <meta name="referrer" content="no-referrer">
               <title>Opening the Deferent studio</title>
               <meta http-equiv="refresh" content="0;url=%1$s">
               <p><a href="%1$s">Open the studio</a>. This file opens it once, within a minute.</p>
               """
                .formatted(address);
    }

    /** Takes a file away. */
    void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // Its key has died; what is left of it opens nothing, and goes with the folder.
            file.toFile().deleteOnExit();
        }
    }

    @Override
    public synchronized void close() {
        scratch.ifPresent(Scratch::close);
        scratch = Optional.empty();
    }
}
