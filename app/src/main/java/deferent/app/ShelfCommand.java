package deferent.app;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.record.DemoShelf;
import deferent.record.Document;
import deferent.record.Kept;
import deferent.record.MotionDocument;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import deferent.record.SvgPath;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "shelf",
        mixinStandardHelpOptions = true,
        description = "The saved patterns and your own motions: a folder of JSON files.",
        subcommands = {
            ShelfCommand.ListAll.class,
            ShelfCommand.Add.class,
            ShelfCommand.Name.class,
            ShelfCommand.Show.class,
            ShelfCommand.Remove.class,
            ShelfCommand.Export.class,
            ShelfCommand.Import.class,
            ShelfCommand.Demo.class,
            ShelfCommand.Schema.class
        })
final class ShelfCommand implements Runnable {
    @Spec private CommandSpec spec;

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** What the subcommands share. */
    abstract static class Work implements Runnable {
        @Spec CommandSpec spec;

        PrintWriter out() {
            return spec.commandLine().getOut();
        }

        static void said(PrintWriter out, Shelf shelf, Kept kept) {
            out.println("On the shelf: " + kept.id() + "  (" + shelf.file(kept.id()) + ")");
        }

        static String line(Document document) {
            if (document instanceof PatternDocument pattern) {
                return pattern.name()
                        + pattern.phrase()
                                .filter(p -> !p.equals(pattern.name()))
                                .map(p -> ": " + p)
                                .orElse("");
            }
            return document.name() + ": a motion of your own";
        }

        static Kept found(Shelf shelf, List<String> words) {
            String name = String.join(" ", words);
            return shelf.find(name)
                    .orElseThrow(
                            () ->
                                    new Refusal(
                                            "is not on the shelf " + shelf.folder(),
                                            "\"" + name + "\"",
                                            "give a name that shelf list shows"));
        }
    }

    @Command(
            name = "list",
            mixinStandardHelpOptions = true,
            description = "Lists what stands on the shelf.")
    static final class ListAll extends Work {
        @Mixin ShelfOption shelf;

        @Override
        public void run() {
            List<Shelf.Entry> entries = shelf.shelf().list();
            if (entries.isEmpty()) {
                out().println("The shelf " + shelf.path() + " is empty.");
                out().println("\"deferent shelf demo\" puts a dozen invented patterns on it.");
            }
            int longest = entries.stream().mapToInt(e -> e.id().length()).max().orElse(0);
            for (Shelf.Entry entry : entries) {
                String said =
                        entry.document()
                                .map(Work::line)
                                .orElseGet(() -> "cannot be read: " + entry.error().orElse(""));
                Paragraphs.wrapped(
                                String.format("%-" + longest + "s  ", entry.id()),
                                said,
                                Paragraphs.width())
                        .forEach(out()::println);
            }
        }
    }

    @Command(
            name = "add",
            mixinStandardHelpOptions = true,
            description = "Saves a pairing on the shelf.")
    static final class Add extends Work {
        @Mixin Asked asked;

        @Option(
                names = "--name",
                paramLabel = "NAME",
                description = "What to call it; unsaid, the phrase.")
        @Nullable String name;

        @Option(names = "--note", paramLabel = "TEXT", description = "A note to keep with it.")
        @Nullable String note;

        @Override
        public void run() {
            PatternDocument pattern = asked.pattern();
            if (name != null) {
                pattern = pattern.withName(name);
            }
            if (note != null) {
                pattern = pattern.withNote(note);
            }
            said(out(), asked.shelf(), asked.shelf().saveNew(pattern));
        }
    }

    @Command(
            name = "name",
            mixinStandardHelpOptions = true,
            description = {
                "Keeps one hand's motion under a name of your own, to say in phrases:",
                "  deferent shelf name \"lantern loop\" three-petal antispin",
                "  deferent shelf name \"drop\" --svg \"M0 0 C 0 1 1 1 1 0 Z\" --turns 2"
            })
    static final class Name extends Work {
        @Mixin ShelfOption shelf;

        @Parameters(index = "0", paramLabel = "NAME", description = "The new word.")
        String name = "";

        @Parameters(
                index = "1..*",
                arity = "0..*",
                paramLabel = "PHRASE",
                description = "The motion, in the words of a phrase.")
        List<String> words = List.of();

        @Option(
                names = "--hand",
                paramLabel = "HAND",
                defaultValue = "LEFT",
                description = "Of a phrase of two, whose motion: left or right.")
        Side hand = Side.LEFT;

        @Option(
                names = "--svg",
                paramLabel = "PATH",
                description = "Instead of a phrase, a hand path as SVG path data.")
        @Nullable String svg;

        @Option(
                names = "--radius",
                paramLabel = "LENGTH",
                converter = Amount.Length.class,
                description = "With --svg: from the path's middle to its farthest point.")
        @Nullable Double radius;

        @Option(
                names = "--turns",
                paramLabel = "N",
                defaultValue = "1",
                description = "With --svg: whole poi turns a cycle, negative against the hand.")
        int turns = 1;

