package deferent.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.awt.image.BufferedImage;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** The order of the house: data walks one way, and nothing on the right is known on the left. */
class HouseTest {
    private static final List<String> ORDER =
            List.of(
                    "motion", "reading", "search", "tell", "record", "page", "reel", "film",
                    "sound", "take", "studio", "app");

    private static final JavaClasses HOUSE =
            new ClassFileImporter()
                    .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                    // What a module's tests share comes as an archive of its own.
                    .withImportOption(place -> !place.contains("-tests.jar"))
                    .importPackages("deferent");

    private static String inside(String module) {
        return "deferent." + module + "..";
    }

    @Test
    void noModuleKnowsWhatStandsToItsRight() {
        for (int i = 0; i < ORDER.size() - 1; i++) {
            String[] right =
                    ORDER.subList(i + 1, ORDER.size()).stream()
                            .map(HouseTest::inside)
                            .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage(inside(ORDER.get(i)))
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(right)
                    .allowEmptyShould(true)
                    .check(HOUSE);
        }
    }

    @Test
    void everyTopClassHasANameOfItsOwn() {
        Map<String, List<String>> packages =
                HOUSE.stream()
                        .filter(JavaClass::isTopLevelClass)
                        .filter(c -> !c.getSimpleName().equals("package-info"))
                        .collect(
                                Collectors.groupingBy(
                                        JavaClass::getSimpleName,
                                        Collectors.mapping(
                                                JavaClass::getPackageName, Collectors.toList())));
        assertThat(packages).hasSizeGreaterThan(400);
        assertThat(packages.entrySet()).filteredOn(e -> e.getValue().size() > 1).isEmpty();
    }

    @Test
    void clipsDoNotReadTheShelf() {
        noClasses()
                .that()
                .resideInAPackage(inside("reel"))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("deferent.record")
                .allowEmptyShould(true)
                .check(HOUSE);
    }

    @Test
    void onlyClipsTouchTheNatives() {
        noClasses()
                .that()
                .resideOutsideOfPackage(inside("reel"))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.bytedeco..")
                .check(HOUSE);
    }

    /** Every file is written whole or not at all, which one package alone knows how to do. */
    @Test
    void onlyALandingOpensAFileForWriting() {
        DescribedPredicate<JavaCall<?>> opens =
                DescribedPredicate.describe(
                        "opens a file for writing",
                        call -> {
                            String owner = call.getTargetOwner().getName();
                            String name = call.getName();
                            return owner.equals("java.nio.file.Files") && WRITES.contains(name)
                                    || owner.equals("java.nio.channels.FileChannel")
                                            && name.equals("open")
                                    || owner.equals("java.nio.channels.AsynchronousFileChannel")
                                    || owner.equals("java.io.File") && name.equals("createTempFile")
                                    || WRITERS.contains(owner) && name.equals("<init>")
                                    || TEXT.contains(owner)
                                            && name.equals("<init>")
                                            && takesAFile(call)
                                    || owner.equals("javax.imageio.ImageIO")
                                            && name.equals("write")
                                            && !call.getTarget()
                                                    .getRawParameterTypes()
                                                    .get(2)
                                                    .getName()
                                                    .equals(
                                                            "javax.imageio.stream.ImageOutputStream");
                        });
        ArchRule rule =
                noClasses()
                        .that()
                        .resideOutsideOfPackage("deferent.record.landing")
                        .should()
                        .callCodeUnitWhere(opens);
        rule.check(HOUSE);
        // It would notice: the landing itself, and this class below, do what it forbids.
        assertThat(noClasses().should().callCodeUnitWhere(opens).evaluate(HOUSE).hasViolation())
                .isTrue();
        JavaClasses here = new ClassFileImporter().importClasses(Scribbling.class);
        assertThat(
                        rule.evaluate(here).getFailureReport().getDetails().stream()
                                .filter(d -> d.contains("Scribbling"))
                                .toList())
                .hasSize(6);
    }

    /**
     * A fit or a photograph whose numbers come to no end is a refusal in plain words, whoever asks
     * for it.
     */
    @Test
    void fitsAndPhotographsAreAskedForWhereAFailureIsToldPlainly() {
        List<JavaCall<?>> asks =
                HOUSE.stream()
                        .filter(c -> c.getPackageName().matches("deferent\\.(take|studio|app).*"))
                        .flatMap(c -> c.getMethodCallsFromSelf().stream())
                        .<JavaCall<?>>map(call -> call)
                        .filter(call -> FAILING.contains(call.getTargetOwner().getName()))
                        .filter(call -> call.getName().equals("of"))
                        .toList();
        assertThat(asks)
                .extracting(call -> call.getOriginOwner().getSimpleName())
                .contains("FitCommand", "PhotoCommand", "Desk", "TakeDesk", "Take");
        assertThat(asks).allMatch(HouseTest::withinWorked);
    }

