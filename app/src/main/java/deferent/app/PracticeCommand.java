package deferent.app;

import deferent.film.practice.DemoPractice;
import deferent.film.practice.OffKind;
import deferent.film.practice.OverWeeks;
import deferent.film.practice.PracticeTree;
import deferent.film.practice.PractisedFilm;
import deferent.film.practice.WeeksPicture;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.page.Palette;
import deferent.record.NotListed;
import deferent.record.PatternDocument;
import deferent.record.Practice;
import deferent.record.PracticeLog;
import deferent.record.PrettyJson;
import deferent.record.landing.Landing;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "practice",
        mixinStandardHelpOptions = true,
        description = {
            "What you practised, as kept by \"deferent film ... --keep\": lists it, or says how much"
                    + " closer a pattern came over the weeks:",
            "  deferent practice",
            "  deferent practice static spin vs triquetra --out weeks.svg"
        },
        subcommands = PracticeCommand.Demo.class)
final class PracticeCommand implements Runnable {
    private static final String ENDINGS = "give one that ends in .svg, .png, .csv or .json";

    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..*",
            paramLabel = "PHRASE|NAME",
            description = "What was practised, or the name of one time; unsaid, all is listed.")
    private List<String> words = List.of();

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Write it: .svg or .png the picture over the weeks, .csv every number, .json the"
                            + " comparison. May be repeated.")
    private List<Path> files = List.of();

    @Option(names = "--json", description = "Answer in JSON, for other programs.")
    private boolean json;

    @Option(names = "--why", description = "Say below each sentence what it is from.")
    private boolean why;

    @Mixin private ShelfOption shelf;

    @Override
    public void run() {
        files.forEach(PracticeCommand::ending);
        PracticeLog log = PracticeLog.of(shelf.shelf());
        log.sweep().ifPresent(shelf::tell);
        PracticeLog.Listing listing = log.look();
        if (words.isEmpty()) {
            if (!files.isEmpty()) {
                throw new Refusal("has nothing to draw", "--out", "say a phrase or a name first");
            }
            list(listing);
            return;
        }
        OverWeeks progress = progress(listing, String.join(" ", words));
        for (Path file : files) {
            Landing.write(file, bytes(file, progress));
        }
        say(progress);
        if (!json) {
            others(listing);
        }
    }

    private OverWeeks progress(PracticeLog.Listing listing, String text) {
        Optional<PracticeLog.Entry> named = listing.find(text);
        String pattern = named.map(e -> e.practice().pattern()).orElseGet(() -> pattern(text));
        return OverWeeks.of(pattern, listing)
                .orElseThrow(
                        () -> {
                            List<String> kept =
                                    listing.entries().stream()
                                            .map(e -> e.practice().pattern())
                                            .distinct()
                                            .toList();
                            return new Refusal(
                                    "was never kept",
                                    "practice of " + pattern,
                                    kept.isEmpty()
                                            ? "nothing is kept yet: deferent film CLIP PHRASE --keep"
                                            : "kept is " + String.join("; ", kept));
                        });
    }

    private String pattern(String text) {
        try {
            return PractisedFilm.pattern(
                    Phrase.parse(text, shelf.words()).pairing(), Optional.empty());
        } catch (PhraseError noPhrase) {
            PatternDocument pattern = new Named(text, shelf, Optional.empty()).pattern();
            return PractisedFilm.pattern(pattern.pairing(), Optional.of(pattern.name()));
        }
    }

    private static String ending(Path file) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        if (!List.of("svg", "png", "csv", "json").contains(ending)) {
            throw new Refusal("has no ending that is known here", "--out " + file, ENDINGS);
        }
        return ending;
    }

    private static byte[] bytes(Path file, OverWeeks progress) {
        Palette.Theme light = Palette.Theme.LIGHT;
        return switch (ending(file)) {
            case "svg" -> text(WeeksPicture.svg(progress, WeeksPicture.USUAL, light));
            case "png" -> WeeksPicture.png(progress, WeeksPicture.USUAL, light);
            case "csv" -> text(progress.csv());
            default -> text(PrettyJson.text(PracticeTree.of(progress)));
        };
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private void list(PracticeLog.Listing listing) {
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(PrettyJson.text(PracticeTree.of(listing)));
            return;
        }
        if (listing.entries().isEmpty()) {
            out.println("No practice is kept beside the shelf " + shelf.path() + ".");
            out.println(
                    "\"deferent film CLIP PHRASE --keep\" keeps one; \"deferent practice demo\" puts"
                            + " five invented weeks there.");
        }
        int width = Paragraphs.width();
        for (PracticeLog.Entry entry : listing.entries()) {
            Practice practice = entry.practice();
            String called =
                    practice.name().equals(practice.pattern())
                            ? practice.pattern()
                            : practice.name() + ": " + practice.pattern();
            String worst =
                    practice.findings().isEmpty()
                            ? "Nothing is off."
                            : practice.findings().get(0).said();
            Paragraphs.wrapped(OverWeeks.day(practice) + "  ", called + ". " + worst, width)
                    .forEach(out::println);
        }
        others(listing);
    }

    private void others(PracticeLog.Listing listing) {
        PrintWriter out = spec.commandLine().getOut();
        if (!listing.others().isEmpty()) {
            out.println("Cannot be read, and left as it is:");
        }
        for (NotListed other : listing.others()) {
            Paragraphs.wrapped("  " + other.file() + ": ", other.why(), Paragraphs.width())
                    .forEach(out::println);
        }
    }

    private void say(OverWeeks progress) {
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(PrettyJson.text(PracticeTree.of(progress)));
            return;
        }
        int width = Paragraphs.width();
        int times = progress.entries().size();
        out.println(progress.pattern() + ", kept " + (times == 1 ? "once" : times + " times"));
        out.println();
        for (Told one : progress.told()) {
            String mark = one.tone() == Told.Tone.WARN ? "! " : "  ";
            Paragraphs.wrapped(mark, one.text(), width).forEach(out::println);
            if (why) {
                Paragraphs.wrapped("      why: ", one.why(), width).forEach(out::println);
            }
        }
        out.println();
        for (OffKind kind : progress.kinds().stream().filter(OffKind::worthSaying).toList()) {
            out.println("  " + kind.noun());
            for (OffKind.Value value : kind.values()) {
                out.println("    " + OverWeeks.day(value.practice()) + "  " + kind.table(value));
            }
        }
    }

    @Command(
            name = "demo",
            mixinStandardHelpOptions = true,
            description =
                    "Keeps five invented weeks of practice beside the shelf: rendered, nobody was"
                            + " filmed.")
    static final class Demo implements Runnable {
        @Spec CommandSpec spec;

        @Mixin ShelfOption shelf;

        @Override
        public void run() {
            PracticeLog.of(shelf.shelf())
                    .addAll(DemoPractice.records())
                    .forEach(entry -> spec.commandLine().getOut().println("Kept: " + entry.id()));
        }
    }
}
