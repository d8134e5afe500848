package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import deferent.record.TransitionsJson;
import deferent.search.transition.Grade;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.search.transition.TransitionRequest;
import deferent.search.transition.Transitions;
import deferent.take.Endings;
import deferent.take.ShownTransition;
import deferent.take.TransitionTake;
import deferent.take.Wish;
import deferent.take.Wishes;
import deferent.tell.TellTransition;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
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
        name = "transitions",
        mixinStandardHelpOptions = true,
        description = {
            "Finds the short passages from one pattern to another that hands and cords do, best first.",
            "  deferent transitions \"extension vs extension\" \"extension vs static spin\" --tether 40cm",
            "  deferent transitions \"Long arms\" \"Short one\" --out over.mp4"
        })
final class TransitionsCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "FROM",
            description = "The pattern that is left: a phrase in quotes, a file, or a shelf name.")
    private String from = "";

    @Parameters(index = "1", paramLabel = "TO", description = "The one that is joined, likewise.")
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
            names = "--limit",
            paramLabel = "N",
            defaultValue = "6",
            description = "How many to tell; 6 unless you say.")
    private int limit = 6;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Also write one of them, by the ending of the name: a clip that plays it once, or"
                            + " a picture (.png, .svg).")
    private @Nullable Path file;

    @Option(
            names = "--which",
            paramLabel = "N",
            description = "With --out: the Nth of them; the first unless you say.")
    private int which = 1;

    @Mixin private AsOption as;

    @Mixin private ProgressOption progress;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    /** Adds an option for what may be wished of its file. */
    static void offer(CommandSpec transitions) {
        for (Wish wish : TransitionTake.WISHES) {
            transitions.addOption(DrawCommand.option(wish, "With --out: " + wish.means()));
        }
    }

    @Override
    public Integer call() {
        Refusal.within(limit, 1, 32, "--limit", "transitions");
        try (Stopping stop = new Stopping();
                AsOption sent = as) {
            return answer(sent, stop);
        }
    }

    private int answer(AsOption sent, Stopping stop) {
        @Nullable Path place = file == null ? null : sent.place(file, "--out");
        Optional<Wishes> wishes =
                Optional.ofNullable(place)
                        .map(path -> Wishes.of(Endings.of(path), DrawCommand.said(spec)));
        PatternDocument one = pair.pattern(from);
        PatternDocument other = pair.pattern(to);
        TransitionRequest request =
                new TransitionRequest(hardest, performer.of(one.performer()), limit);
        TransitionFinder finder = new TransitionFinder(request);
        Transitions found = finder.between(one.pairing(), other.pairing());
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(TransitionsJson.write(one, other, found));
            out.flush();
        } else {
            tell(out, one, other, found);
        }
        if (place != null && wishes.isPresent()) {
            TransitionTake take =
                    new TransitionTake(
                            ShownTransition.of(finder, chosen(found)),
                            one.name(),
                            other.name(),
                            finder,
                            one.kit(),
                            wishes.get());
            Drawing.write(take::write, place, sent, Manners.of(spec), progress.line(), stop);
        }
        return found.list().isEmpty() ? Exit.NOT_FOUND.code() : Exit.FOUND.code();
    }

    private Transition chosen(Transitions found) {
        if (found.list().isEmpty()) {
            throw new NotFound(
                    "nothing is written: " + TellTransition.because(found.why()),
                    "--out " + file,
                    "give two patterns that one of these leads between");
        }
        Refusal.within(which, 1, found.list().size(), "--which", "transitions");
        return found.list().get(which - 1);
    }

    private void tell(
            PrintWriter out, PatternDocument one, PatternDocument other, Transitions found) {
        TextOut say = new TextOut(out, why);
        say.line("From ", one.name());
        say.line("to   ", other.name());
        out.println();
        List<Told> told = TellTransition.of(found);
        say.told("", told.get(0));
        for (int i = 1; i < told.size(); i++) {
            say.told("  " + i + ". ", told.get(i));
        }
    }
}
