package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.api.Traced;
import deferent.motion.api.TwoPoi;
import deferent.motion.api.Vector;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.page.api.PairingPicture;
import deferent.reading.api.Link;
import deferent.reading.shared.LinkKind;
import deferent.record.api.PatternFile;
import deferent.record.api.PatternShelf;
import deferent.search.api.Fitted;
import deferent.tell.api.Sentence;
import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReader;
import java.lang.module.ModuleReference;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What other programs may use: little, listed, and as the page about it says. */
class LibraryTest {
    private static final List<String> ROOMS =
            List.of("motion", "reading", "search", "tell", "record", "page");

    /** Beginnings of the names of the jars that the rooms stand on. */
    private static final List<String> JARS =
            List.of(
                    "apfloat-",
                    "batik-",
                    "commons-io-",
                    "commons-logging-",
                    "flatlaf-",
                    "fontbox-",
                    "graphics2d-",
                    "hipparchus-",
                    "jackson-",
                    "jgltf-",
                    "jgrapht-",
                    "jheaps-",
                    "jspecify-",
                    "jts-",
                    "pdfbox-",
                    "xml-apis-ext-",
                    "xmlgraphics-");

    /** All that is public. What is added here is promised. */
    private static final Set<String> PUBLIC =
            Set.of(
                    "deferent.motion.api.Traced",
                    "deferent.motion.api.TwoPoi",
                    "deferent.motion.api.Vector",
                    "deferent.motion.shared.Refused",
                    "deferent.motion.shared.Side",
                    "deferent.page.api.PairingPicture",
                    "deferent.reading.api.Link",
                    "deferent.reading.shared.LinkKind",
                    "deferent.record.api.PatternFile",
                    "deferent.record.api.PatternShelf",
                    "deferent.search.api.Fitted",
                    "deferent.search.api.Fitted$Change",
                    "deferent.tell.api.Sentence");

    private static final Pattern CODE = Pattern.compile("```(java|text)\n(.*?)```", Pattern.DOTALL);

    @TempDir private Path elsewhere;

    private static List<Path> classPath() {
        String paths =
                System.getProperty(
                        "surefire.test.class.path", System.getProperty("java.class.path"));
        return Stream.of(paths.split(File.pathSeparator)).map(Path::of).toList();
    }

    /** A room's jar, or its folder of classes where it is not packed yet. */
    private static boolean holds(Path entry, String room) {
        return entry.endsWith(Path.of(room, "target", "classes"))
                || entry.getFileName().toString().matches("deferent-" + room + "-[\\d.]+\\.jar");
    }

    private static ModuleReference module(String room) {
        Path entry =
                classPath().stream().filter(path -> holds(path, room)).findFirst().orElseThrow();
        return ModuleFinder.of(entry).find("deferent." + room).orElseThrow();
    }

    private static boolean shown(Class<?> type) {
        return Modifier.isPublic(type.getModifiers())
                && (type.getDeclaringClass() == null || shown(type.getDeclaringClass()));
    }

    private static Set<String> publicTypes(ModuleReference module) throws IOException {
        try (ModuleReader reader = module.open();
                Stream<String> files = reader.list()) {
            Set<String> names = new TreeSet<>();
            for (String file : files.filter(f -> f.matches(".*(?<!-info)\\.class")).toList()) {
                String name = file.replaceAll("\\.class$", "").replace('/', '.');
                if (shown(Class.forName(name, false, LibraryTest.class.getClassLoader()))) {
                    names.add(name);
                }
            }
            return names;
        } catch (ClassNotFoundException e) {
            throw new AssertionError(e);
        }
    }

    private static String room(String type) {
        return type.replaceAll("\\$.*", "").replaceAll("\\.[^.]+$", "");
    }

    @Test
    void noMoreIsPublicThanIsListed() throws IOException {
        Set<String> found = new TreeSet<>();
        for (String room : ROOMS) {
            ModuleReference module = module(room);
            Set<String> open =
                    module.descriptor().exports().stream()
                            .filter(exports -> !exports.isQualified())
                            .map(ModuleDescriptor.Exports::source)
                            .collect(Collectors.toSet());
            publicTypes(module).stream()
                    .filter(type -> open.contains(room(type)))
                    .forEach(found::add);
        }
        assertThat(found).containsExactlyInAnyOrderElementsOf(PUBLIC);
        assertThat(PUBLIC.stream().filter(type -> type.startsWith("deferent.motion.")).count())
                .as("public types of motion, of all that it has")
                .isLessThan(publicTypes(module("motion")).size() / 3);
    }

    /** What is exported to one room is exported to no stranger, nor to a room on its left. */
    @Test
    void whatIsTheHousesOwnGoesToTheRight() {
        for (String room : ROOMS) {
            Set<String> right =
                    ROOMS.subList(ROOMS.indexOf(room) + 1, ROOMS.size()).stream()
                            .map(other -> "deferent." + other)
                            .collect(Collectors.toSet());
            assertThat(module(room).descriptor().exports())
                    .filteredOn(ModuleDescriptor.Exports::isQualified)
                    .allSatisfy(exports -> assertThat(right).containsAll(exports.targets()));
        }
    }

