package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.page.sheet.PrintProgress;
import deferent.page.sheet.Taught;
import deferent.page.web.HallPage;
import deferent.page.web.TaughtSet;
import deferent.page.web.TaughtShelf;
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
import java.util.Map;
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
 * @param compared whether it is told what leads from one pattern to another, which takes longest
 */
public record HallTake(
        String title,
        List<PatternDocument> patterns,
        List<Wanted> sets,
        Lexicon lexicon,
        boolean compared) {
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
                lexicon,
                compared);
    }

    /** Whether files of that name are pages, which alone can be taken so. */
    public static boolean writes(Ending ending) {
        return ending instanceof PageEnding;
    }

    /** As it usually is. */
    public HallTake(
            String title, List<PatternDocument> patterns, List<Wanted> sets, Lexicon lexicon) {
        this(title, patterns, sets, lexicon, true);
    }

    /**
     * As is wished: left-handed, or without telling what leads from one pattern to another.
     *
     * @param said by {@link Wish#key}
     */
    public HallTake with(Map<String, String> said) {
        boolean told = compared;
        boolean left = false;
        for (Map.Entry<String, String> wish : said.entrySet()) {
            boolean turned = wish.getKey().equals(Wish.LEFT_HANDED.key());
            if (!turned && !wish.getKey().equals(Wish.TRANSITIONS.key())) {
                throw new Refusal(
                        "means nothing for a hall file or a site",
                        "--" + wish.getKey(),
                        "leave it out: what is seen, and how, is chosen in the page");
            }
            if (!List.of("yes", "no").contains(wish.getValue())) {
                throw new Refusal(
                        "is \"" + wish.getValue() + "\"", "--" + wish.getKey(), "say yes or no");
            }
            boolean yes = wish.getValue().equals("yes");
            left = turned ? yes : left;
            told = turned ? told : yes;
        }
        HallTake wished = new HallTake(title, patterns, sets, lexicon, told);
        return left ? wished.leftHanded() : wished;
    }

    /** Writes it whole or not at all; empty where it was stopped. */
    public Optional<Taken> write(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return taught(listener, stop).map(taught -> landed(target, HallPage.of(taught)));
    }

    /** Works out all that is said of it; empty where it was stopped. */
    public Optional<TaughtShelf> taught(Consumer<TakeProgress> listener, BooleanSupplier stop) {
        List<TaughtSet> read = new ArrayList<>();
        for (Wanted wanted : sets) {
            double before = SETS * read.size() / sets.size();
            Optional<TaughtSet> one =
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
                .map(taught -> new TaughtShelf(title, taught, patterns.size(), read, lexicon));
    }

    static Optional<TaughtSet> reading(
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
                        stop)
                .map(reading -> new TaughtSet(reading, book, wanted.set().author()));
    }

    private Optional<List<Taught>> taught(
            List<PatternDocument> all, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return Taught.of(
                all,
                lexicon,
                compared && all.size() > 1 && all.size() <= COMPARED,
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
