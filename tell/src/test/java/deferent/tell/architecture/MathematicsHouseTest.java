package deferent.tell.architecture;

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
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/**
 * The rooms of the mathematics. That a floor knows only the floors below it the build itself keeps,
 * each being a module.
 */
class MathematicsHouseTest {
    private static final List<String> FLOORS = List.of("motion", "reading", "search", "tell");

    private static final JavaClasses MATHEMATICS =
            new ClassFileImporter()
                    .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                    // What a module's tests share comes as an archive of its own.
                    .withImportOption(place -> !place.contains("-tests.jar"))
                    .importPackages(FLOORS.stream().map(f -> "deferent." + f).toList());

    private static final List<String> READINGS = List.of("link", "tether", "body", "photo");

    private static String[] reading(List<String> rooms) {
        return rooms.stream().map(r -> "deferent.reading." + r + "..").toArray(String[]::new);
    }

    private static void holds(ArchRule rule) {
        rule.allowEmptyShould(true).check(MATHEMATICS);
    }

    @Test
    void aPairingKnowsNeitherItsPhraseNorItsTrace() {
        holds(
                noClasses()
                        .that()
                        .resideInAPackage("deferent.motion.pairing..")
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(
                                "deferent.motion.trade..",
                                "deferent.motion.phrase..",
                                "deferent.motion.trace.."));
    }

    @Test
    void readingsDoNotKnowEachOtherNorWhatPutsThemTogether() {
        for (String room : READINGS) {
            List<String> others = new ArrayList<>(READINGS);
            others.remove(room);
            others.add("worked");
            others.add("closest");
            holds(
                    noClasses()
                            .that()
                            .resideInAnyPackage(reading(List.of(room)))
                            .should()
                            .dependOnClassesThat()
                            .resideInAnyPackage(reading(others)));
        }
    }

    @Test
    void noRoomsGoRoundInACircle() {
        holds(slices().matching("deferent.(*).(*)..").should().beFreeOfCycles());
    }

    @Test
    void theMathematicsUsesTheThreeLibrariesAndPlainJava() {
        holds(
                classes()
                        .should()
                        .onlyDependOnClassesThat()
                        .resideInAnyPackage(
                                "deferent..",
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
                MATHEMATICS.stream()
                        .map(JavaClass::getPackage)
                        .distinct()
                        .filter(p -> !p.isAnnotatedWith(NullMarked.class))
                        .map(JavaPackage::getName)
                        .toList();
        assertThat(unmarked).isEmpty();
    }

    @Test
    void everyRoomSaysWhatItAnswers() throws IOException {
        for (String floor : FLOORS) {
            Path rooms = Path.of("..", floor, "src/main/java/deferent", floor);
            try (Stream<Path> found = Files.walk(rooms)) {
                List<Path> folders =
                        found.filter(Files::isDirectory)
                                .filter(f -> f.equals(rooms) == floor.equals("tell"))
                                .toList();
                assertThat(folders).isNotEmpty();
                for (Path room : folders) {
                    Path says = room.resolve("package-info.java");
                    assertThat(says).exists();
                    assertThat(Files.readString(says)).as(says.toString()).startsWith("/**");
                }
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
        for (String value :
                List.of(
                        "motion.trace.Figure",
                        "motion.trace.State",
                        "reading.body.Reach",
                        "reading.body.Room")) {
            assertThat(MATHEMATICS.get("deferent." + value).isRecord()).as(value).isTrue();
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
                        .resideInAnyPackage(
                                "deferent.motion..", "deferent.reading..", "deferent.tell..")
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
