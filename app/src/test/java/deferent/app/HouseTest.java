package deferent.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** The order of the house: data walks one way, and nothing on the right is known on the left. */
class HouseTest {
    private static final List<String> ORDER =
            List.of("motion", "record", "page", "reel", "studio", "app");

    private static final JavaClasses HOUSE =
            new ClassFileImporter()
                    .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
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
    void clipsDoNotReadTheShelf() {
        noClasses()
                .that()
                .resideInAPackage(inside("reel"))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(inside("record"))
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

    @Test
    void noModulesGoRoundInACircle() {
        slices().matching("deferent.(*)..").should().beFreeOfCycles().check(HOUSE);
    }

    @Test
    void everyModuleIsLookedAt() {
        for (String module : List.of("motion", "record", "page", "reel", "studio", "app")) {
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
