package deferent.take;

import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.page.Caption;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.View;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.search.whole.Keep;
import deferent.search.whole.Readings;
import deferent.search.whole.Staged;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A pattern that is taken away, and what is shown of it: the ideal, what a cord makes of it, or
 * what a film shows.
 *
 * @param leftHanded whether the pattern is the mirror image of the one that was asked for
 * @param carrier the carrier whose link is drawn
 */
record Subject(PatternDocument document, boolean leftHanded, Trace trace, Side carrier) {
    static Subject of(PatternDocument document, boolean leftHanded, Keep keep, Lexicon lexicon) {
        Readings readings =
                Readings.of(
                        document.pairing(),
                        document.performer(),
                        document.kit(),
                        Detail.LIVE,
                        lexicon);
        Staged staged = Staged.of(readings, keep, document.kit());
        return new Subject(document, leftHanded, staged.trace(), staged.carrier());
    }

    /** What a film shows. */
    static Subject of(PatternDocument document, Filmed film) {
        Trace trace = film.reading().measured().trace(film.reading().held().meant());
        return new Subject(document, false, trace, Scene.nearer(trace));
    }

    /** In words, for a caption or a title. */
    String named() {
        return document.name() + (leftHanded ? ", left-handed" : "");
    }

    /**
     * What is said of it below a picture: its name, its phrase where that is another, its sizes.
     */
    private List<String> caption(View view) {
        List<String> lines = new ArrayList<>(Caption.of(named(), document.pairing(), view));
        document.phrase()
                .filter(phrase -> !phrase.equals(document.name()))
                .ifPresent(phrase -> lines.add(1, phrase));
        return lines;
    }

    Scene scene(Set<Layer> layers) {
        return Scene.of(
                trace(),
                Scene.USUAL_COUNT,
                carrier,
                layers.contains(Layer.BODY)
                        ? Optional.of(Person.of(PoseOver.of(trace(), document.performer())))
                        : Optional.empty());
    }

    /** The still that wishes ask for. */
    Still still(Wishes wishes) {
        int[] size = wishes.size();
        double start = trace().interval().start();
        List<Double> moments =
                wishes.numbers(Wish.AT).stream()
                        .map(share -> start + share * trace().period())
                        .toList();
        StillForm form = wishes.form();
        // A single picture has one moment; poses and strips take as many as are said.
        boolean many = form.equals(StillForm.POSES) || form.equals(StillForm.STRIP);
        if (!many && moments.size() > 1) {
            throw wishes.wrong(Wish.AT, "give one moment, or wish for poses or a strip");
        }
        Still still =
                Still.of(size[0], size[1])
                        .with(wishes.view())
                        .with(wishes.theme())
                        .with(wishes.layers())
                        .with(form, many ? moments : List.of())
                        .at(many || moments.isEmpty() ? start : moments.get(0));
        if (wishes.yes(Wish.CAPTION)) {
            still = still.with(caption(wishes.view()));
        }
        return wishes.yes(Wish.TRANSPARENT) ? still.clear() : still;
    }
}
