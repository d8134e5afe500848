package deferent.app;

import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.record.ReadingsJson;
import deferent.search.whole.Readings;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "read",
        mixinStandardHelpOptions = true,
        description = "Tells in plain words what a pairing does and whether it links.")
final class ReadCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(names = "--all", description = "Tell all there is, with numbers and cautions.")
    private boolean all;

    @Option(names = "--why", description = "Tell all, and below each sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        PatternDocument pattern = asked.pattern();
        Readings readings =
                Readings.of(
                        pattern.pairing(),
                        pattern.performer(),
                        pattern.kit(),
                        Detail.SETTLED,
                        asked.words());
        PrintWriter out = spec.commandLine().getOut();
        if (Manners.of(spec).json()) {
            out.print(ReadingsJson.write(readings));
        } else {
            ReadText text =
                    new ReadText(
                            readings, pattern, why, spec.commandLine().getColorScheme().ansi());
            (all || why ? text.all() : text.few()).forEach(out::println);
        }
        return Exit.FOUND.code();
    }
}
