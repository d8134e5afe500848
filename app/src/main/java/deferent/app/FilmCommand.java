package deferent.app;

import deferent.film.FilmAsk;
import deferent.film.FilmReading;
import deferent.film.Passages;
import deferent.film.Passages.Passage;
import deferent.film.follow.HeadAt;
import deferent.film.hand.FreeSwing;
import deferent.film.light.Background;
import deferent.film.light.LitSpot;
import deferent.film.practice.OverWeeks;
import deferent.film.practice.PractisedFilm;
import deferent.film.words.FilmJson;
import deferent.film.words.TellFilm;
import deferent.film.words.TellSwing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.Practice;
import deferent.record.PracticeLog;
import deferent.take.Ending;
import deferent.take.FilmEndings;
import deferent.take.Filmed;
import deferent.take.Take;
import deferent.take.Wish;
import deferent.take.Wishes;
import deferent.tell.Told;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

@Command(
        name = "film",
        mixinStandardHelpOptions = true,
        description = {
            "Watches a film of two lit poi in the dark: what was spun, where the hands were, and what"
                    + " is off against what was meant. The film stays on this machine.",
            "  deferent film practice.mp4 isolation vs triquetra --tether 60cm",
            "  deferent film practice.mp4 --scale 2.7mm --tether 60cm",
            "  deferent film swinging.mp4 --swing     (one bob let go, by day too: how long it hangs)"
        })
final class FilmCommand implements Callable<Integer> {
    /** What a film's own options say, and what is meant for patterns alone. */
    private static final Set<Wish> NOT_HERE =
            EnumSet.of(
                    Wish.LEFT_HANDED,
                    Wish.CORD,
                    Wish.PAPER,
                    Wish.TRANSITIONS,
                    Wish.SHUTTER,
                    Wish.LED,
                    Wish.MOVING);

    private static final Map<Wish, String> HERE =
            Map.of(
                    Wish.FORM,
                    "of an .mp4 or .png: over, exposure or beside, that is the film with what was"
                            + " meant laid over it, its light as one long exposure, or what was meant"
                            + " beside it; of pictures also figure, moment, poses or strip",
                    Wish.AT,
                    "the moment of a .png, seconds into the film, such as 2.3s; unsaid, when what is"
                            + " off most is seen; of a drawn form, shares of the cycle",
                    Wish.SLOW,
                    "speed: 1/2 is half as fast as filmed");

    private static final double LONGEST = 3600; // seconds

