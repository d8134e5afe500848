package deferent.app;

import deferent.record.PrettyJson;
import deferent.record.landing.Litter;
import deferent.take.Take;
import deferent.take.TakeProgress;
import deferent.take.Taken;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Writes what is taken away, and says what was written. */
final class Drawing {
    private Drawing() {}

    /** What writes a file. */
    interface Writing {
        Optional<Taken> write(Path file, Consumer<TakeProgress> listener, BooleanSupplier stop);
    }

    static void write(
            Take take, Path file, AsOption as, Manners manner, Progress line, Stopping stop) {
        write(take::write, file, as, manner, line, stop);
    }

    /** Beside another answer. */
    static void write(
            Writing take, Path file, AsOption as, Manners manner, Progress line, Stopping stop) {
        Taken taken = taken(take, file, manner, line, stop);
        tell(taken, as.sends(file), manner);
        as.send(taken.files().get(0));
    }

    /** As the whole of an answer. */
    static void answer(
            Writing take, Path file, AsOption as, Manners manner, Progress line, Stopping stop) {
        Taken taken = taken(take, file, manner, line, stop);
        if (manner.json()) {
            manner.out().print(PrettyJson.text(tree(taken)));
            manner.out().flush();
        } else {
            tell(taken, as.sends(file), manner);
        }
        as.send(taken.files().get(0));
    }

    private static Taken taken(
            Writing take, Path file, Manners manner, Progress line, Stopping stop) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            Litter.sweep(folder).told().ifPresent(manner::remark);
        }
        Optional<Taken> taken = take.write(file, at -> line.show(at.share(), at.told()), stop);
        line.clear();
        return taken.orElseThrow(
                () ->
                        new NotMade(
                                file + " was not written: stopped",
                                "what stood there before is untouched"));
    }

    private static void tell(Taken taken, boolean sent, Manners manner) {
        if (sent) {
            taken.files().stream()
                    .skip(1)
                    .forEach(
                            other ->
                                    manner.remark(
                                            "Left out, for a file of its own: "
                                                    + other.getFileName()));
            manner.remark(taken.told());
        } else {
            taken.files().forEach(written -> manner.beside("Drawn: " + written));
            manner.beside("  " + taken.told());
        }
        List<String> caution =
                taken.caution()
                        .map(said -> Paragraphs.wrapped("Caution: ", said, Paragraphs.width()))
                        .orElse(List.of());
        caution.forEach(sent ? manner::caution : manner::beside);
        manner.out().flush();
    }

    private static ObjectNode tree(Taken taken) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode files = node.putArray("files");
        taken.files().forEach(file -> files.add(file.toString()));
        node.put("told", taken.told());
        taken.caution().ifPresent(caution -> node.put("caution", caution));
        return node;
    }
}