        @Option(
                names = "--tether",
                paramLabel = "LENGTH",
                converter = Amount.Length.class,
                description = "The tether its sizes are meant for; unsaid, 60cm.")
        @Nullable Double tether;

        @Option(names = "--also", paramLabel = "WORD", description = "A second name.")
        List<String> also = List.of();

        @Override
        public void run() {
            Tether meant = tether == null ? Tether.USUAL : Tether.of(tether);
            MotionDocument document =
                    new MotionDocument(
                            name, also, "", Optional.empty(), List.of(), motion(meant), meant);
            said(out(), shelf.shelf(), shelf.shelf().saveNew(document));
            out().println("Say it in a phrase: deferent read " + name + " vs static spin");
        }

        private Motion motion(Tether meant) {
            if (svg != null) {
                return Motion.staticSpin(turns, 0)
                        .withPath(SvgPath.parse(svg, radius == null ? 0.3 : radius));
            }
            String phrase = String.join(" ", words);
            if (phrase.isBlank()) {
                throw new Refusal(
                        "has no motion", "\"" + name + "\"", "say its phrase, or give --svg");
            }
            String whole = phrase.contains(" vs ") ? phrase : phrase + " vs static spin";
            return Phrase.parse(whole, shelf.shelf().motions()).with(meant).part(hand).motion();
        }
    }

    @Command(
            name = "show",
            mixinStandardHelpOptions = true,
            description = "Shows a document as it stands on the shelf.")
    static final class Show extends Work {
        @Mixin ShelfOption shelf;

        @Parameters(arity = "1..*", paramLabel = "NAME", description = "As shelf list shows it.")
        List<String> words = List.of();

        @Override
        public void run() {
            Kept kept = found(shelf.shelf(), words);
            out().print(PatternJson.write(kept.document()));
        }
    }

    @Command(
            name = "remove",
            mixinStandardHelpOptions = true,
            description = "Removes a document from the shelf.")
    static final class Remove extends Work {
        @Mixin ShelfOption shelf;

        @Parameters(arity = "1..*", paramLabel = "NAME", description = "As shelf list shows it.")
        List<String> words = List.of();

        @Override
        public void run() {
            Kept kept = found(shelf.shelf(), words);
            shelf.shelf().remove(kept.id(), kept.revision());
            out().println("Removed: " + shelf.shelf().file(kept.id()));
        }
    }

    @Command(
            name = "export",
            mixinStandardHelpOptions = true,
            description = "Writes documents as one JSON text: those named, or all.")
    static final class Export extends Work {
        @Mixin ShelfOption shelf;

        @Parameters(
                arity = "0..*",
                paramLabel = "NAME",
                description = "One name each; none for the whole shelf.")
        List<String> names = List.of();

        @Option(
                names = "--out",
                paramLabel = "FILE",
                description = "Where to; unsaid, to the screen.")
        @Nullable Path file;

        @Override
        public void run() {
            String text = names.isEmpty() ? shelf.shelf().exportAll() : named();
            if (file == null) {
                out().print(text);
                return;
            }
            try {
                Files.writeString(file, text);
            } catch (IOException cannot) {
                throw new NotMade(
                        file + " cannot be written (" + cannot.getClass().getSimpleName() + ")",
                        "name a file in a folder that is there and yours to write");
            }
            out().println("Written: " + file);
        }

        private String named() {
            List<Document> documents = new ArrayList<>();
            for (String name : names) {
                documents.add(found(shelf.shelf(), List.of(name)).document());
            }
            return PatternJson.writeBundle(documents);
        }
    }

    @Command(
            name = "import",
            mixinStandardHelpOptions = true,
            description = "Puts the documents of files on the shelf; nothing there is lost.")
    static final class Import extends Work {
        @Mixin ShelfOption shelf;

        @Parameters(
                arity = "1..*",
                paramLabel = "FILE",
                description = "Pattern documents, or bundles that export wrote.")
        List<Path> files = List.of();

        @Override
        public void run() {
            for (Path file : files) {
                List<Document> documents;
                try {
                    documents = PatternJson.readBundle(Named.contents(file));
                } catch (deferent.record.DocumentError wrong) {
                    throw wrong.in(file.toString());
                }
                shelf.shelf().putAll(documents).forEach(kept -> said(out(), shelf.shelf(), kept));
            }
        }
    }

    @Command(
            name = "demo",
            mixinStandardHelpOptions = true,
            description = "Puts the demo set, a dozen invented patterns, on the shelf.")
    static final class Demo extends Work {
        @Mixin ShelfOption shelf;

        @Override
        public void run() {
            shelf.shelf()
                    .putAll(DemoShelf.documents())
                    .forEach(kept -> said(out(), shelf.shelf(), kept));
        }
    }

    @Command(
            name = "schema",
            mixinStandardHelpOptions = true,
            description = "Prints the JSON Schema of documents, for editors and other programs.")
    static final class Schema extends Work {
        @Override
        public void run() {
            out().print(PatternJson.schema());
        }
    }
}
