package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.Document;
import deferent.record.DocumentError;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.SetDocument;
import deferent.record.SetJson;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.SetSong;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.record.SongDocument;
import deferent.record.SongPlace;
import deferent.record.SuggestedSet;
import deferent.record.cue.SungSet;
import deferent.search.set.BodyTurn;
import deferent.search.set.PairBook;
import deferent.search.set.Stay;
import deferent.search.transition.Grade;
import deferent.take.SetEndings;
import deferent.take.SetTake;
import deferent.take.Wish;
import deferent.take.Wishes;
import deferent.tell.TellSet;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "set",
        mixinStandardHelpOptions = true,
        description = {
            "Tells a set: patterns in order, each for so many counts, and what leads from one to the"
                    + " next. A count is one turn of the poi that turns more often.",
            "  deferent set \"Market evening\"",
            "  deferent set \"Long arms, 16\" \"isolation vs isolation, 8\" --keep \"Short one\"",
            "  deferent set \"Long arms, 16\" \"Short one, 16\" --song \"Snow\" --beats 2,4",
            "  deferent set --suggest 6 --from \"Long arms\""
        })
final class SetCommand implements Callable<Integer> {
    private static final Pattern COUNTED =
            Pattern.compile(
                    "(.*\\S)\\s*,\\s*(\\d{1,6})(?:\\s*,\\s*(quarter|half)\\s+(?:turn\\s+)?(?:to\\s+the\\s+)?"
                            + "(left|right)(?:\\s+(?:on|at)\\s+(\\d{1,6}))?)?\\s*",
                    Pattern.CASE_INSENSITIVE);
    private static final Pattern LOOP = Pattern.compile("\\s*(\\d{1,4})\\s*-\\s*(\\d{1,4})\\s*");

    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..*",
            paramLabel = "SET",
            description =
                    "A set's name or file; or its patterns in order, each a phrase, a file or a shelf"
                            + " name with its counts: \"Long arms, 16\". A quarter or half turn of the body"
                            + " to the left or right comes after them, with the count it is made on:"
                            + " \"Long arms, 16, half left on 5\".")
    private List<String> said = List.of();

    @Mixin private PairOption pair;

    @Option(
            names = "--hardest",
            paramLabel = "GRADE",
            description =
                    "The hardest transition to take: easy, practised or hard; unsaid, the set's own.")
    private @Nullable Grade hardest;

    @Option(
            names = "--suggest",
            paramLabel = "N",
            description =
                    "Instead, a set of N patterns of the shelf, each once, hardest in the middle.")
    private @Nullable Integer suggest;

    @Option(
            names = "--from",
            paramLabel = "NAME",
            description = "With --suggest: the pattern it begins with.")
    private @Nullable String from;

    @Option(
            names = "--song",
            paramLabel = "NAME",
            description =
                    "The song of the shelf that it is spun to, instead of the set's own: its tempo is"
                            + " the patterns', and their counts begin on its beats.")
    private @Nullable String song;

    @Option(
            names = "--from-beat",
            paramLabel = "N",
            description = "The song's beat on which the set begins; the song's first is 1.")
    private @Nullable Integer fromBeat;

    @Option(
            names = "--beats",
            paramLabel = "N,N,...",
            split = ",",
            description =
                    "How many of the song's beats a cycle of each pattern lasts, in order; 0 chooses"
                            + " those with which it is nearest to its own tempo, as where there are"
                            + " fewer numbers than patterns.")
    private List<Integer> beats = List.of();

    @Option(
            names = "--keep",
            paramLabel = "NAME",
            description = "Also save it on the shelf under that name.")
    private @Nullable String keep;

    @Option(
            names = "--loop",
            paramLabel = "A-B",
            description = "Only from its Ath pattern to its Bth, and back to the Ath again.")
    private @Nullable String loop;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Also write it, by the ending of the name: a clip that plays it once, to its song"
                            + " where it has one, a sheet or cue sheet (.pdf, .csv, .vtt), markers"
                            + " (.otio), clicks (.wav), counts (.mid), or .json.")
    private @Nullable Path file;

    @Mixin private AsOption as;

    @Mixin private ProgressOption progress;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    /** Adds an option for what may be wished of its file. */
    static void offer(CommandSpec set) {
        for (Wish wish : SetTake.WISHES) {
            set.addOption(DrawCommand.option(wish, "With --out: " + SetTake.means(wish)));
        }
    }

    @Override
    public Integer call() {
        try (Stopping stop = new Stopping();
                AsOption sent = as) {
            return answer(sent, stop);
        }
    }

    private int answer(AsOption sent, Stopping stop) {
        @Nullable Path target = file == null ? null : sent.place(file, "--out");
        Optional<Wishes> wishes =
                Optional.ofNullable(target)
                        .map(
                                path ->
                                        Wishes.of(
                                                SetEndings.of(path).ending(),
                                                DrawCommand.said(spec)));
        Progress line = progress.line();
        Shelf.Listing listing = pair.shelf().look();
        SetDocument kept = suggest == null ? asked() : suggested(listing, suggest, line, stop);
        SetDocument graded = hardest == null ? kept : kept.withHardest(hardest);
        SetDocument set = toSong(graded, listing);
        boolean left = wishes.filter(SetTake::leftHanded).isPresent();
        List<SetPlaces.Place> places =
                SetPlaces.on(listing).of(set.steps()).stream()
                        .map(place -> left ? place.mirrored(pair.words()) : place)
                        .toList();
        boolean round = loop != null;
        List<SetPlaces.Place> part = loop == null ? places : part(places, loop);
        PairBook book = book(part, set.hardest());
        SetReading reading =
                SetReading.of(
                                set.name() + (left ? ", left-handed" : ""),
                                part,
                                set.song().map(asked -> SongPlace.on(listing, asked)),
                                book,
                                round,
                                at -> line.show(TellSet.share(at), TellSet.progress(at)),
                                stop)
                        .orElseThrow(SetCommand::stopped);
        line.clear();
        if (Manners.of(spec).json()) {
            spec.commandLine().getOut().print(SetJson.write(reading));
        } else {
            tell(reading);
        }
        if (target != null && wishes.isPresent()) {
            SetTake take =
                    new SetTake(
                            reading,
                            SungSet.of(reading, pair.shelf().folder()),
                            book,
                            wishes.get(),
                            pair.words());
            Drawing.write(take::write, target, sent, Manners.of(spec), line, stop);
        }
        if (keep != null) {
            kept(set.withName(keep));
        }
        spec.commandLine().getOut().flush();
        return reading.faults().isEmpty() ? Exit.FOUND.code() : Exit.NOT_FOUND.code();
    }

    /** The set with the song, the beat and the beats a cycle that are said. */
    private SetDocument toSong(SetDocument set, Shelf.Listing listing) {
        Optional<SetSong> to = song == null ? set.song() : Optional.of(song(song, listing));
        if (to.isEmpty() && (fromBeat != null || !beats.isEmpty())) {
            throw new Refusal(
                    "is given without a song",
                    fromBeat != null ? "--from-beat" : "--beats",
                    "say which with --song");
        }
        if (beats.size() > set.steps().size()) {
            throw new Refusal(
                    "has " + beats.size() + " numbers for " + set.steps().size() + " patterns",
                    "--beats",
                    "give one for each pattern, or fewer");
        }
        List<SetStep> steps = new ArrayList<>(set.steps());
        for (int i = 0; i < beats.size(); i++) {
            int each = beats.get(i);
            steps.set(i, steps.get(i).with(each == 0 ? OptionalInt.empty() : OptionalInt.of(each)));
        }
        SetDocument stepped = set.withSteps(steps);
        if (fromBeat == null) {
            return stepped.withSong(to);
        }
        int begin = begin(fromBeat);
        return stepped.withSong(to.map(s -> s.from(begin)));
    }

    private static int begin(int beat) {
        if (beat < 1) {
            throw new Refusal(
                    "is " + beat, "--from-beat", "give 1 for the song's first beat, or more");
        }
        return beat - 1;
    }

    private static SetSong song(String name, Shelf.Listing listing) {
        return listing.kept().stream()
                .filter(kept -> kept.document() instanceof SongDocument)
                .filter(
                        kept ->
                                kept.id().equals(name)
                                        || kept.document().name().equalsIgnoreCase(name))
                .findFirst()
                .map(kept -> new SetSong(kept.id(), kept.document().name(), 0))
                .orElseThrow(
                        () ->
                                NotFound.named(
                                        name,
                                        "is no song on the shelf",
                                        "--song ",
                                        "give the name of one that shelf list shows",
                                        listing.kept().stream()
                                                .map(Kept::document)
                                                .filter(SongDocument.class::isInstance)
                                                .map(Document::name)
                                                .toList()));
    }

    private static NotMade stopped() {
        return new NotMade("the set was not worked out: stopped", "ask again");
    }

    private static PairBook book(List<SetPlaces.Place> places, Grade hardest) {
        return new PairBook(hardest, SetReading.performer(places), SetReading.kit(places));
    }

    private void kept(SetDocument set) {
        Kept kept = pair.shelf().saveNew(set);
        Manners.of(spec).beside(ShelfCommand.Work.said(pair.shelf(), kept));
    }

    private SetDocument suggested(Shelf.Listing listing, int length, Progress line, Stopping stop) {
        if (!said.isEmpty()) {
            throw new Refusal(
                    "is given beside --suggest",
                    "\"" + said.get(0) + "\"",
                    "give the one or the other; what it begins with is --from");
        }
        List<Kept> patterns = SuggestedSet.patterns(listing);
        List<SetPlaces.Place> all =
                SetPlaces.on(listing)
                        .of(patterns.stream().map(kept -> SetStep.of(kept, 1)).toList());
        SuggestedSet found =
                SuggestedSet.of(
                                patterns,
                                length,
                                Optional.ofNullable(from).map(this::id),
                                book(all, hardest == null ? Grade.USUAL : hardest),
                                at -> line.show(TellSet.share(at), TellSet.progress(at)),
                                stop)
                        .orElseThrow(SetCommand::stopped);
        line.clear();
        return found.set()
                .orElseThrow(
                        () ->
                                new NotFound(
                                        "there is none in which each leads into the next",
                                        "a set of " + length + " from the shelf",
                                        "ask for fewer, another grade with --hardest, or save more patterns"));
    }

    private String id(String name) {
        return pair.shelves().found(name, "--from ").id();
    }

    /** What is said: one set by its name, or patterns with their counts. */
    private SetDocument asked() {
        if (from != null) {
            throw new Refusal("is given without --suggest", "--from", "say how many patterns");
        }
        if (said.isEmpty()) {
            throw new Refusal(
                    "names no set",
                    "set",
                    "give a set of the shelf, patterns with counts, or --suggest with a number");
        }
        if (said.size() == 1 && !COUNTED.matcher(said.get(0)).matches()) {
            return saved(said.get(0));
        }
        return SetDocument.of(
                keep == null ? "The set" : keep, said.stream().map(this::step).toList());
    }

    private SetDocument saved(String name) {
        Optional<SetDocument> file = file(name);
        if (file.isPresent()) {
            return file.get();
        }
        Kept kept =
                pair.shelf()
                        .find(name)
                        .orElseThrow(
                                () ->
                                        NotFound.named(
                                                name,
                                                "is no set on the shelf",
                                                "",
                                                "give a name that shelf list shows, or patterns"
                                                        + " with counts: \"A, 16\" \"B, 8\"",
                                                pair.shelves().names()));
        if (kept.document() instanceof SetDocument set) {
            return set;
        }
        throw new Refusal(
                "is a " + kept.document().kind() + ", not a set",
                "\"" + name + "\"",
                "give it counts and what comes after it: \"" + name + ", 16\" \"B, 8\"");
    }

    private Optional<SetDocument> file(String name) {
        Path path;
        try {
            path = Path.of(name);
        } catch (InvalidPathException noFile) {
            return Optional.empty();
        }
        if (!name.endsWith(".json") && !name.equals(Incoming.STANDARD)) {
            return Optional.empty();
        }
        try {
            if (PatternJson.read(Named.contents(path, Manners.of(spec)), pair.words())
                    instanceof SetDocument set) {
                return Optional.of(set);
            }
        } catch (DocumentError wrong) {
            throw wrong.in(name);
        }
        throw new Refusal("holds no set", "file " + name, "give a set's file");
    }

    /** "Long arms, 16"; a pattern of the shelf stays one of the shelf, anything else is held. */
    private SetStep step(String text) {
        Matcher counted = COUNTED.matcher(text);
        if (!counted.matches()) {
            throw new Refusal(
                    "has no counts",
                    "\"" + text + "\"",
                    "say how many after a comma, and a turn of the body after another: \"A, 16\""
                            + " or \"A, 16, half left on 5\"");
        }
        String name = counted.group(1);
        int counts = Integer.parseInt(counted.group(2));
        Optional<Kept> onShelf =
                pair.shelf().find(name).filter(kept -> kept.document() instanceof PatternDocument);
        SetStep step =
                onShelf.isPresent()
                        ? SetStep.of(onShelf.get(), counts)
                        : SetStep.of(pair.pattern(name), counts);
        return counted.group(3) == null ? step : step.with(turn(counted));
    }

    private static BodyTurn turn(Matcher counted) {
        int quarters = counted.group(3).equalsIgnoreCase("half") ? 2 : 1;
        boolean left = counted.group(4).equalsIgnoreCase("left");
        String on = counted.group(5);
        return new BodyTurn(left ? quarters : -quarters, on == null ? 1 : Integer.parseInt(on));
    }

    private List<SetPlaces.Place> part(List<SetPlaces.Place> places, String text) {
        Matcher range = LOOP.matcher(text);
        int all = places.size();
        if (!range.matches()) {
            throw new Refusal("is \"" + text + "\"", "--loop", "give two places, such as 2-4");
        }
        int first = Integer.parseInt(range.group(1));
        int last = Integer.parseInt(range.group(2));
        if (first < 1 || last < first || last > all) {
            throw new Refusal(
                    "is " + text + " of " + all + (all == 1 ? " pattern" : " patterns"),
                    "--loop",
                    "give two places from 1 to " + all + ", the first no later than the last");
        }
        return new ArrayList<>(places.subList(first - 1, last));
    }

    private void tell(SetReading reading) {
        PrintWriter out = spec.commandLine().getOut();
        TextOut say = new TextOut(out, why);
        List<Told> told = reading.told();
        say.told("", told.get(0));
        reading.faults().forEach(fault -> say.told("", fault));
        out.println();
        List<String> names = reading.names();
        for (int i = 0; i < names.size(); i++) {
            String first = String.format("%3d. ", i + 1);
            var stay = reading.plan().stays().get(i);
            if (stay.isEmpty()) {
                say.line(first, names.get(i) + " (gone)");
            } else {
                // To a song the sentence below says when, by the song's own clock.
                String from =
                        reading.inSong(i).isPresent()
                                ? ""
                                : ", from " + TellSet.duration(stay.get().starts());
                say.line(first, names.get(i) + from);
                Stay kept = stay.get();
                reading.kept(i).forEach(one -> say.told("     ", one));
                if (!TellSet.reached(kept)) {
                    say.told("     ", TellSet.reach(kept));
                }
                reading.danger(i).ifPresent(danger -> say.told("     ", danger));
                reading.turn(i)
                        .ifPresent(
                                turn -> TellSet.turn(turn).forEach(one -> say.told("     ", one)));
            }
            if (i < reading.plan().joints().size()) {
                say.told(
                        "   > ",
                        TellSet.joint(
                                reading.plan().joints().get(i),
                                names.get(i),
                                names.get((i + 1) % names.size())));
            }
        }
        List<Told> rest =
                told.stream().skip(1).filter(one -> !reading.faults().contains(one)).toList();
        if (!rest.isEmpty()) {
            out.println();
            rest.forEach(one -> say.told("", one));
        }
    }
}
