package deferent.app;

import deferent.record.Shelf;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which shelf. */
final class ShelfOption {
    @Option(
            names = "--shelf",
            paramLabel = "FOLDER",
            description =
                    "The folder of saved patterns; unsaid, $DEFERENT_SHELF or deferent-shelf in"
                            + " your home.")
    private @Nullable Path folder;

    Shelf shelf() {
        return Shelf.at(path());
    }

    Path path() {
        return folder == null ? Shelf.usualFolder() : folder;
    }
}
