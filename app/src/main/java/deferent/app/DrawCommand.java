package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import deferent.record.ShelfError;
import deferent.take.Ending;
import deferent.take.Endings;
import deferent.take.HallTake;
import deferent.take.SiteTake;
import deferent.take.Take;
import deferent.take.Wish;
import deferent.take.Wishes;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "draw",
        mixinStandardHelpOptions = true,
        description = {
            "Takes a pattern away as the file that the ending of its name says.",
            "A shelf's folder,"
                    + " \"shelf\" or \"demo\" becomes a booklet (.pdf), or a hall file (.html), one page that"
                    + " practises with you on a phone, offline; so does a set of the shelf. Where --out is a"
                    + " folder, there already or ending in a slash, it becomes a site to publish; written"
                    + " there again, only what has changed is written.",
            "  deferent draw isolation vs triquetra --out triquetra.svg",
            "  deferent draw isolation vs triquetra --out triquetra.mp4 --seconds 10 --size wide",
            "  deferent draw demo --out lessons.pdf",
            "  deferent draw demo --out practice.html",
            "  deferent draw shelf --out site/"
        })
final class DrawCommand implements Callable<Integer> {
    /** The user's own shelf, and the one of the invented duo, in a pattern's place. */
    static final String SHELF = "shelf";

    static final String DEMO = "demo";

    /** What the shelves of that name are called in a title. */
    static final String MINE = "My shelf";

    static final String MARKET = "Lanterns at a winter market";

    private static final String ENDINGS = "endings";

    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE",
            description = "Where to, and as what: by the ending of its name, or a folder.")
    private Path file = Path.of("");

    @Mixin private AsOption as;

    @Mixin private ProgressOption progress;

    /** Adds a line for every ending, and an option for everything that may be wished. */
    static void offer(CommandSpec draw) {
        // Only for who asks for help: every command would wait for what the endings are written by.
        UsageMessageSpec usage = draw.usageMessage();
        List<String> keys = new ArrayList<>(usage.sectionKeys());
        keys.add(keys.indexOf(UsageMessageSpec.SECTION_KEY_OPTION_LIST_HEADING), ENDINGS);
        usage.sectionKeys(keys);
        usage.sectionMap().put(ENDINGS, help -> endings());
        for (Wish wish : Wish.values()) {
            draw.addOption(option(wish, wish.means()));
        }
    }

    /** An option for a wish. */
    static OptionSpec option(Wish wish, String means) {
        boolean yes = wish.kind() == Wish.Kind.YES && wish.usual().unsaid().equals("no");
        OptionSpec.Builder option =
                OptionSpec.builder("--" + wish.key())
                        .type(String.class)
                        .paramLabel(yes ? "yes" : wish.key().toUpperCase(java.util.Locale.ROOT))
                        .arity(yes ? "0..1" : "1")
                        // The descriptions are format strings: a bare % is none.
                        .description(means.replace("%", "%%") + ".");
        return (yes ? option.fallbackValue("yes") : option).build();
    }

    /** What was wished, by {@link Wish#key}. */
    static Map<String, String> said(CommandSpec spec) {
        Map<String, String> said = new LinkedHashMap<>();
        for (Wish wish : Wish.values()) {
            OptionSpec option = spec.findOption("--" + wish.key());
            if (option != null && option.getValue() instanceof String value) {
                said.put(wish.key(), value);
            }
        }
        return said;
    }

    private static String endings() {
        return Endings.all().stream()
                .map(e -> String.format("  .%-6s %s%n", e.key(), e.words()))
                .collect(
                        Collectors.joining(
                                "",
                                String.format("%nKinds of file, by the ending of the name:%n"),
                                ""));
    }

    @Override
    public Integer call() {
        try (Stopping stop = new Stopping();
                AsOption sent = as) {
            Path place = sent.place(file, "--out");
            Drawing.Writing writing = toFolder() ? site() : toFile(place);
            Drawing.answer(writing, place, sent, Manners.of(spec), progress.line(), stop);
        }
        return Exit.FOUND.code();
    }

    /** Whether what is named is a folder: there already, or ending in a slash. */
    private boolean toFolder() {
        String said = spec.findOption("--out").originalStringValues().get(0);
        return said.endsWith("/") || said.endsWith(File.separator) || Files.isDirectory(file);
    }

    private Drawing.Writing site() {
        HallTake hall =
                hall(said(spec))
                        .orElseThrow(
                                () ->
                                        new Refusal(
                                                "is one pattern, and a folder takes a whole shelf",
                                                asked.text(),
                                                "name a shelf, a folder or a set, or end the file's"
                                                        + " name in .html"));
        return new SiteTake(hall)::write;
    }

    private Drawing.Writing toFile(Path place) {
        Ending ending = Endings.of(place);
        Map<String, String> said = said(spec);
        Optional<HallTake> hall = HallTake.writes(ending) ? hall(said) : Optional.empty();
        return hall.isPresent() ? hall.get()::write : take(ending, said)::write;
    }

    /** What is taken to the hall where a shelf, a folder or a set is named; else nothing. */
    private Optional<HallTake> hall(Map<String, String> said) {
        return AskedHall.of(asked, folder()).map(hall -> hall.with(said));
    }

    private Take take(Ending ending, Map<String, String> said) {
        Wishes wishes = Wishes.of(ending, said);
        Optional<Shelf> folder = folder();
        String text = asked.text();
        if (folder.isPresent()) {
            Shelf.Listing listing = folder.get().look();
            return Take.of(title(text), listing.patterns(), wishes, listing.words().lexicon());
        }
        Lexicon own = asked.words();
        if (text.equals(SHELF)) {
            return Take.of(MINE, asked.shelf().look().patterns(), wishes, own);
        }
        if (text.equals(DEMO)) {
            return Take.of(
                    MARKET, PatternDocument.among(DemoShelf.documents()), wishes, Lexicon.EMPTY);
        }
        return Take.of(asked.pattern(), ending.many() ? others() : List.of(), wishes, own);
    }

    /** What a sheet may name to go on with; a shelf that cannot be read has been told of. */
    private List<PatternDocument> others() {
        try {
            return asked.shelf().look().patterns();
        } catch (ShelfError unreadable) {
            return List.of();
        }
    }

    private Optional<Shelf> folder() {
        try {
            Path path = Path.of(asked.text());
            return Files.isDirectory(path) ? Optional.of(Shelf.at(path)) : Optional.empty();
        } catch (InvalidPathException phrase) {
            return Optional.empty();
        }
    }

    static String title(String folder) {
        Path name = Path.of(folder).toAbsolutePath().normalize().getFileName();
        return name == null ? "Shelf" : name.toString();
    }
}
