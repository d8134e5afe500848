package deferent.record.landing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A really small disk, a memory file system of Linux that only the superuser may mount; without
 * one, tests take the device that is always full instead.
 */
public record FullDisk(Path folder) implements AutoCloseable {
    /** Mounts one of so many kilobytes; empty where that is not allowed. */
    public static Optional<FullDisk> of(Path folder, int kilobytes) throws IOException {
        Files.createDirectories(folder);
        return run("mount", "-t", "tmpfs", "-o", "size=" + kilobytes + "k", "tmpfs", "" + folder)
                ? Optional.of(new FullDisk(folder))
                : Optional.empty();
    }

    /** Fills what is left of it. */
    public void fill() throws IOException {
        Path ballast = folder.resolve("ballast");
        for (int size = 1 << 16; size > 0; size /= 2) {
            try {
                while (true) {
                    Files.write(
                            ballast,
                            new byte[size],
                            java.nio.file.StandardOpenOption.CREATE,
                            java.nio.file.StandardOpenOption.APPEND);
                }
            } catch (IOException full) {
                // Then smaller pieces.
            }
        }
    }

    @Override
    public void close() throws IOException {
        if (!run("umount", folder.toString())) {
            throw new IOException(folder + " stays mounted");
        }
    }

    private static boolean run(String... command) throws IOException {
        try {
            Process process =
                    new ProcessBuilder(List.of(command))
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start();
            return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException noSuchCommand) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
