package deferent.app;

import deferent.motion.phrase.Lexicon;
import deferent.reading.worked.Worked;
import deferent.record.ClearJson;
import deferent.record.PatternDocument;
import deferent.search.clear.ClearSearch;
import deferent.search.clear.Clearing;
import deferent.tell.TellClear;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "clear",
        mixinStandardHelpOptions = true,
        description =
                "Tells what is in the way in a pairing, a cord, head, arm or the body, and looks for the"
                        + " least change of planes that clears it.")
final class ClearCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Mixin private AskedPairing asked;

    @Option(names = "--why", description = "Say below the sentence where it comes from.")
    private boolean why;

    @Override
    public Integer call() {
        PatternDocument pattern = asked.pattern();
        Lexicon own = asked.words();
        PrintWriter out = spec.commandLine().getOut();
        Progress progress = new Progress(Manners.of(spec), false);
        try (Stopping stop = new Stopping()) {
            Clearing clearing =
                    Worked.orRefusal(
                            "the numbers of what clears it",
                            () ->
                                    ClearSearch.of(
                                            pattern.pairing(),
                                            pattern.performer(),
                                            pattern.kit(),
                                            done -> progress.show(done, "looking for planes"),
                                            stop));
            progress.clear();
            if (Manners.of(spec).json()) {
                out.print(ClearJson.write(pattern, clearing, own));
            } else {
                tell(pattern, clearing, own);
            }
            out.flush();
            return clearing.clear() || clearing.cleared().isPresent()
                    ? Exit.FOUND.code()
                    : Exit.NOT_FOUND.code();
        }
    }

    private void tell(PatternDocument pattern, Clearing clearing, Lexicon own) {
        PrintWriter out = spec.commandLine().getOut();
        int width = Paragraphs.width();
        Told told = TellClear.of(clearing);
        out.println(pattern.name());
        Paragraphs.wrapped("", told.text(), width).forEach(out::println);
        if (why) {
            Paragraphs.wrapped("      why: ", told.why(), width).forEach(out::println);
        }
        clearing.cleared()
                .flatMap(cleared -> pattern.saying(cleared.pairing(), own).phrase())
                .ifPresent(
                        phrase -> Paragraphs.wrapped("Try: ", phrase, width).forEach(out::println));
    }
}
