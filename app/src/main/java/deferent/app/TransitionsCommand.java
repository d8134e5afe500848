package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import deferent.record.TransitionsJson;
import deferent.search.transition.Grade;
import deferent.search.transition.TransitionRequest;
import deferent.search.transition.Transitions;
import deferent.tell.TellTransition;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
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
            "Finds the short passages from one pattern to another that hands and cords do, best first:",
            "  deferent transitions \"extension vs extension\" \"extension vs static spin\" --tether 40cm"
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

    @Option(names = "--json", description = "Answer in JSON, for other programs.")
    private boolean json;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        Refusal.within(limit, 1, 32, "--limit", "transitions");
        PatternDocument one = pair.pattern(from);
        PatternDocument other = pair.pattern(to);
        TransitionRequest request =
                new TransitionRequest(hardest, performer.of(one.performer()), limit);
        Transitions found = Transitions.between(one.pairing(), other.pairing(), request);
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(TransitionsJson.write(one, other, found));
            return 0;
        }
        TextOut say = new TextOut(out, why);
        say.line("From ", one.name());
        say.line("to   ", other.name());
        out.println();
        List<Told> told = TellTransition.of(found);
        say.told("", told.get(0));
        for (int i = 1; i < told.size(); i++) {
            say.told("  " + i + ". ", told.get(i));
        }
        return 0;
    }
}
