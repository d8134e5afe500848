package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.page.sheet.Edition;
import deferent.page.sheet.PageSize;
import deferent.page.sheet.PlanSheet;
import deferent.reading.worked.Worked;
import deferent.record.DrillDocuments;
import deferent.record.Kept;
import deferent.record.LearnJson;
import deferent.record.Log;
import deferent.record.PatternDocument;
import deferent.record.log.LogOfPath;
import deferent.search.path.Drill;
import deferent.search.path.Path;
import deferent.search.path.PathSearch;
import deferent.search.path.Plan;
import deferent.search.path.PlannedDay;
import deferent.tell.TellPath;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "learn",
        mixinStandardHelpOptions = true,
        description = {
            "Takes a pairing apart into drills, puts them in an order to learn in, and lays that out over"
                    + " days of so many minutes.",
            "  deferent learn static spin vs triquetra --by 2026-12-18 --minutes 20"
        })
final class LearnCommand implements Callable<Integer> {
    private static final DateTimeFormatter WHOLE =
            DateTimeFormatter.ofPattern("EEEE, d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT =
            DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(
            names = "--by",
            paramLabel = "DATE",
            description = "The day on which it is wanted, such as 2026-12-18.")
    private @Nullable LocalDate by;

    @Option(
            names = "--from",
            paramLabel = "DATE",
            description = "The first day of practice; unsaid, today.")
    private @Nullable LocalDate from;

    @Option(
            names = "--minutes",
            paramLabel = "MINUTES",
            description = "Of practice a day, 5 to 240; unsaid, ${DEFAULT-VALUE}.")
    private int minutes = 20;

    @Option(
            names = "--days",
            paramLabel = "COUNT",
            description = "Days of the plan that are told, 1 to 366; unsaid, ${DEFAULT-VALUE}.")
    private int days = 7;

    @Option(names = "--why", description = "Say below each drill how hard it is, and why.")
    private boolean why;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Write it on one page, to be pinned up and ticked: .pdf, .svg or .png."
                            + " May be repeated.")
    private List<java.nio.file.Path> files = List.of();

    @Mixin private AsOption as;

    @Option(
            names = "--paper",
            paramLabel = "PAPER",
            description = "Of the page: ${COMPLETION-CANDIDATES}; unsaid, A4.")
    private PageSize paper = PageSize.A4;

    @Option(
            names = "--keep",
            description = "Keep each drill on the shelf, to be played and printed as any pattern.")
    private boolean keep;

    @Override
    public Integer call() {
        try (AsOption sent = as) {
            return answer(sent);
        }
    }

    private int answer(AsOption sent) {
        List<java.nio.file.Path> places = sent.places(files, "--out");
        places.forEach(PageOut::mayBe);
        if (days < 1 || days > 366) {
            throw new Refusal("is " + days, "--days", "give 1 to 366");
        }
        PatternDocument pattern = asked.pattern();
        Lexicon own = asked.words();
        LocalDate first = from == null ? LocalDate.now(ZoneId.systemDefault()) : from;
        long start = first.toEpochDay();
        Path path =
                Worked.orRefusal(
                        "the numbers of what it is made of",
                        () ->
                                PathSearch.of(
                                        pattern.pairing(),
                                        pattern.performer(),
                                        pattern.kit(),
                                        own));
        Plan plan =
                Plan.of(
                        path,
                        LogOfPath.of(Log.of(asked.shelf()).look().entries(), pattern.name(), path),
                        own,
                        start,
                        by == null ? start : by.toEpochDay(),
                        minutes);
        TellPath words = new TellPath(path, pattern.performer(), pattern.kit(), own);
        Told comes = TellPath.plan(plan, by != null, day -> date(day, WHOLE));
        for (java.nio.file.Path file : places) {
            PageOut.write(
                    file,
                    new PlanSheet(
                            pattern, plan, words, comes, Edition.USUAL.with(paper).with(own)));
            sent.send(file);
        }
        List<Kept> kept = keep ? kept(pattern, path, own) : List.of();
        if (Manners.of(spec).json()) {
            spec.commandLine()
                    .getOut()
                    .print(LearnJson.write(pattern, plan, words, comes, by != null));
        } else {
            tell(pattern.name(), plan, words, comes);
        }
        kept.forEach(this::tell);
        return Exit.FOUND.code();
    }

    /** The pattern itself is left as it is, on the shelf or off it. */
    private List<Kept> kept(PatternDocument pattern, Path path, Lexicon own) {
        List<PatternDocument> drills = DrillDocuments.of(pattern, path, own);
        return asked.shelf().putAll(drills.subList(0, drills.size() - 1));
    }

    private void tell(Kept kept) {
        Manners.of(spec).beside("On the shelf: " + kept.id() + ", " + kept.document().name());
    }

    private void tell(String name, Plan plan, TellPath words, Told comes) {
        PrintWriter out = spec.commandLine().getOut();
        int width = Paragraphs.width();
        out.println(name);
        Paragraphs.wrapped("", comes.text(), width).forEach(out::println);
        out.println();
        List<Drill> drills = plan.path().drills();
        for (int i = 0; i < drills.size(); i++) {
            Drill drill = drills.get(i);
            Told told = words.drill(i);
            out.println(
                    String.format(
                            Locale.ROOT,
                            "%2d  %s, %d minutes",
                            i + 1,
                            TellPath.name(drill),
                            drill.minutes()));
            Paragraphs.wrapped("    ", told.text(), width).forEach(out::println);
            drill.phrase()
                    .ifPresent(
                            phrase ->
                                    Paragraphs.wrapped("    phrase: ", phrase, width)
                                            .forEach(out::println));
            if (why) {
                Paragraphs.wrapped("    why: ", told.why(), width).forEach(out::println);
            }
        }
        if (why && !words.leftOut().isEmpty()) {
            out.println();
            out.println("Left out:");
            for (String left : words.leftOut()) {
                Paragraphs.wrapped("  ", left, width).forEach(out::println);
            }
        }
        out.println();
        plan.days().stream()
                .limit(days)
                .flatMap(day -> day(day, words, width).stream())
                .forEach(out::println);
        out.println();
        Paragraphs.wrapped("", TellPath.MODEL, width).forEach(out::println);
    }

    private static List<String> day(PlannedDay day, TellPath words, int width) {
        String what =
                day.sittings().isEmpty()
                        ? "rest"
                        : day.sittings().stream()
                                .map(words::sitting)
                                .collect(Collectors.joining("; "));
        return Paragraphs.wrapped(
                String.format(Locale.ROOT, "%-12s", date(day.day(), SHORT)), what, width);
    }

    private static String date(long day, DateTimeFormatter how) {
        return LocalDate.ofEpochDay(day).format(how);
    }
}
