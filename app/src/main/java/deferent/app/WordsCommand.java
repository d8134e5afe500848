package deferent.app;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Words;
import deferent.record.PrettyJson;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

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
        Manners manner = Manners.of(spec);
        PrintWriter out = spec.commandLine().getOut();
        int width = Paragraphs.width();
        if (manner.json()) {
            ObjectNode node = JsonNodeFactory.instance.objectNode();
            ArrayNode all = node.putArray("words");
            (words.isEmpty()
                            ? Words.all(own)
                            : List.of(Words.explain(String.join(" ", words), own)))
                    .forEach(entry -> put(all.addObject(), entry));
            out.print(PrettyJson.text(node));
            return Exit.FOUND.code();
        }
        if (words.isEmpty()) {
            for (Words.Entry entry : Words.all(own)) {
                Paragraphs.wrapped(
                                String.format("%-22s ", entry.word()), entry.means() + ".", width)
                        .forEach(out::println);
            }
            return Exit.FOUND.code();
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
        return Exit.FOUND.code();
    }

    private static void put(ObjectNode node, Words.Entry entry) {
        node.put("word", entry.word()).put("means", entry.means());
        if (!entry.sizesUnsaid().isEmpty()) {
            node.put("unsaid", entry.sizesUnsaid());
        }
        ArrayNode also = node.putArray("also_said");
        entry.alsoSaid().forEach(also::add);
    }
}
