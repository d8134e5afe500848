package deferent.page.sheet;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import java.util.List;

/** Patterns to print. */
final class Patterns {
    private Patterns() {}

    static PatternDocument of(String name, String phrase) {
        return PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.of(1.72));
    }

    /** The demo shelf's patterns, as they stand. */
    static List<PatternDocument> demo() {
        return DemoShelf.documents().stream()
                .filter(PatternDocument.class::isInstance)
                .map(PatternDocument.class::cast)
                .toList();
    }

    static PatternDocument demo(String name) {
        return demo().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
    }
}
