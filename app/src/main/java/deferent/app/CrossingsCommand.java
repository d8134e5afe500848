package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.CrossingsJson;
import deferent.record.PatternDocument;
import deferent.search.crossing.Crossing;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.Freedom;
import deferent.search.crossing.Passage;
import deferent.search.crossing.Who;
import deferent.tell.TellCrossing;
import deferent.tell.Told;
import java.io.PrintWriter;
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
        name = "crossings",
        mixinStandardHelpOptions = true,
        description = {
            "Tells at which moments one pairing can become another, smoothest first:",
            "  deferent crossings \"extension vs extension\" \"triquetra vs triquetra\""
        })
final class CrossingsCommand implements Callable<Integer> {
    private static final double LEAD = 0.5;

    @Spec private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "FROM",
            description = "The pairing that is left: a phrase in quotes, a file, or a shelf name.")
    private String from = "";

    @Parameters(index = "1", paramLabel = "TO", description = "The one that is entered, likewise.")
    private String to = "";

    @Mixin private PairOption pair;

    @Mixin private CrossingOption crossing;

    @Option(
            names = "--who",
            paramLabel = "HANDS",
            defaultValue = "BOTH",
            description = "Which hands cross over: both, left or right.")
    private Who who = Who.BOTH;

    @Option(
            names = "--shift",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Let the second be carried as a whole by up to this.")
    private @Nullable Double shift;

    @Option(
            names = "--turn",
            paramLabel = "ANGLE",
            converter = Quantity.Angle.class,
            description = "Let it be turned in its plane by up to this, such as 90deg.")
    private @Nullable Double turn;

    @Option(names = "--mirror", description = "Let both its motions go round the other way.")
    private boolean mirror;

    @Option(
            names = "--faster",
            paramLabel = "FACTOR",
            description = "Let it be spun faster or slower by up to this factor, such as 1.5.")
    private @Nullable Double faster;

    @Option(names = "--timing", description = "Let the timing between its hands change.")
    private boolean timing;

    @Option(
            names = "--limit",
            paramLabel = "N",
            defaultValue = "20",
            description = "How many to tell in words; JSON has all. 20 unless you say.")
    private int limit = 20;

    @Option(names = "--json", description = "Answer in JSON, for other programs.")
    private boolean json;

    @Option(names = "--why", description = "Say below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        Refusal.within(limit, 1, 100_000, "--limit", "crossings");
        PatternDocument one = pair.pattern(from);
        PatternDocument other = pair.pattern(to);
        Crossings found = Crossings.between(one.pairing(), other.pairing(), request());
        Optional<Crossing> smoothest = found.smoothest();
        Optional<Passage> passage = smoothest.map(c -> Passage.of(c, LEAD, one.kit()));
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(CrossingsJson.write(one, other, found, passage));
            return 0;
        }
        TextOut say = new TextOut(out, why);
        say.line("From ", one.name());
        say.line("to   ", other.name());
        out.println();
        List<Told> told = TellCrossing.of(found);
        say.told("", told.get(0));
        for (int i = 1; i < told.size() && i <= limit; i++) {
            say.told("  " + i + ". ", told.get(i));
        }
        if (told.size() - 1 > limit) {
            say.line("  ", "And " + (told.size() - 1 - limit) + " more; --limit tells them.");
        }
        passage.ifPresent(
                through -> {
                    out.println();
                    out.println("Through the smoothest");
                    say.told("  - ", TellCrossing.of(through));
                });
        return 0;
    }

    private CrossingRequest request() {
        Freedom freedom = Freedom.NONE.withMirror(mirror).withTiming(timing);
        freedom = shift == null ? freedom : freedom.withShift(shift);
        freedom = turn == null ? freedom : freedom.withTurn(turn);
        freedom = faster == null ? freedom : freedom.withTempo(faster);
        return crossing.request().with(who).with(freedom);
    }
}
