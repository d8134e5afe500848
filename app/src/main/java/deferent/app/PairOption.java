package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What commands about several patterns share: the tether and the shelf. */
final class PairOption {
    @Option(
            names = "--tether",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Tether of all hands, such as 60cm; unsaid, each pattern's own.")
    private @Nullable Double tether;

    @Mixin private ShelfOption shelf;

    ShelfOption shelves() {
        return shelf;
    }

    Shelf shelf() {
        return shelf.shelf();
    }

    /** The user's own words for phrases. */
    Lexicon words() {
        return shelf.words();
    }

    /** The pattern that a phrase, a file or a name on the shelf says. */
    PatternDocument pattern(String text) {
        if (text.isBlank()) {
            throw new Refusal("is empty", "a pattern", "give a phrase, a file or a name");
        }
        return new Named(
                        text,
                        shelf,
                        tether == null ? Optional.empty() : Optional.of(Tether.of(tether)))
                .pattern();
    }
}
