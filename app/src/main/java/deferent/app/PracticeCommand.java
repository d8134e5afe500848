package deferent.app;

import deferent.film.practice.DemoPractice;
import deferent.film.practice.LoggedPractice;
import deferent.film.practice.OffKind;
import deferent.film.practice.OverWeeks;
import deferent.film.practice.PracticeTree;
import deferent.film.practice.PractisedFilm;
import deferent.film.practice.WeeksPicture;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.page.Palette;
import deferent.page.sheet.CalendarSheet;
import deferent.page.sheet.Edition;
import deferent.record.Log;
import deferent.record.NotListed;
import deferent.record.PatternDocument;
import deferent.record.Practice;
import deferent.record.PracticeLog;
import deferent.record.PrettyJson;
import deferent.record.landing.Landing;
import deferent.record.log.DemoLog;
import deferent.record.log.LogTree;
import deferent.tell.LoggedPattern;
import deferent.tell.TellLog;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ObjectNode;

@Command(
        name = "practice",
        mixinStandardHelpOptions = true,
        description = {
            "What you practised, as the log has it and as \"deferent film ... --keep\" kept it: the"
                    + " weeks and each pattern, or how much closer one came.",
            "  deferent practice",
            "  deferent practice --out calendar.pdf",
            "  deferent practice static spin vs triquetra --out weeks.svg"
        },
        subcommands = {LogCommand.class, PracticeCommand.Demo.class})
final class PracticeCommand implements Runnable {
    private static final String ENDINGS = "give one that ends in .svg, .png, .csv or .json";