    private static final Set<String> FAILING =
            Set.of(
                    "deferent.search.fit.Fit",
                    "deferent.search.fit.CordedFit",
                    "deferent.reading.photo.PhotoReading");

    private static boolean withinWorked(JavaCall<?> call) {
        return call.isDeclaredInLambda()
                && call.getOrigin().getCallsFromSelf().stream()
                        .anyMatch(
                                other ->
                                        other.getTargetOwner()
                                                .getName()
                                                .equals("deferent.reading.worked.Worked"));
    }

    private static final Set<String> WRITES =
            Set.of(
                    "write",
                    "writeString",
                    "newOutputStream",
                    "newBufferedWriter",
                    "newByteChannel",
                    "copy",
                    "move",
                    "createFile",
                    "createTempFile",
                    "createTempDirectory",
                    "createLink");

    private static final Set<String> WRITERS =
            Set.of(
                    "java.io.FileOutputStream",
                    "java.io.FileWriter",
                    "java.io.RandomAccessFile",
                    "javax.imageio.stream.FileImageOutputStream",
                    "javax.imageio.stream.FileCacheImageOutputStream");

    private static final Set<String> TEXT =
            Set.of("java.io.PrintWriter", "java.io.PrintStream", "java.util.Formatter");

    private static boolean takesAFile(JavaCall<?> call) {
        String first =
                call.getTarget().getRawParameterTypes().isEmpty()
                        ? ""
                        : call.getTarget().getRawParameterTypes().get(0).getName();
        return first.equals("java.io.File") || first.equals("java.lang.String");
    }

    /** One of each kind of what the rule forbids; never called. */
    static final class Scribbling {
        static void scribble(Path file) throws IOException {
            Files.writeString(file, "");
            Files.move(file, file);
            FileChannel.open(file).close();
            new FileOutputStream(file.toFile()).close();
            new PrintWriter(file.toFile(), StandardCharsets.UTF_8).close();
            ImageIO.write(new BufferedImage(1, 1, 1), "png", file.toFile());
        }
    }

    @Test
    void noModulesGoRoundInACircle() {
        slices().matching("deferent.(*)..").should().beFreeOfCycles().check(HOUSE);
    }

    @Test
    void noRoomsGoRoundInACircle() {
        slices().matching("deferent.(**)")
                .should()
                .beFreeOfCycles()
                // A door has two sides: what strangers hold closed tells the house how to open it.
                .ignoreDependency(
                        JavaClass.Predicates.resideInAPackage("deferent.motion.api"),
                        JavaClass.Predicates.resideInAPackage("deferent.motion.api.opened"))
                .check(HOUSE);
    }

    @Test
    void everyModuleIsLookedAt() {
        for (String module : ORDER) {
            assertThat(HOUSE.stream().map(JavaClass::getPackageName))
                    .as(module)
                    .anyMatch(p -> p.startsWith("deferent." + module));
        }
    }

    // The first command builds these modules; the browser's driver is larger than all else it
    // fetches.
    @Test
    void noModuleOfTheProgramAsksForTheBrowsersDriver() throws IOException {
        for (String module : ORDER) {
            Path pom = Path.of("").toAbsolutePath().resolveSibling(module).resolve("pom.xml");
            assertThat(Files.readString(pom)).as(module).doesNotContain("playwright");
        }
    }

    // A seek over several machines brings an engine of some 270 MB: a profile of its own builds it.
    @Test
    void nobodyDependsOnTheSeekOverSeveralMachines() throws IOException {
        Path root = Path.of("").toAbsolutePath().resolveSibling("pom.xml");
        String whole = Files.readString(root);
        assertThat(whole.substring(0, whole.indexOf("<profiles>"))).doesNotContain("far</module>");
        for (String module :
                Stream.concat(ORDER.stream(), Stream.of("browser", "bench")).toList()) {
            assertThat(Files.readString(root.resolveSibling(module).resolve("pom.xml")))
                    .as(module)
                    .doesNotContain("deferent-far", "org.apache.spark");
        }
    }

    @Test
    void nobodyHearsOfNull() {
        List<String> unmarked =
                HOUSE.stream()
                        .map(JavaClass::getPackage)
                        .distinct()
                        .filter(p -> !p.isAnnotatedWith(NullMarked.class))
                        .map(JavaPackage::getName)
                        .toList();
        assertThat(unmarked).isEmpty();
    }
}
