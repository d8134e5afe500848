package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.page.sheet.PrintProgress;
import deferent.page.sheet.Taught;
import deferent.page.web.HallPage;
import deferent.page.web.TaughtSet;
import deferent.page.web.TaughtShelf;
import deferent.page.web.TaughtSong;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.Shelf;
import deferent.record.SongPlace;
import deferent.record.cue.SungSet;
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

    /**
     * A set with its patterns as they are now.
     *
     * @param song that it is spun to, as it is found now; empty for none
     * @param sound the song's file; empty where it is gone, or there is no song
     * @param heard whether the song is taken along, where its file is there
     */
    public record Wanted(
            SetDocument set,
            List<SetPlaces.Place> places,
            Optional<SongPlace> song,
            Optional<Path> sound,
            boolean heard) {
        public Wanted {
            places = List.copyOf(places);
        }

        /**
         * A set as it is found on a shelf.
         *
         * @param shelf the shelf's folder, where songs may lie; empty for none
         * @param heard whether its song is taken along, where its file is there
         */
        public static Wanted on(
                Shelf.Listing listing, SetDocument set, Optional<Path> shelf, boolean heard) {
            Optional<SongPlace> song = set.song().map(asked -> SongPlace.on(listing, asked));
            return new Wanted(
                    set,
                    SetPlaces.on(listing).of(set.steps()),
                    song,
                    shelf.flatMap(folder -> song.flatMap(s -> s.sound(folder))),
                    heard);
        }

        Wanted mirrored(Lexicon lexicon) {
            return new Wanted(
                    set,
                    places.stream().map(place -> place.mirrored(lexicon)).toList(),
                    song,
                    sound,
                    heard);
        }

        private Optional<SungSet> sung(SetReading reading) {
            return reading.plan()
                    .song()
                    .flatMap(
                            to ->
                                    song.map(
                                            place ->
                                                    new SungSet(
                                                            reading,
                                                            place.name(),
                                                            to.clock(),
                                                            sound)));
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
                sets.stream().map(wanted -> wanted.mirrored(lexicon)).toList(),
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
        return taught(listener, stop).map(taught -> landed(target, taught));
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
                        wanted.song(),
                        book,
                        false,
                        at -> listener.accept(TellSet.progress(at)),
                        stop)
                .map(
                        reading ->
                                new TaughtSet(
                                        reading,
                                        book,
                                        wanted.set().author(),
                                        wanted.sung(reading)
                                                .map(sung -> SetPage.song(sung, wanted.heard()))));
    }

    private Optional<List<Taught>> taught(
            List<PatternDocument> all, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return Taught.of(
                all,
                lexicon,
                // What comes next in a set is said there.
                compared && patterns.size() <= COMPARED ? patterns.size() : 0,
                at -> listener.accept(progress(at)),
                stop);
    }

    private static TakeProgress progress(PrintProgress at) {
        return new TakeProgress(
                SETS + (1 - SETS) * (double) at.done() / Math.max(1, at.all()), at.told());
    }

    private Taken landed(Path target, TaughtShelf taught) {
        String html = HallPage.of(taught);
        try (Landing landing = Landing.at(target)) {
            OutputStream out = Channels.newOutputStream(landing.channel());
            out.write(html.getBytes(StandardCharsets.UTF_8));
            String size = Taken.size(landing.size());
            landing.land();
            return new Taken(
                    List.of(target), told() + songs(taught) + ", " + size, Optional.empty());
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    /** Whether the songs of its sets are heard in it. */
    private static String songs(TaughtShelf taught) {
        List<TaughtSong> songs =
                taught.sets().stream().flatMap(set -> set.song().stream()).toList();
        long heard = songs.stream().filter(song -> song.sound().length > 0).count();
        if (songs.isEmpty()) {
            return "";
        }
        if (heard < songs.size()) {
            return songs.size() == 1 && songs.get(0).sung().sound().isEmpty()
                    ? ", without its song, whose sound was not found"
                    : ", without songs: a set taken away alone has its own";
        }
        return ", with its song";
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
