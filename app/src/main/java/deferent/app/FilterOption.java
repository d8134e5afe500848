package deferent.app;

import deferent.search.seek.Answer;
import deferent.search.seek.Filter;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which answers of a seek to keep. */
final class FilterOption {
    @Option(names = "--exact", description = "Only what links without changing any size.")
    private boolean exact;

    @Option(
            names = "--reachable",
            negatable = true,
            defaultValue = "true",
            fallbackValue = "true",
            description =
                    "Made as small as the performer's hands reach, the trunk turned, and left out where"
                            + " that takes tethers under 30cm; unsaid, it is. What is sought by likeness"
                            + " keeps its sizes.")
    private boolean reachable = true;

    @Option(
            names = "--slowest",
            paramLabel = "TEMPO",
            converter = Quantity.Tempo.class,
            description = "Only what keeps both cords taut at this tempo, such as 60.")
    private @Nullable Double slowest;

    @Option(
            names = "--growth",
            paramLabel = "TIMES",
            description = "Only where a slip grows at most this many times in a reaction time.")
    private @Nullable Double growth;

    @Option(
            names = "--symmetry",
            paramLabel = "N",
            defaultValue = "0",
            description = "Only where both figures look the same N times in a round or more.")
    private int symmetry;

    @Option(
            names = "--contrast",
            paramLabel = "TIMES",
            defaultValue = "1",
            description = "Only where one figure is this many times as large as the other.")
    private double contrast = 1;

    @Option(
            names = "--near",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Only what is this near to a pattern of the shelf, such as 10cm.")
    private @Nullable Double near;

    @Option(names = "--new", description = "Leave out what is on the shelf.")
    private boolean fresh;

    Filter filter() {
        return new Filter(
                exact,
                reachable,
                slowest == null ? Double.POSITIVE_INFINITY : slowest,
                growth == null ? Double.POSITIVE_INFINITY : growth,
                symmetry,
                contrast,
                near == null ? Double.POSITIVE_INFINITY : near,
                fresh);
    }

    boolean asksTheShelf() {
        return near != null || fresh;
    }

    /** What likeness finds is judged afterwards by what the search itself did not ask. */
    boolean keeps(Answer answer) {
        return (answer.exact() || !exact)
                && answer.merit().contrast() >= contrast
                && answer.merit().symmetry() >= symmetry;
    }
}
