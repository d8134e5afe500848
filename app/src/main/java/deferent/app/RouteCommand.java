package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import deferent.record.RouteJson;
import deferent.search.crossing.FlowingSet;
import deferent.search.crossing.Route;
import deferent.search.crossing.ShelfCrossing;
import deferent.search.crossing.ShelfMap;
import deferent.search.crossing.ShelfTable;
import deferent.take.Endings;
import deferent.take.Take;
import deferent.take.Wishes;
import deferent.tell.TellCrossing;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "route",
        mixinStandardHelpOptions = true,
        description = {
            "Finds the gentlest route from one pattern to another through those on the shelf, or a set"
                    + " that flows, from a pattern and back to it, with none twice:",
            "  deferent route \"Long arms\" \"isolation vs isolation\"",
            "  deferent route \"Long arms\" --set 8"
        })
final class RouteCommand implements Callable<Integer> {
    private static final int BUDGET = 5_000_000;

    @Spec private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "FROM",
            description = "Where to start: a phrase in quotes, a file, or a shelf name.")
    private String from = "";

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "TO",
            description = "Where to go, likewise; not with --set.")
    private @Nullable String to;

    @Mixin private PairOption pair;

    @Mixin private CrossingOption crossing;

    @Option(
            names = "--set",
            paramLabel = "N",
            description = "Instead of a route there, a set of N patterns that comes back to FROM.")
    private @Nullable Integer set;

    @Option(
            names = "--hard",
            paramLabel = "NAME=N",
            description =
                    "How hard a pattern is, where entering it should cost as much as N weights of"
                            + " extra acceleration; 0 unless you say. May be repeated.")
    private Map<String, Double> hard = new LinkedHashMap<>();

    @Option(
            names = "--roughest",
            paramLabel = "WEIGHTS",
            description = "Take no crossing that is rougher than this, such as 0.5.")
    private @Nullable Double roughest;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Also print the patterns on the way as a booklet: a name that ends in .pdf.")
    private @Nullable Path file;

    @Option(names = "--progress", description = "Tell how far it is, even where nobody watches.")
    private boolean progress;

    @Option(names = "--json", description = "Answer in JSON, for other programs.")
    private boolean json;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        if (roughest != null) {
            Refusal.within(roughest, 0, 1e6, "--roughest", "weights");
        }
        Optional<Wishes> booklet =
                Optional.ofNullable(file).map(path -> Wishes.of(Endings.of(path), Map.of()));
        List<PatternDocument> patterns = new ArrayList<>(pair.shelf().look().patterns());
        int start = place(patterns, pair.pattern(from));
        Optional<Integer> end = end(patterns);
        double[] difficulty = difficulty(patterns);
        ShelfTable table =
                new ShelfTable(
                        patterns.stream().map(PatternDocument::pairing).toList(),
                        crossing.request());
        Progress line = new Progress(spec.commandLine().getErr(), progress);
        PrintWriter out = spec.commandLine().getOut();
        try (Stopping stop = new Stopping()) {
            boolean done = table.run(at -> line.show(TellCrossing.progress(at)), stop);
            line.clear();
            ShelfMap map = ShelfMap.of(table).withDifficulty(difficulty);
            map = roughest == null ? map : map.withRoughest(roughest);
            RouteJson.Found found =
                    end.isPresent()
                            ? RouteJson.Found.route(patterns, table, map, start, end.get(), done)
                            : set(patterns, table, map, start, stop, done);
            if (json) {
                out.print(RouteJson.write(found));
            } else {
                tell(found);
            }
            out.flush();
            if (booklet.isPresent() && found.route().isPresent()) {
                print(found, found.route().get(), booklet.get(), line, stop);
            }
        }
        return 0;
    }

    private void print(
            RouteJson.Found found, Route route, Wishes wishes, Progress line, Stopping stop) {
        Path target = Objects.requireNonNull(file, "asked for only where a file is named");
        List<PatternDocument> gone = new ArrayList<>();
        gone.add(found.patterns().get(route.start()));
        route.crossings().forEach(crossing -> gone.add(found.patterns().get(crossing.to())));
        Take take =
                Take.of(
                                found.name(route.start())
                                        + " to "
                                        + gone.get(gone.size() - 1).name(),
                                gone,
                                wishes,
                                pair.words())
                        .asRoute();
        Drawing.write(take, target, spec.commandLine().getOut(), line, stop);
    }

    private RouteJson.Found set(
            List<PatternDocument> patterns,
            ShelfTable table,
            ShelfMap map,
            int start,
            Stopping stop,
            boolean done) {
        int length = set == null ? 0 : set;
        FlowingSet flowing = map.set(start, length, known -> true, BUDGET, stop);
        return RouteJson.Found.set(patterns, table, map, length, flowing, done);
    }

    /** Where a pattern stands among them; one that is not there is put behind. */
    private static int place(List<PatternDocument> patterns, PatternDocument wanted) {
        for (int i = 0; i < patterns.size(); i++) {
            if (patterns.get(i).pairing().equals(wanted.pairing())) {
                return i;
            }
        }
        patterns.add(wanted);
        return patterns.size() - 1;
    }

    private Optional<Integer> end(List<PatternDocument> patterns) {
        if (set != null) {
            Refusal.within(set, 2, 64, "--set", "patterns");
            if (to != null) {
                throw new Refusal(
                        "is given beside --set", "\"" + to + "\"", "a set comes back to its start");
            }
            return Optional.empty();
        }
        if (to == null) {
            throw new Refusal(
                    "says no place to go",
                    "route",
                    "give a second pattern, or --set with a number");
        }
        return Optional.of(place(patterns, pair.pattern(to)));
    }

    private double[] difficulty(List<PatternDocument> patterns) {
        double[] each = new double[patterns.size()];
        hard.forEach(
                (name, weights) -> {
                    boolean there = false;
                    for (int i = 0; i < each.length; i++) {
                        if (patterns.get(i).name().equalsIgnoreCase(name)) {
                            each[i] = weights;
                            there = true;
                        }
                    }
                    if (!there) {
                        throw new Refusal(
                                "is not among the patterns",
                                "--hard \"" + name + "\"",
                                "give a pattern's name as shelf list shows it");
                    }
                });
        return each;
    }

    private void tell(RouteJson.Found found) {
        PrintWriter out = spec.commandLine().getOut();
        TextOut say = new TextOut(out, why);
        say.told("", found.told());
        if (!found.done()) {
            say.told("", TellCrossing.stopped());
        }
        found.route()
                .filter(route -> !route.crossings().isEmpty())
                .ifPresent(route -> steps(found, route));
    }

    private void steps(RouteJson.Found found, Route route) {
        PrintWriter out = spec.commandLine().getOut();
        TextOut say = new TextOut(out, why);
        out.println();
        int number = 1;
        for (ShelfCrossing crossing : route.crossings()) {
            String first = String.format("%3d. ", number++);
            say.line(first, found.name(crossing.from()) + " into " + found.name(crossing.to()));
            say.told("     ", TellCrossing.of(found.table().crossing(crossing)));
        }
        out.println();
        Told played = TellCrossing.of(found.played(route));
        say.told("All together: ", played);
    }
}
