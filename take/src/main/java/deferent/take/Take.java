package deferent.take;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.photo.PhotoReading;
import deferent.reading.worked.Worked;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import deferent.search.whole.Keep;
import deferent.tell.TellPhoto;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * What is taken away, and how.
 *
 * @param title of the whole, such as the shelf's name; of a single pattern, its own
 * @param patterns one; to print, as many as a shelf or a route has
 * @param others those beside them that a sheet may tell transitions with
 * @param route whether they are gone through in that order
 * @param wishes which file, and what is wished of it
 * @param lexicon the user's own words
 * @param film the film that shows the one pattern, where what it shows is taken away
 */
public record Take(
        String title,
        List<PatternDocument> patterns,
        List<PatternDocument> others,
        boolean route,
        Wishes wishes,
        Lexicon lexicon,
        Optional<Filmed> film) {
    public Take {
        patterns = List.copyOf(patterns);
        others = List.copyOf(others);
        if (patterns.isEmpty()) {
            throw new Refusal("has no patterns", title, "save one on the shelf first");
        }
        if (patterns.size() > 1 && !wishes.ending().many()) {
            throw new Refusal(
                    "are " + patterns.size() + " patterns",
                    title,
                    "name one of them, or end the file in "
                            + Endings.list(Ending::many)
                            + " for a booklet");
        }
    }

    /** One pattern among others. */
    public static Take of(
            PatternDocument pattern, List<PatternDocument> others, Wishes wishes, Lexicon lexicon) {
        return new Take(
                pattern.name(), List.of(pattern), others, false, wishes, lexicon, Optional.empty());
    }

    /** Many patterns. */
    public static Take of(
            String title, List<PatternDocument> patterns, Wishes wishes, Lexicon lexicon) {
        return new Take(title, patterns, List.of(), false, wishes, lexicon, Optional.empty());
    }

    /** What a film shows; an ending from {@link FilmEndings}. */
    public static Take of(Filmed film, Wishes wishes, Lexicon lexicon) {
        Pairing meant = film.reading().held().meant();
        // The measured tempo is no round number, and nobody says more than a tenth of a cycle.
        Pairing said =
                meant.setsOwnTempo()
                        ? meant
                        : meant.withTempo(OptionalDouble.of(Math.rint(10 * meant.tempo()) / 10));
        Optional<String> phrase = Phrase.write(said, lexicon);
        PatternDocument pattern =
                PatternDocument.of(phrase.orElse("A film of practice"), meant, film.performer())
                        .withKit(film.kit())
                        .withPhrase(phrase);
        return new Take(
                pattern.name(),
                List.of(pattern),
                List.of(),
                false,
                wishes,
                lexicon,
                Optional.of(film));
    }

    /** The film that is taken away. */
    Filmed filmed() {
        return film.orElseThrow(
                () -> new IllegalStateException("an ending of films was given no film"));
    }

    /** Patterns that are gone through one after another. */
    public Take asRoute() {
        return new Take(title, patterns, others, true, wishes, lexicon, film);
    }

    Take with(Wishes other) {
        return new Take(title, patterns, others, route, other, lexicon, film);
    }

    /** The name of its file, before the dot: short, and safe in any folder. */
    public String fileName() {
        String said =
                patterns.size() > 1
                        ? title
                        : patterns.get(0).phrase().orElse(patterns.get(0).name());
        return Shelf.slug(said);
    }

    Subject subject() {
        if (film.isPresent()) {
            if (wishes.yes(Wish.LEFT_HANDED)) {
                throw new Refusal(
                        "is wished of a film, which shows what was spun",
                        Wish.LEFT_HANDED.key(),
                        "leave it out");
            }
            return Subject.of(patterns.get(0), film.get());
        }
        PatternDocument pattern = patterns.get(0);
        boolean left = wishes.yes(Wish.LEFT_HANDED);
        return Subject.of(
                left ? pattern.mirrored(lexicon) : pattern,
                left,
                Keep.named(wishes.word(Wish.CORD)),
                lexicon);
    }

    /** What to say beside a file that moves by itself and moves fast. */
    Optional<String> caution() {
        OptionalDouble speed = wishes.ending().speed(wishes);
        if (speed.isEmpty()) {
            return Optional.empty();
        }
        if (film.isPresent() && wishes.ending() instanceof FilmEnding) {
            return Optional.empty();
        }
        Subject subject = subject();
        Worked<PhotoReading> photo =
                Worked.of(
                        "how fast the lights go",
                        () ->
                                PhotoReading.of(
                                        subject.trace(), subject.document().kit().headDiameter()));
        return photo.failure()
                .map(not -> "How fast the lights go could not be worked out: " + not.reason() + ".")
                .or(
                        () ->
                                photo.reading()
                                        .flatMap(
                                                read ->
                                                        TellPhoto.fastLights(
                                                                read, speed.getAsDouble())));
    }

    /** As {@link Ending#write}. */
    public Optional<Taken> write(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return wishes.ending().write(this, target, listener, stop);
    }

    /**
     * As {@link Ending#preview}.
     *
     * @param calm when one picture does for what moves
     */
    public Optional<Preview> preview(Preview.Calm calm, BooleanSupplier stop) {
        Optional<String> caution = caution();
        boolean still =
                calm == Preview.Calm.ALWAYS || (calm == Preview.Calm.FAST && caution.isPresent());
        try {
            return wishes.ending()
                    .preview(this, still, stop)
                    .map(preview -> caution.map(preview::cautioned).orElse(preview));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