    private static final int LATEST = 8; // weeks

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
                            + " comparison; where nothing is said, .svg, .png or .pdf the calendar."
                            + " May be repeated.")
    private List<Path> files = List.of();

    @Mixin private AsOption as;

    @Option(names = "--why", description = "Say below each sentence what it is from.")
    private boolean why;

    @Mixin private TodayOption today;

    @Mixin private ShelfOption shelf;

    @Override
    public void run() {
        try (AsOption sent = as) {
            answer(sent, sent.places(files, "--out"));
        }
    }

    private void answer(AsOption sent, List<Path> files) {
        files.forEach(words.isEmpty() ? PageOut::mayBe : PracticeCommand::ending);
        PracticeLog log = PracticeLog.of(shelf.shelf());
        log.sweep().ifPresent(shelf::tell);
        PracticeLog.Listing listing = log.look();
        Log.of(shelf.shelf()).sweep().ifPresent(shelf::tell);
        LoggedPractice logged =
                LoggedPractice.of(shelf.shelf(), shelf.words(), today.day(), LATEST);
        if (words.isEmpty()) {
            if (!files.isEmpty() && logged.entries().isEmpty()) {
                throw new Refusal(
                        "has nothing to draw",
                        "--out",
                        "say a phrase, or write something down first");
            }
            for (Path file : files) {
                PageOut.write(file, calendar(listing, logged));
                sent.send(file);
            }
            list(listing, logged);
            return;
        }
        String text = String.join(" ", words);
        Optional<PracticeLog.Entry> named = listing.find(text);
        String pattern = named.map(e -> e.practice().pattern()).orElseGet(() -> pattern(text));
        Optional<LoggedPattern> said = logged.of(pattern);
        if (said.isPresent() && files.isEmpty() && listing.of(pattern).isEmpty()) {
            sayLogged(said.get());
            return;
        }
        OverWeeks progress = progress(listing, pattern);
        for (Path file : files) {
            Landing.write(file, bytes(file, progress));
            sent.send(file);
        }
        say(progress, said);
        if (!Manners.of(spec).json()) {
            others(listing);
        }
    }

    private static CalendarSheet calendar(PracticeLog.Listing films, LoggedPractice logged) {
        return new CalendarSheet(
                logged.weeks(),
                logged.rest(),
                logged.patterns().stream()
                        .map(
                                pattern ->
                                        new CalendarSheet.Practised(
                                                pattern, LoggedPractice.onFilm(pattern, films)))
                        .toList(),
                Edition.USUAL);
    }

    private static OverWeeks progress(PracticeLog.Listing listing, String pattern) {
        return OverWeeks.of(pattern, listing)
                .orElseThrow(
                        () -> {
                            List<String> kept =
                                    listing.entries().stream()
                                            .map(e -> e.practice().pattern())
                                            .distinct()
                                            .toList();
                            return new NotFound(
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
        String ending = PageOut.ending(file);
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

    private void list(PracticeLog.Listing listing, LoggedPractice logged) {
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            ObjectNode tree = PracticeTree.of(listing);
            tree.set("log", logged.tree());
            out.print(PrettyJson.text(tree));
            return;
        }
        int width = Paragraphs.width();
        if (listing.entries().isEmpty() && logged.entries().isEmpty()) {
            String how =
                    "\"deferent practice log PHRASE --minutes 12\" writes one down, \"deferent film"
                            + " CLIP PHRASE --keep\" keeps one from a film, and \"deferent practice"
                            + " demo\" puts five invented weeks there.";
            out.println("No practice is kept beside the shelf " + shelf.path() + ".");
            Paragraphs.wrapped("", how, width).forEach(out::println);
        }
        if (!logged.entries().isEmpty()) {
            listLogged(listing, logged);
        }
        if (!logged.entries().isEmpty() && !listing.entries().isEmpty()) {
            out.println();
            out.println("From films:");
        }
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
        LogCommand.others(logged.others(), out);
        others(listing);
    }

    private void listLogged(PracticeLog.Listing films, LoggedPractice logged) {
        PrintWriter out = spec.commandLine().getOut();
        CalendarText.lines(logged.weeks()).forEach(out::println);
        logged.ahead().ifPresent(out::println);
        logged.rest().ifPresent(told -> say(told, true));
        for (LoggedPattern pattern : logged.patterns()) {
            out.println();
            out.println(pattern.pattern());
            say(TellLog.pattern(pattern), false);
            LoggedPractice.onFilm(pattern, films).ifPresent(told -> say(told, false));
        }
    }

    private void sayLogged(LoggedPattern logged) {
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(PrettyJson.text(LogTree.of(logged)));
            return;
        }
        out.println(logged.pattern());
        say(TellLog.pattern(logged), false);
    }

    private void say(Told one, boolean first) {
        PrintWriter out = spec.commandLine().getOut();
        int width = Paragraphs.width();
        if (first) {
            out.println();
        }
        String mark = one.tone() == Told.Tone.WARN ? "! " : "  ";
        Paragraphs.wrapped(mark, one.text(), width).forEach(out::println);
        if (why) {
            Paragraphs.wrapped("      why: ", one.why(), width).forEach(out::println);
        }
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

    private void say(OverWeeks progress, Optional<LoggedPattern> logged) {
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            ObjectNode tree = PracticeTree.of(progress);
            logged.ifPresent(l -> tree.set("logged", LogTree.of(l)));
            out.print(PrettyJson.text(tree));
            return;
        }
        int times = progress.entries().size();
        out.println(progress.pattern() + ", kept " + (times == 1 ? "once" : times + " times"));
        out.println();
        logged.ifPresent(l -> say(TellLog.pattern(l), false));
        progress.told().forEach(told -> say(told, false));
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
                    "Keeps five invented weeks of practice beside the shelf, films and log: rendered,"
                            + " nobody was filmed.")
    static final class Demo implements Runnable {
        @Spec CommandSpec spec;

        @Mixin ShelfOption shelf;

        @Override
        public void run() {
            Putting put = new Putting(Manners.of(spec));
            PracticeLog.of(shelf.shelf())
                    .addAll(DemoPractice.records())
                    .forEach(entry -> put.practice(entry.id()));
            put.log("Demo log", Log.of(shelf.shelf()).add(DemoLog.entries()));
            put.tell();
        }
    }
}
