package deferent.take;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What was written.
 *
 * @param files the file asked for, and what stands beside it
 * @param told what is in it, in words
 * @param caution what to say to whom it is shown; most files need none
 */
public record Taken(List<Path> files, String told, Optional<String> caution) {
    public Taken {
        files = List.copyOf(files);
    }

    /** The size of a file in words: "0.3 MB". */
    static String size(long bytes) {
        return bytes < 100_000
                ? String.format(Locale.ROOT, "%.1f kB", bytes / 1e3)
                : String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
    }
}
