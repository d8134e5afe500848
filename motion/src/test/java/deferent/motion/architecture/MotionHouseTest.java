package deferent.motion.architecture;

import static com.tngtech.archunit.lang.conditions.ArchConditions.beRecords;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** The floors of the mathematics: a floor knows only the floors below it. */
class MotionHouseTest {
    private static final JavaClasses MOTION =
            new ClassFileImporter()
                    .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                    .importPackages("deferent.motion");

    private static final String[] GROUND = rooms("pairing", "trade", "phrase", "trace");
    private static final String[] READINGS = rooms("link", "tether", "body", "photo");
    private static final String[] SEARCHES = rooms("fit", "seek", "crossing");
    private static final String[] TOP = rooms("tell");

    private static String[] rooms(String... names) {
        return Arrays.stream(names).map(n -> "deferent.motion." + n + "..").toArray(String[]::new);
    }

    private static String[] all(String[]... floors) {
        return Arrays.stream(floors).flatMap(Arrays::stream).toArray(String[]::new);
    }

    private static void holds(ArchRule rule) {
        rule.allowEmptyShould(true).check(MOTION);
    }

    @Test
    void everyRoomStandsOnAFloor() {
        holds(classes().should().resideInAnyPackage(all(GROUND, READINGS, SEARCHES, TOP)));
    }

    @Test
    void theGroundFloorKnowsNoReading() {
        holds(
                noClasses()
                        .that()
                        .resideInAnyPackage(GROUND)
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(all(READINGS, SEARCHES, TOP)));
    }

    @Test
    void aPairingKnowsNeitherItsPhraseNorItsTrace() {
        holds(
                noClasses()
                        .that()
                        .resideInAPackage("deferent.motion.pairing..")
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(rooms("trade", "phrase", "trace")));
    }

    @Test
    void readingsDoNotKnowEachOtherNorWhatSearchesThem() {
        for (String room : READINGS) {
            String[] others =
                    Arrays.stream(READINGS).filter(r -> !r.equals(room)).toArray(String[]::new);
            holds(
                    noClasses()
                            .that()
                            .resideInAPackage(room)
                            .should()
                            .dependOnClassesThat()
                            .resideInAnyPackage(all(others, SEARCHES, TOP)));
        }
    }

    @Test
    void searchesDoNotKnowHowReadingsAreSaid() {
        holds(
                noClasses()
                        .that()
                        .resideInAnyPackage(SEARCHES)
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(TOP));
    }

    @Test
    void noRoomsGoRoundInACircle() {
        holds(slices().matching("deferent.motion.(*)..").should().beFreeOfCycles());
    }

    @Test
    void theMathematicsUsesTheThreeLibrariesAndPlainJava() {
        holds(
                classes()
                        .should()
                        .onlyDependOnClassesThat()
                        .resideInAnyPackage(
                                "deferent.motion..",
                                "java.lang..",
                                "java.math..",
                                "java.text..",
                                "java.util..",
                                "org.hipparchus..",
                                "org.locationtech.jts..",
                                "org.jgrapht..",
                                "org.jspecify.."));
    }

    @Test
    void theMathematicsHasNoFileNetworkScreenOrClock() {
        holds(
                noClasses()
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(
                                "java.io..",
                                "java.nio..",
                                "java.net..",
                                "java.awt..",
                                "javax..",
                                "java.time..")
                        .orShould()
                        .callMethod(System.class, "currentTimeMillis")
                        .orShould()
                        .callMethod(System.class, "nanoTime")
                        .orShould()
                        .callMethod(System.class, "getenv", String.class)
                        .orShould()
                        .accessField(System.class, "out")
                        .orShould()
                        .accessField(System.class, "err")
                        .orShould()
                        .callMethod(Math.class, "random")
                        .orShould()
                        .callConstructor(java.util.Date.class)
                        .orShould()
                        .callConstructor(java.util.Random.class));
    }

    @Test
    void nobodyHearsOfNull() {
        List<String> unmarked =
                MOTION.stream()
                        .map(JavaClass::getPackage)
                        .distinct()
                        .filter(p -> !p.isAnnotatedWith(NullMarked.class))
                        .map(JavaPackage::getName)
                        .toList();
        assertThat(unmarked).isEmpty();
    }

    @Test
    void everyRoomSaysWhatItAnswers() throws IOException {
        Path rooms = Path.of("src/main/java/deferent/motion");
        try (Stream<Path> found = Files.list(rooms)) {
            List<Path> folders = found.filter(Files::isDirectory).toList();
            assertThat(folders).isNotEmpty();
            for (Path room : folders) {
                Path says = room.resolve("package-info.java");
                assertThat(says).exists();
                assertThat(Files.readString(says)).as(says.toString()).startsWith("/**");
            }
        }
    }

    @Test
    void aReadingIsARecord() {
        holds(
                classes()
                        .that()
                        .haveSimpleNameEndingWith("Reading")
                        .and()
                        .areTopLevelClasses()
                        .should(beRecords()));
        for (String value : List.of("trace.Figure", "trace.State", "body.Reach", "body.Room")) {
            assertThat(MOTION.get("deferent.motion." + value).isRecord()).as(value).isTrue();
        }
    }

    /** Searches are long work that goes on step by step; what they return is not. */
    @Test
    void nothingPublicOnTheLowerFloorsChangesOnceItIsMade() {
        holds(
                fields().that()
                        .areDeclaredInClassesThat()
                        .areTopLevelClasses()
                        .and()
                        .areDeclaredInClassesThat()
                        .arePublic()
                        .and()
                        .areDeclaredInClassesThat()
                        .resideInAnyPackage(all(GROUND, READINGS, TOP))
                        .should()
                        .haveModifier(JavaModifier.FINAL));
    }

    @Test
    void namesAreTheTradesOrTheVocabularys() {
        holds(
                noClasses()
                        .should()
                        .haveSimpleNameEndingWith("Manager")
                        .orShould()
                        .haveSimpleNameEndingWith("Util")
                        .orShould()
                        .haveSimpleNameEndingWith("Utils")
                        .orShould()
                        .haveSimpleNameEndingWith("Helper")
                        .orShould()
                        .haveSimpleNameEndingWith("Impl")
                        .orShould()
                        .haveSimpleNameEndingWith("Data")
                        .orShould()
                        .haveSimpleNameEndingWith("Info"));
    }
}
