package deferent.app;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.record.DemoShelf;
import deferent.record.Document;
import deferent.record.Extras;
import deferent.record.Kept;
import deferent.record.Log;
import deferent.record.LogJson;
import deferent.record.MotionDocument;
import deferent.record.NotListed;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.PracticeJson;
import deferent.record.ReadingsJson;
import deferent.record.SetDocument;
import deferent.record.SetPlaces;
import deferent.record.Shelf;
import deferent.record.ShelfJson;
import deferent.record.SongDocument;
import deferent.record.SvgPath;
import deferent.record.landing.Landing;
import deferent.record.landing.Litter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
        Deferent.front(spec);
    }

    /** What the subcommands share. */
    abstract static class Work implements Runnable {
        @Spec CommandSpec spec;

        PrintWriter out() {
            return spec.commandLine().getOut();
        }

        Manners manner() {
            return Manners.of(spec);
        }

        static String said(Shelf shelf, Kept kept) {
            return "On the shelf: " + kept.id() + "  (" + shelf.file(kept.id()) + ")";
        }

        void kept(Shelf shelf, Kept kept) {
            Putting put = new Putting(manner());
            put.kept(shelf, kept);
            put.tell();
        }

        static String line(Document document) {
            if (document instanceof PatternDocument pattern) {
                return pattern.name()
                        + pattern.phrase()
                                .filter(p -> !p.equals(pattern.name()))
                                .map(p -> ": " + p)
                                .orElse("");
            }
            if (document instanceof SongDocument song) {
                return song.name() + ": " + song.told();
            }
            return document instanceof SetDocument set
                    ? set.name() + ": " + set.told()
                    : document.name() + ": a motion of your own";
        }

        static String disagreement(Document document, Lexicon words) {
            return document instanceof PatternDocument pattern
                    ? pattern.disagreement(words).map(told -> " (" + told + ")").orElse("")
                    : "";
        }

        static Kept found(ShelfOption shelf, List<String> words) {
            return shelf.found(String.join(" ", words), "");
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
            if (Manners.of(spec).json()) {
                out().print(ShelfJson.write(shelf.shelf()));
                return;
            }
            Shelf.Listing listing = shelf.shelf().look();
            List<Kept> entries = listing.kept();
            if (entries.isEmpty()) {
                out().println("The shelf " + shelf.path() + " is empty.");
                out().println("\"deferent shelf demo\" puts a dozen invented patterns on it.");
            }
            int longest = entries.stream().mapToInt(e -> e.id().length()).max().orElse(0);
            Lexicon words = listing.words().lexicon();
            for (Kept entry : entries) {
                String told = disagreement(entry.document(), words);
                Paragraphs.wrapped(
                                String.format("%-" + longest + "s  ", entry.id()),
                                line(entry.document()) + told,
                                Paragraphs.width())
                        .forEach(out()::println);
            }
            List<NotListed> others = listing.notListed();
            if (!others.isEmpty()) {
                out().println("Not on the shelf, but in its folder:");
            }
            for (NotListed other : others) {
                Paragraphs.wrapped("  " + other.file() + ": ", other.why(), Paragraphs.width())
                        .forEach(out()::println);
            }
        }
    }

    @Command(
            name = "add",
            mixinStandardHelpOptions = true,
            description = "Saves a pairing on the shelf.")
    static final class Add extends Work {
        @Mixin AskedPairing asked;

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
            kept(asked.shelf(), asked.shelf().saveNew(pattern));
        }
    }

    @Command(
            name = "name",
            mixinStandardHelpOptions = true,
            description = {
                "Keeps one hand's motion under a name of your own, to say in phrases.",
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
                converter = Quantity.Length.class,
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
                converter = Quantity.Length.class,
                description = "The tether its sizes are meant for; unsaid, 60cm.")
        @Nullable Double tether;

        @Option(names = "--also", paramLabel = "WORD", description = "A second name.")
        List<String> also = List.of();

        @Override
        public void run() {
            Tether meant = tether == null ? Tether.USUAL : Tether.of(tether);
            MotionDocument document =
                    new MotionDocument(
                            name,
                            also,
                            "",
                            Optional.empty(),
                            List.of(),
                            motion(meant),
                            meant,
                            Extras.NONE);
            kept(shelf.shelf(), shelf.shelf().saveNew(document));
            manner().beside("Say it in a phrase: deferent read " + name + " vs static spin");
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
            return Phrase.parse(whole, shelf.words()).with(meant).part(hand).motion();
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
            Kept kept = found(shelf, words);
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
            Kept kept = found(shelf, words);
            shelf.shelf().remove(kept.id(), kept.revision());
            Putting put = new Putting(manner());
            put.removed(shelf.shelf(), kept);
            put.tell();
        }
    }

    @Command(
            name = "export",
            mixinStandardHelpOptions = true,
            description =
                    "Writes documents as one JSON text: those named, a set with its patterns, or all.")
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
                description = "Where to; unsaid, or -, to standard output.")
        @Nullable Path file;

        @Override
        public void run() {
            String text = names.isEmpty() ? all() : named();
            if (file == null || file.toString().equals(Incoming.STANDARD)) {
                out().print(text);
                return;
            }
            Path folder = file.toAbsolutePath().getParent();
            if (folder != null) {
                Litter.sweep(folder).told().ifPresent(shelf::tell);
            }
            Landing.write(file, text.getBytes(StandardCharsets.UTF_8));
            if (manner().json()) {
                out().print(text);
            } else {
                out().println("Written: " + file);
            }
        }

        private String all() {
            Shelf.Listing listing = shelf.shelf().look();
            for (NotListed other : listing.notListed()) {
                if (other.file().endsWith(".json")) {
                    shelf.tell("Not in it: " + other.file() + ": " + other.why());
                }
            }
            return PatternJson.writeBundle(
                    listing.kept().stream().map(kept -> kept.document().shared()).toList());
        }

        private String named() {
            Set<Document> documents = new LinkedHashSet<>();
            for (String name : names) {
                Document document = found(shelf, List.of(name)).document();
                documents.add(document);
                if (document instanceof SetDocument set) {
                    // A set is nothing without its patterns.
                    SetPlaces.on(shelf.shelf().look())
                            .of(set.steps())
                            .forEach(
                                    p ->
                                            p.id().ifPresent(
                                                            id ->
                                                                    p.pattern()
                                                                            .ifPresent(
                                                                                    documents
                                                                                            ::add)));
                }
            }
            return PatternJson.writeBundle(documents.stream().map(Document::shared).toList());
        }
    }

    @Command(
            name = "import",
            mixinStandardHelpOptions = true,
            description =
                    "Puts the documents of files on the shelf, and logs of practice into its log;"
                            + " nothing there is lost.")
    static final class Import extends Work {
        @Mixin ShelfOption shelf;

        @Parameters(
                arity = "1..*",
                paramLabel = "FILE",
                description =
                        "Pattern documents, bundles that export wrote, or logs that a hall file"
                                + " wrote; - for standard input.")
        List<Path> files = List.of();

        @Override
        public void run() {
            Putting put = new Putting(manner());
            for (Path file : files) {
                String text = Named.contents(file, manner());
                try {
                    if (LogJson.isLog(text)) {
                        put.log(file.toString(), Log.of(shelf.shelf()).add(LogJson.read(text)));
                    } else {
                        documents(file, text, put);
                    }
                } catch (deferent.record.DocumentError wrong) {
                    throw wrong.in(file.toString());
                }
            }
            put.tell();
        }

        private void documents(Path file, String text, Putting put) {
            List<Document> documents = PatternJson.readBundle(text, shelf.words());
            for (Kept kept : shelf.shelf().putAll(documents)) {
                put.kept(shelf.shelf(), kept);
                String told = disagreement(kept.document(), shelf.words());
                if (!told.isEmpty()) {
                    manner().beside("  " + told.strip());
                }
            }
            if (documents.isEmpty()) {
                manner().beside(file + " holds no documents.");
            }
        }
    }

    @Command(
            name = "demo",
            mixinStandardHelpOptions = true,
            description =
                    "Puts the demo on the shelf: a dozen invented patterns, a set of them and three"
                            + " songs.")
    static final class Demo extends Work {
        @Mixin ShelfOption shelf;

        @Override
        public void run() {
            Putting put = new Putting(manner());
            shelf.shelf()
                    .putAll(DemoShelf.documents())
                    .forEach(kept -> put.kept(shelf.shelf(), kept));
            put.tell();
        }
    }

    @Command(
            name = "schema",
            mixinStandardHelpOptions = true,
            description = "Prints the JSON Schema of documents, for editors and other programs.")
    static final class Schema extends Work {
        @Option(
                names = "--readings",
                description = "That of what read and photo answer with --json.")
        boolean readings;

        @Option(names = "--practice", description = "That of practice kept beside the shelf.")
        boolean practice;

        @Option(names = "--log", description = "That of logs of practice.")
        boolean log;

        @Override
        public void run() {
            out().print(
                            readings
                                    ? ReadingsJson.schema()
                                    : practice
                                            ? PracticeJson.schema()
                                            : log ? LogJson.schema() : PatternJson.schema());
        }
    }
}
