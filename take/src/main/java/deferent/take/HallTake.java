package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.page.sheet.PrintProgress;
import deferent.page.sheet.Taught;
import deferent.page.web.HallPage;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.landing.Landing;
import deferent.search.set.PairBook;
import deferent.tell.TellSet;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A shelf, a folder or a set that is taken to the hall: one page that practises on a phone.
 *
 * @param title of the whole, such as the shelf's name
 * @param patterns those to choose from
 * @param sets those that are played in order
 * @param lexicon the user's own words
 */
public record HallTake(
        String title, List<PatternDocument> patterns, List<Wanted> sets, Lexicon lexicon) {
    /** Of more patterns it is not told what leads from one to another: there are too many pairs. */
    private static final int COMPARED = 40;

    /** The share of all the work that goes into sets, roughly. */
    private static final double SETS = 0.3;

    /** A set with its patterns as they are now. */
    public record Wanted(SetDocument set, List<SetPlaces.Place> places) {
        public Wanted {
            places = List.copyOf(places);
        }
    }

    public HallTake {
        patterns = List.copyOf(patterns);
        sets = List.copyOf(sets);
        if (patterns.isEmpty()) {
            throw new Refusal("has no patterns", title, "save one on the shelf first");
        }
    }

    /** The left-handed version of all of it. */
    public HallTake leftHanded() {
        return new HallTake(
                title + ", left-handed",
                patterns.stream().map(pattern -> pattern.mirrored(lexicon)).toList(),
                sets.stream()
                        .map(
                                wanted ->
                                        new Wanted(
                                                wanted.set(),
                                                wanted.places().stream()
                                                        .map(place -> place.mirrored(lexicon))
                                                        .toList()))
                        .toList(),
                lexicon);
    }

    /** Whether files of that name are pages, which alone can be taken so. */
    public static boolean writes(Ending ending) {
        return ending instanceof PageEnding;
    }

    /** Writes it whole or not at all; empty where it was stopped. */
    public Optional<Taken> write(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        List<SetReading> read = new ArrayList<>();
        for (Wanted wanted : sets) {
            double before = SETS * read.size() / sets.size();
            Optional<SetReading> one =
                    reading(wanted, told -> listener.accept(new TakeProgress(before, told)), stop);
            if (one.isEmpty()) {
                return Optional.empty();
            }
            read.add(one.get());
        }
        List<PatternDocument> all = new ArrayList<>(patterns);
        for (Wanted wanted : sets) {
            for (SetPlaces.Place place : wanted.places()) {
                place.pattern()
                        .filter(p -> all.stream().noneMatch(o -> o.pairing().equals(p.pairing())))
                        .ifPresent(all::add);
            }
        }
        return taught(all, listener, stop)
                .map(
                        taught ->
                                landed(
                                        target,
                                        HallPage.of(
                                                title, taught, patterns.size(), read, lexicon)));
    }

    private static Optional<SetReading> reading(
            Wanted wanted, Consumer<String> listener, BooleanSupplier stop) {
        PairBook book =
                new PairBook(
                        wanted.set().hardest(),
                        SetReading.performer(wanted.places()),
                        SetReading.kit(wanted.places()));
        return SetReading.of(
                wanted.set().name(),
                wanted.places(),
                book,
                false,
                at -> listener.accept(TellSet.progress(at)),
                stop);
    }

    private Optional<List<Taught>> taught(
            List<PatternDocument> all, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return Taught.of(
                all,
                lexicon,
                all.size() > 1 && all.size() <= COMPARED,
                at -> listener.accept(progress(at)),
                stop);
    }

    private static TakeProgress progress(PrintProgress at) {
        return new TakeProgress(
                SETS + (1 - SETS) * (double) at.done() / Math.max(1, at.all()), at.told());
    }

    private Taken landed(Path target, String html) {
        try (Landing landing = Landing.at(target)) {
            OutputStream out = Channels.newOutputStream(landing.channel());
            out.write(html.getBytes(StandardCharsets.UTF_8));
            String size = Taken.size(landing.size());
            landing.land();
            return new Taken(List.of(target), told() + ", " + size, Optional.empty());
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    private String told() {
        return "hall file of "
                + (patterns.size() == 1 ? "one pattern" : patterns.size() + " patterns")
                + switch (sets.size()) {
                    case 0 -> "";
                    case 1 -> " and a set";
                    default -> " and " + sets.size() + " sets";
                };
    }
}
