package deferent.app;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Words;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "words",
        mixinStandardHelpOptions = true,
        description = "Lists the words a phrase may use, or explains one of them.")
final class WordsCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Mixin private ShelfOption shelf;

    @Parameters(arity = "0..*", paramLabel = "WORD", description = "The word to explain.")
    private List<String> words = List.of();

    @Override
    public Integer call() {
        Lexicon own = shelf.words();
        PrintWriter out = spec.commandLine().getOut();
        int width = Paragraphs.width();
        if (words.isEmpty()) {
            for (Words.Entry entry : Words.all(own)) {
                Paragraphs.wrapped(
                                String.format("%-22s ", entry.word()), entry.means() + ".", width)
                        .forEach(out::println);
            }
            return 0;
        }
        Words.Entry entry = Words.explain(String.join(" ", words), own);
        out.println(entry.word());
        Paragraphs.wrapped("  ", entry.means() + ".", width).forEach(out::println);
        if (!entry.sizesUnsaid().isEmpty()) {
            Paragraphs.wrapped("  Unless you say otherwise: ", entry.sizesUnsaid() + ".", width)
                    .forEach(out::println);
        }
        if (!entry.alsoSaid().isEmpty()) {
            Paragraphs.wrapped("  Also said: ", String.join(", ", entry.alsoSaid()) + ".", width)
                    .forEach(out::println);
        }
        return 0;
    }
}
