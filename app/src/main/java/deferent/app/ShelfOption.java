package deferent.app;

import deferent.motion.phrase.Lexicon;
import deferent.record.Kept;
import deferent.record.OwnWords;
import deferent.record.Shelf;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which shelf. */
final class ShelfOption {
    @Option(
            names = "--shelf",
            paramLabel = "FOLDER",
            description =
                    "The folder of saved patterns; unsaid, $DEFERENT_SHELF or deferent-shelf in"
                            + " your home.")
    private @Nullable Path folder;

    @Spec(Spec.Target.MIXEE)
    private @Nullable CommandSpec command;

    private @Nullable Shelf shelf;
    private @Nullable Lexicon words;

    /** The shelf, cleared of what a run that was killed left there. */
    Shelf shelf() {
        if (shelf == null) {
            shelf = Shelf.at(path());
            shelf.sweep().ifPresent(this::tell);
        }
        return shelf;
    }

    /**
     * The user's own words; where the shelf cannot be read that is told, and a phrase still read.
     */
    Lexicon words() {
        if (words == null) {
            OwnWords own = shelf().words();
            own.trouble().ifPresent(this::tell);
            words = own.lexicon();
        }
        return words;
    }

    /** Names that stand on it. */
    List<String> names() {
        return shelf().look().kept().stream().map(kept -> kept.document().name()).toList();
    }

    /** What stands there under a name. */
    Kept found(String name, String where) {
        return shelf().find(name)
                .orElseThrow(
                        () ->
                                NotFound.named(
                                        name,
                                        "is not on the shelf " + shelf().folder(),
                                        where,
                                        "give a name that shelf list shows",
                                        names()));
    }

    /** Tells something in one line beside the answer. */
    void tell(String line) {
        manner().remark(line);
    }

    Manners manner() {
        return Manners.of(Objects.requireNonNull(command, "picocli sets it"));
    }

    Path path() {
        return folder == null ? Shelf.usualFolder() : folder;
    }
}