    @Spec private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "CLIP",
            description = "The film's file; - for standard input.")
    private Path said = Path.of("");

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "PHRASE|FILE|NAME",
            description =
                    "What was meant; without it, the nearest pairing is named. A still hand or a"
                            + " given scale is needed then.")
    private List<String> words = List.of();

    @Option(
            names = "--tether",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Of both poi, from hand to head, such as 60cm; unsaid, the phrase's.")
    private @Nullable Double tether;

    @Option(
            names = "--scale",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "How large a pixel is where the performer stands, such as 2.7mm.")
    private @Nullable Double scale;

    @Option(
            names = "--two-points",
            paramLabel = "X,Y,X,Y,LENGTH",
            description =
                    "Two places in the picture, in pixels from its upper left, and how far apart they"
                            + " are where the performer stands: 310,620,930,620,1.7m.")
    private @Nullable String twoPoints;

    @Option(
            names = "--first",
            paramLabel = "HAND",
            description =
                    "Whose light is further left in the picture when both are first seen: left or"
                            + " right.")
    private @Nullable Side first;

    @Option(
            names = "--swing",
            description =
                    "The film shows one bob that swings freely from a still hand, lit or not: say how"
                            + " long it hangs, from its period and width, and how soon it dies"
                            + " away.")
    private boolean swing;

    @Option(
            names = "--head",
            paramLabel = "X,Y",
            description =
                    "Where a head is in the picture at --head-at, in pixels from its upper left; once for"
                            + " each head. With --first left or right, the first of them is that"
                            + " hand's. For films by day, or with other lights that move.")
    private List<String> heads = List.of();

    @Option(
            names = "--head-at",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description = "When both heads are there, such as 1.2s; unsaid, at the beginning.")
    private @Nullable Double at;

    @Option(
            names = "--from",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description = "Read the film from there alone, such as 12s.")
    private @Nullable Double from;

    @Option(
            names = "--to",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description = "Read it to there alone.")
    private @Nullable Double to;

    @Option(
            names = "--upright",
            paramLabel = "X,Y,X,Y|ANGLE",
            description =
                    "Two places in the picture on something upright, as a door's edge, in pixels from"
                            + " its upper left; or how far the picture leans counter-clockwise,"
                            + " such as 2deg. Unsaid, a still hand's cord shows it, else the camera"
                            + " is taken to stand level.")
    private @Nullable String upright;

    @Option(
            names = "--passages",
            description =
                    "The film shows several patterns, with pauses or cuts between them: say of each"
                            + " from when to when it is, what it is, and what is off most.")
    private boolean passages;

    @Option(names = "--mirrored", description = "The film shows a mirror's picture.")
    private boolean mirrored;

    @Option(
            names = "--readout",
            paramLabel = "TIME",
            converter = Quantity.Time.class,
            description =
                    "How long the camera takes from its first row to its last, such as 16ms; unsaid,"
                            + " all rows at once.")
    private @Nullable Double readout;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Take it away, as the ending says: .mp4 the film with what was meant over it,"
                            + " .png one moment of that, .svg the meant figure over the light, .csv"
                            + " the mean cycle of hands and heads, .json the same with the reading,"
                            + " .pdf, .webm, .gif or .glb what was measured, drawn. May be"
                            + " repeated.")
    private List<Path> files = List.of();

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Mixin private AsOption as;

    @Mixin private ProgressOption progress;

    @Option(
            names = "--keep",
            arity = "0..1",
            fallbackValue = "",
            paramLabel = "NAME",
            description =
                    "Keep what was read beside the shelf, for \"deferent practice\", under a name or"
                            + " the phrase's; give it last.")
    private @Nullable String keep;

    @Option(
            names = "--keep-film",
            description = "With --keep: keep a copy of the film too, not only what was read.")
    private boolean keepFilm;

    @Option(
            names = "--replace",
            description = "With --keep: put it in the place of what was kept of this film before.")
    private boolean replace;

    @Mixin private ShelfOption shelf;

    /** Adds an option for everything that may be wished of a film's files. */
    static void offer(CommandSpec film) {
        for (Wish wish : Wish.values()) {
            if (!NOT_HERE.contains(wish)) {
                film.addOption(DrawCommand.option(wish, HERE.getOrDefault(wish, wish.means())));
            }
        }
    }

    @Override
    public Integer call() throws IOException {
        if (keep == null && (keepFilm || replace)) {
            throw new Refusal(
                    "means nothing alone",
                    keepFilm ? "--keep-film" : "--replace",
                    "give --keep too");
        }
        FilmAsk ask = ask();
        try (Stopping stop = new Stopping();
                AsOption sent = as;
                Incoming clip = Incoming.of(said, Manners.of(spec))) {
            if (clip.passing() && keep != null) {
                throw new Refusal(
                        "has no file that practice could know it by",
                        "--keep of standard input",
                        "give the film's file");
            }
            List<Path> places = sent.places(files, "--out");
            List<Wishes> wishes = wishes(places);
            Progress line = progress.line();
            if (swing) {
                swing(clip, line, stop);
                return Exit.FOUND.code();
            }
            if (passages) {
                passages(clip, ask, line, stop);
                return Exit.FOUND.code();
            }
            Optional<FilmReading> film =
                    FilmReading.of(clip.file(), ask, share -> line.show(share, "watching"), stop);
            line.clear();
            if (film.isEmpty()) {
                throw new NotMade("stopped before the film was through", "nothing was written");
            }
            say(clip, film.get());
            for (int i = 0; i < places.size(); i++) {
                Filmed filmed = new Filmed(clip.file(), film.get(), Performer.USUAL, ask.kit());
                Take take = Take.of(filmed, wishes.get(i), lexicon());
                Drawing.write(take, places.get(i), sent, Manners.of(spec), line, stop);
            }
            if (keep != null) {
                keep(clip.file(), film.get(), ask, keep);
            }
        }
        return Exit.FOUND.code();
    }

    private void keep(Path clip, FilmReading film, FilmAsk ask, String called) throws IOException {
        PractisedFilm practised = PractisedFilm.of(clip);
        Practice practice =
                practised.read(
                        film,
                        Optional.of(called).filter(name -> !name.isBlank()),
                        ask.meant(),
                        words.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", words)));
        PracticeLog log = PracticeLog.of(shelf.shelf());
        log.sweep().ifPresent(shelf::tell);
        Optional<PracticeLog.Entry> twin = log.twin(practice);
        if (twin.isPresent() && !replace) {
            throw new Refusal(
                    "is kept already, as \"" + twin.get().id() + "\"",
                    "this film",
                    "give --replace to put this in its place");
        }
        PracticeLog.Entry entry =
                keepFilm ? log.keep(practice, replace, clip) : log.keep(practice, replace);
        // Whoever reads JSON gets nothing but that.
        Manners manner = Manners.of(spec);
        if (!manner.json()) {
            manner.out().println();
        }
        manner.beside(
                (twin.isPresent() ? "Kept in place of the one before: " : "Kept: ")
                        + entry.id()
                        + ", practised "
                        + OverWeeks.day(practice)
                        + " "
                        + practice.dated().words()
                        + ".");
        manner.beside("Compare it: deferent practice " + practice.pattern());
    }

    private void swing(Incoming clip, Progress line, Stopping stop) throws IOException {
        Optional<List<List<LitSpot>>> moving =
                Background.moving(clip.file(), share -> line.show(share, "watching"), stop);
        line.clear();
        if (moving.isEmpty()) {
            throw new NotMade("stopped before the film was through", "nothing was said");
        }
        FreeSwing found = FreeSwing.of(moving.get());
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(TellSwing.json(found));
            return;
        }
        Told told =
                TellSwing.of(
                        found, tether == null ? OptionalDouble.empty() : OptionalDouble.of(tether));
        tell(told, out, Paragraphs.width());
    }

    private void passages(Incoming clip, FilmAsk ask, Progress line, Stopping stop)
            throws IOException {
        if (!files.isEmpty()) {
            throw new Refusal(
                    "is of one passage",
                    "--out",
                    "give --from and --to of it, and leave --passages out");
        }
        Optional<List<Passage>> found =
                Passages.of(clip.file(), ask, share -> line.show(share, "watching"), stop);
        line.clear();
        if (found.isEmpty()) {
            throw new NotMade("stopped before the film was through", "nothing was said");
        }
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(FilmJson.passages(found.get()));
            return;
        }
        found.get().forEach(passage -> tell(TellFilm.passage(passage), out, Paragraphs.width()));
    }

    private void tell(Told one, PrintWriter out, int width) {
        String mark = one.tone() == Told.Tone.WARN ? "! " : "  ";
        Paragraphs.wrapped(mark, one.text(), width).forEach(out::println);
        if (why) {
            Paragraphs.wrapped("      why: ", one.why(), width).forEach(out::println);
        }
    }

    private FilmAsk ask() {
        FilmAsk ask = FilmAsk.NOTHING.mirrored(mirrored);
        if (tether != null) {
            ask = ask.tethered(tether);
        }
        if (scale != null && twoPoints != null) {
            throw new Refusal("are both given", "--scale and --two-points", "give one of them");
        }
        if (scale != null) {
            ask = ask.scaled(scale);
        }
        if (twoPoints != null) {
            ask = ask.scaled(pixel(twoPoints));
        }
        if (first != null) {
            ask = ask.first(first);
        }
        if (readout != null) {
            ask = ask.reading(readout);
        }
        if (upright != null) {
            ask = ask.rolled(roll(upright));
        }
        if (!heads.isEmpty()) {
            ask = pointing(ask);
        } else if (at != null) {
            throw new Refusal(
                    "says when, not where", "--head-at", "say --head \"x,y\" for each head");
        }
        if (from != null || to != null) {
            ask = ask.within(new Interval(from == null ? 0 : from, to == null ? LONGEST : to));
        }
        if (words.isEmpty()) {
            return ask;
        }
        String text = String.join(" ", words);
        PatternDocument pattern =
                new Named(text, shelf, Optional.ofNullable(tether).map(Tether::of)).pattern();
        return ask.meaning(pattern.pairing(), text);
    }

    /** How far what is upright is turned counter-clockwise in the picture, radians. */
    private static double roll(String said) {
        String[] parts = said.split(",");
        try {
            if (parts.length == 1) {
                return Quantity.angle(said);
            }
            if (parts.length == 4) {
                double dx = Double.parseDouble(parts[2]) - Double.parseDouble(parts[0]);
                double dy = Double.parseDouble(parts[3]) - Double.parseDouble(parts[1]);
                if (Math.abs(dy) > Math.abs(dx)) {
                    return Math.atan(dx / dy);
                }
            }
        } catch (NumberFormatException | TypeConversionException notSo) {
            throw upright(said);
        }
        throw upright(said);
    }

    private static Refusal upright(String said) {
        return new Refusal(
                "does not say what is upright",
                "--upright " + said,
                "give two places above each other, such as 300,100,310,600, or 2deg");
    }

    private FilmAsk pointing(FilmAsk ask) {
        if (heads.size() != 2) {
            throw new Refusal(
                    "is said " + heads.size() + " times",
                    "--head",
                    "say it once for each of both heads");
        }
        return ask.pointing(head(heads.get(0)), head(heads.get(1)));
    }

    private HeadAt head(String said) {
        String[] parts = said.split(",");
        try {
            if (parts.length == 2) {
                return new HeadAt(
                        at == null ? 0 : at,
                        Double.parseDouble(parts[0]),
                        Double.parseDouble(parts[1]));
            }
        } catch (NumberFormatException notSo) {
            throw place(said);
        }
        throw place(said);
    }

    private static Refusal place(String said) {
        return new Refusal(
                "is no place in the picture",
                "--head " + said,
                "give two numbers, such as 310,620");
    }

    /** Metres a pixel, from two places and how far apart they are. */
    private static double pixel(String said) {
        String[] parts = said.split(",");
        try {
            if (parts.length == 5) {
                double dx = Double.parseDouble(parts[2]) - Double.parseDouble(parts[0]);
                double dy = Double.parseDouble(parts[3]) - Double.parseDouble(parts[1]);
                double apart = Math.hypot(dx, dy);
                if (apart >= 1 && Double.isFinite(apart)) {
                    return Quantity.length(parts[4]) / apart;
                }
            }
        } catch (NumberFormatException | TypeConversionException notSo) {
            throw points(said);
        }
        throw points(said);
    }

    private static Refusal points(String said) {
        return new Refusal(
                "does not say two places and a length",
                "--two-points " + said,
                "give four numbers and a length, such as 310,620,930,620,1.7m");
    }

    /** What is wished of each file: of many, each takes what means something for it. */
    private List<Wishes> wishes(List<Path> places) {
        Map<String, String> wished = DrawCommand.said(spec);
        List<Ending> endings = places.stream().map(FilmEndings::of).toList();
        if (endings.isEmpty() && !wished.isEmpty()) {
            throw new Refusal(
                    "means nothing where no file is written",
                    "--" + wished.keySet().iterator().next(),
                    "give a file with --out");
        }
        List<Wishes> all = new ArrayList<>();
        for (Ending ending : endings) {
            Map<String, String> own = new LinkedHashMap<>(wished);
            own.keySet()
                    .removeIf(
                            key ->
                                    endings.stream().anyMatch(e -> takes(e, key))
                                            && !takes(ending, key));
            all.add(Wishes.of(ending, own));
        }
        return all;
    }

    private static boolean takes(Ending ending, String key) {
        return ending.offers().stream().anyMatch(offer -> offer.wish().key().equals(key));
    }

    private Lexicon lexicon() {
        return words.isEmpty() ? Lexicon.EMPTY : shelf.words();
    }

    private void say(Incoming clip, FilmReading film) {
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(FilmJson.write(film));
            return;
        }
        int width = Paragraphs.width();
        String against = film.asked() ? ", held against " + String.join(" ", words) : "";
        out.println(clip.name() + against);
        out.println();
        TellFilm.of(film).forEach(one -> tell(one, out, width));
    }
}
