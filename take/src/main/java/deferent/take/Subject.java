package deferent.take;

import deferent.motion.phrase.Lexicon;
import deferent.motion.trace.Trace;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.reading.body.BodyOutline;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.search.whole.Keep;
import deferent.search.whole.Readings;
import deferent.search.whole.Staged;
import java.util.List;
import java.util.Set;

/** A pattern that is taken away, and what is shown of it: the ideal, or what a cord makes of it. */
record Subject(PatternDocument document, Staged staged) {
    static Subject of(PatternDocument document, Keep keep, Lexicon lexicon) {
        Readings readings =
                Readings.of(
                        document.pairing(),
                        document.performer(),
                        document.kit(),
                        Detail.LIVE,
                        lexicon);
        return new Subject(document, Staged.of(readings, keep, document.kit()));
    }

    Trace trace() {
        return staged.trace();
    }

    /** In words, for a caption or a title: its phrase where it has one. */
    String said() {
        return document.phrase().orElse(document.name());
    }

    Scene scene(Set<Layer> layers) {
        return Scene.of(
                trace(),
                Scene.USUAL_COUNT,
                staged.carrier(),
                layers.contains(Layer.BODY)
                        ? BodyOutline.of(document.performer()).drawn()
                        : List.of());
    }
}
