package deferent.take;

import deferent.record.landing.Landing;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** Writes what is taken away. */
public final class TakeAway {
    private TakeAway() {}

    /**
     * Writes a file whole or not at all: stopped, or where it cannot be written, what stood there
     * before is untouched.
     *
     * @param listener hears how far it is, on this thread
     * @param stop asked every little while
     * @return what was written; empty where it was stopped
     */
    public static Optional<Taken> write(
            Take take, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        if (take.wishes().ending().family() == Ending.Family.CLIP) {
            return Moving.write(take, target, listener, stop);
        }
        Writing writing = Writing.of(take);
        try (Landing landing = Landing.at(target)) {
            OutputStream out =
                    new BufferedOutputStream(Channels.newOutputStream(landing.channel()));
            Optional<String> told = writing.write(out, listener, stop);
            if (told.isEmpty()) {
                return Optional.empty();
            }
            out.flush();
            long bytes = landing.size();
            landing.land();
            return Optional.of(
                    new Taken(
                            List.of(target),
                            told.get() + ", " + size(bytes),
                            Moving.caution(take)));
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    static String size(long bytes) {
        return bytes < 100_000
                ? String.format(Locale.ROOT, "%.1f kB", bytes / 1e3)
                : String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
    }
}
