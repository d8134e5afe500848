package deferent.app;

import deferent.record.PatternDocument;
import deferent.record.RouteJson;
import deferent.record.RouteReading;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.search.route.RouteFound;
import deferent.search.route.RouteSearch;
import deferent.search.route.ShelfTable;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import deferent.take.Endings;
import deferent.take.Take;
import deferent.take.Wishes;
import deferent.tell.TellRoute;
import deferent.tell.TellSet;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
            "Finds the gentlest route from one pattern to another through those on the shelf, and says"
                    + " how each passes into the next.",
            "  deferent route \"Ring under the eaves\" \"A ring too small\"",
            "An order of many patterns is a set: deferent set --suggest."
        })
final class RouteCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "FROM",
            description = "Where to start: a phrase in quotes, a file, or a shelf name.")
    private String from = "";

    @Parameters(index = "1", paramLabel = "TO", description = "Where to go, likewise.")
    private String to = "";

    @Mixin private PairOption pair;

    @Mixin private PerformerOption performer;

    @Option(
            names = "--hardest",
            paramLabel = "GRADE",
            description =
                    "What counts as possible at most: easy, practised or hard; practised unless you"
                            + " say.")
    private Grade hardest = Grade.USUAL;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Also print the patterns on the way as a booklet: a name that ends in .pdf.")
    private @Nullable Path file;

    @Mixin private AsOption as;

    @Mixin private ProgressOption progress;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        try (Stopping stop = new Stopping();
                AsOption sent = as) {
            return answer(sent, stop);
        }
    }

    private int answer(AsOption sent, Stopping stop) {
        @Nullable Path target = file == null ? null : sent.place(file, "--out");
        Optional<Wishes> booklet =
                Optional.ofNullable(target).map(path -> Wishes.of(Endings.of(path), Map.of()));
        List<SetPlaces.Place> shelf = new ArrayList<>(SetPlaces.all(pair.shelf().look()));
        PatternDocument first = pair.pattern(from);
        int start = place(shelf, first);
        int end = place(shelf, pair.pattern(to));
        PairBook book = new PairBook(hardest, performer.of(first.performer()), first.kit());
        ShelfTable table =
                new ShelfTable(shelf.stream().map(p -> document(p).pairing()).toList(), book);
        Progress line = progress.line();
        PrintWriter out = spec.commandLine().getOut();
        RouteFound found =
                new RouteSearch(table, start, end)
                        .run(at -> line.show(TellRoute.progress(at)), stop);
        RouteReading reading = RouteReading.of(shelf, start, end, found, book, () -> false);
        line.clear();
        if (Manners.of(spec).json()) {
            out.print(RouteJson.write(reading, hardest));
        } else {
            tell(reading);
        }
        out.flush();
        if (target != null && booklet.isPresent() && reading.set().isPresent()) {
            print(reading.set().get(), booklet.get(), target, line, stop);
        }
        return reading.set().isPresent() ? Exit.FOUND.code() : Exit.NOT_FOUND.code();
    }

    private void print(SetReading set, Wishes wishes, Path place, Progress line, Stopping stop) {
        Take take =
                Take.of(
                                set.name(),
                                set.places().stream().map(RouteCommand::document).toList(),
                                wishes,
                                pair.words())
                        .asRoute();
        Drawing.write(take, place, as, Manners.of(spec), line, stop);
    }

    private static PatternDocument document(SetPlaces.Place place) {
        return place.pattern().orElseThrow();
    }

    /** Where a pattern stands among them; one that is not there is put behind. */
    private static int place(List<SetPlaces.Place> shelf, PatternDocument wanted) {
        for (int i = 0; i < shelf.size(); i++) {
            if (document(shelf.get(i)).pairing().equals(wanted.pairing())) {
                return i;
            }
        }
        shelf.add(SetPlaces.Place.of(wanted));
        return shelf.size() - 1;
    }

    private void tell(RouteReading reading) {
        PrintWriter out = spec.commandLine().getOut();
        TextOut say = new TextOut(out, why);
        reading.told().forEach(told -> say.told("", told));
        reading.set()
                .filter(set -> !set.plan().joints().isEmpty())
                .ifPresent(set -> steps(set, say, out));
    }

    private static void steps(SetReading set, TextOut say, PrintWriter out) {
        out.println();
        List<String> names = set.names();
        for (int i = 0; i < set.plan().joints().size(); i++) {
            say.line(String.format("%3d. ", i + 1), names.get(i) + " into " + names.get(i + 1));
            say.told(
                    "     ",
                    TellSet.joint(set.plan().joints().get(i), names.get(i), names.get(i + 1)));
        }
        out.println();
        Told whole = TellSet.whole(set.plan(), names);
        say.told("All together: ", whole);
    }
}
