package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Lexicon;
import deferent.reading.worked.Worked;
import deferent.record.LearnJson;
import deferent.record.Log;
import deferent.record.PatternDocument;
import deferent.search.path.Drill;
import deferent.search.path.Path;
import deferent.search.path.PathSearch;
import deferent.search.path.Plan;
import deferent.search.path.PlannedDay;
import deferent.search.path.Practised;
import deferent.tell.TellPath;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
                    + " days of so many minutes:",
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

    @Option(names = "--json", description = "Answer in JSON, for other programs; all days.")
    private boolean json;

    @Option(names = "--why", description = "Say below each drill how hard it is, and why.")
    private boolean why;

    @Override
    public Integer call() {
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
                        practised(pattern, path),
                        own,
                        start,
                        by == null ? start : by.toEpochDay(),
                        minutes);
        TellPath words = new TellPath(path, pattern.performer(), pattern.kit(), own);
        Told comes = TellPath.plan(plan, by != null, day -> date(day, WHOLE));
        if (json) {
            spec.commandLine()
                    .getOut()
                    .print(LearnJson.write(pattern, plan, words, comes, by != null));
        } else {
            tell(pattern.name(), plan, words, comes);
        }
        return 0;
    }

    /** What the shelf's log has, as the path takes it; another pattern's is passed over there. */
    private List<Practised> practised(PatternDocument pattern, Path path) {
        return Log.of(asked.shelf()).look().entries().stream()
                .map(
                        entry ->
                                new Practised(
                                        entry.date().toEpochDay(),
                                        entry.pattern().equals(pattern.name())
                                                ? path.whole().phrase().orElse(entry.pattern())
                                                : entry.pattern(),
                                        entry.part().flatMap(LearnCommand::hand),
                                        entry.minutes(),
                                        entry.tempo(),
                                        entry.went()))
                .toList();
    }

    private static Optional<Side> hand(String part) {
        return Stream.of(Side.values())
                .filter(side -> part.equalsIgnoreCase(side.word() + " hand"))
                .findFirst();
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