    @Test
    void sizesAreInTheUnitsOfTheirKeys() {
        TwoPoi two = TwoPoi.of("static spin vs triquetra", 0.5);

        assertThat(two.sizes()).containsEntry("left.tether_m", 0.5);
        assertThat(two.with("right.tilt_deg", 30).sizes().get("right.tilt_deg"))
                .isCloseTo(30, within(1e-9));
        assertThat(two.with("tempo_cycles_per_min", 45).period()).isCloseTo(4.0 / 3, within(1e-12));
        assertThat(two.mirrored()).isNotEqualTo(two);
        assertThat(two.mirrored().mirrored()).isEqualTo(two);
        // The hand of a static spin goes round no circle.
        assertThatThrownBy(() -> two.with("left.hand_radius_m", 0.2)).isInstanceOf(Refused.class);
    }

    @Test
    void aTraceComesRoundAgain() {
        Traced traced = Traced.of(TwoPoi.of("static spin vs triquetra", 0.5));
        Vector there = traced.head(Side.LEFT, 0.3);

        assertThat(there.minus(traced.head(Side.LEFT, 0.3 + traced.period())).length())
                .isLessThan(1e-9);
        assertThat(there.minus(traced.hand(Side.LEFT, 0.3)).length()).isCloseTo(0.5, within(1e-12));
        // Once a second round a circle of half a metre.
        assertThat(traced.headVelocity(Side.LEFT, 0.3).length()).isCloseTo(Math.PI, within(1e-9));
        assertThat(traced.handVelocity(Side.LEFT, 0.3).length()).isZero();
    }

    @Test
    void aShelfKeepsWhatItIsGiven() {
        PatternShelf shelf = PatternShelf.at(elsewhere.resolve("shelf"));
        PatternFile pattern =
                PatternFile.of("A ring", TwoPoi.of("static spin vs triquetra")).withNote("dry");

        assertThat(shelf.keep(pattern)).isRegularFile();
        assertThat(shelf.names()).containsExactly("A ring");
        assertThat(shelf.find("a ring")).contains(pattern);
        assertThat(shelf.find("a square")).isEmpty();
    }

    @Test
    void whatLinksIsToldAndDrawnAndNeedsNoChange() {
        TwoPoi two = TwoPoi.of("static spin vs triquetra");

        assertThat(Link.of(two, Side.LEFT).kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(Fitted.of(two, Side.LEFT).get(0).changes()).isEmpty();
        PairingPicture picture = PairingPicture.of(two).sized(100, 80).at(0.25);
        assertThat(picture.png()).startsWith(0x89, 'P', 'N', 'G');
        assertThat(picture.png()).isNotEqualTo(picture.dark().png());
        assertThat(picture.pdf()).startsWith('%', 'P', 'D', 'F');
    }

    /** Of the pairing that takes least time to read. */
    @Test
    void whatIsToldIsInSentences() {
        List<Sentence> told = Sentence.of(TwoPoi.of("static spin vs static spin"));

        assertThat(told).extracting(Sentence::about).startsWith("first").contains("link.left");
        assertThat(told).extracting(Sentence::text).allMatch(text -> text.endsWith("."));
        assertThat(Sentence.cautions()).isNotEmpty();
    }

    @Test
    void theTwentyLinesOfThePageRunInAProgramOfItsOwn() throws Exception {
        List<String> pieces = new ArrayList<>();
        Matcher code = CODE.matcher(Files.readString(Path.of("../docs/library.md")));
        while (code.find()) {
            pieces.add(code.group(2));
        }
        assertThat(pieces).hasSize(3);
        Path sources = Files.createDirectories(elsewhere.resolve("src/first"));
        Path module = Files.writeString(elsewhere.resolve("src/module-info.java"), pieces.get(0));
        Path program = Files.writeString(sources.resolve("FirstLink.java"), pieces.get(1));
        String modules =
                classPath().stream()
                        .filter(LibraryTest::isNeeded)
                        .map(Path::toString)
                        .collect(Collectors.joining(File.pathSeparator));

        Path classes = elsewhere.resolve("classes");
        assertThat(compiled(modules, classes, module, program)).isEmpty();
        Process run =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-Djava.awt.headless=true",
                                "-XX:TieredStopAtLevel=1",
                                "--module-path",
                                classes + File.pathSeparator + modules,
                                "--module",
                                "first.link/first.FirstLink")
                        .directory(elsewhere.toFile())
                        .redirectErrorStream(true)
                        .start();
        String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(said.replace("\r\n", "\n")).isEqualTo(pieces.get(2));
        assertThat(run.waitFor()).isZero();
        assertThat(Files.readString(elsewhere.resolve("link.svg"))).startsWith("<svg");
        TwoPoi kept = PatternFile.read(Files.readString(elsewhere.resolve("link.json"))).pairing();
        assertThat(Link.of(kept, Side.LEFT).links()).isTrue();
    }

    private static boolean isNeeded(Path entry) {
        String name = entry.getFileName().toString();
        return ROOMS.stream().anyMatch(room -> holds(entry, room))
                || JARS.stream().anyMatch(name::startsWith);
    }

    /** What the compiler says against it. */
    private static String compiled(String modules, Path classes, Path... sources)
            throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            boolean done =
                    compiler.getTask(
                                    said,
                                    files,
                                    null,
                                    List.of("--module-path", modules, "-d", classes.toString()),
                                    null,
                                    files.getJavaFileObjects(sources))
                            .call();
            return done ? "" : said.toString();
        }
    }
}
