package deferent.studio.take;

import java.nio.file.Path;
import java.util.List;

/**
 * What was written.
 *
 * @param files the file asked for, and what stands beside it
 * @param told what is in it, in words
 */
public record Taken(List<Path> files, String told) {
    public Taken {
        files = List.copyOf(files);
    }
}
