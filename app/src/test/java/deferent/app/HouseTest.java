package deferent.app;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Which room of the house may use which. */
@AnalyzeClasses(packages = "deferent", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseTest {
    private static final String[] READINGS = {
        "deferent.motion.link", "deferent.motion.tether", "deferent.motion.body"
    };
    private static final String[] SEARCHES = {
        "deferent.motion.fit", "deferent.motion.seek", "deferent.motion.crossing"
    };

    @ArchTest
    static final ArchRule dataWalksOneWay =
            layeredArchitecture()
                    .consideringOnlyDependenciesInAnyPackage("deferent..")
                    .layer("motion")
                    .definedBy("deferent.motion..")
                    .layer("record")
                    .definedBy("deferent.record..")
                    .layer("page")
                    .definedBy("deferent.page..")
                    .optionalLayer("reel")
                    .definedBy("deferent.reel..")
                    .layer("studio")
                    .definedBy("deferent.studio..")
                    .layer("app")
                    .definedBy("deferent.app..")
                    .whereLayer("app")
                    .mayNotBeAccessedByAnyLayer()
                    .whereLayer("studio")
                    .mayOnlyBeAccessedByLayers("app")
                    .whereLayer("reel")
                    .mayOnlyBeAccessedByLayers("app", "studio")
                    .whereLayer("page")
                    .mayOnlyBeAccessedByLayers("app", "studio", "reel")
                    .whereLayer("record")
                    .mayOnlyBeAccessedByLayers("app", "studio", "reel", "page");

    @ArchTest
    static final ArchRule theGroundFloorKnowsNoFloorAbove =
            noClasses()
                    .that()
                    .resideInAnyPackage(
                            "deferent.motion.pairing",
                            "deferent.motion.phrase",
                            "deferent.motion.trace")
                    .should()
                    .dependOnClassesThat(
                            resideInAnyPackage(READINGS)
                                    .or(resideInAnyPackage(SEARCHES))
                                    .or(resideInAPackage("deferent.motion.tell")));

    @ArchTest
    static final ArchRule aReadingKnowsNoSearchAndNoTelling =
            noClasses()
                    .that()
                    .resideInAnyPackage(READINGS)
                    .should()
                    .dependOnClassesThat(
                            resideInAnyPackage(SEARCHES)
                                    .or(resideInAPackage("deferent.motion.tell")));

    @ArchTest static final ArchRule linkKnowsNoOtherReading = alone("link", "tether", "body");

    @ArchTest static final ArchRule tetherKnowsNoOtherReading = alone("tether", "link", "body");

    @ArchTest static final ArchRule bodyKnowsNoOtherReading = alone("body", "link", "tether");

    private static ArchRule alone(String reading, String one, String other) {
        return noClasses()
                .that()
                .resideInAPackage("deferent.motion." + reading)
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("deferent.motion." + one, "deferent.motion." + other));
    }

    @ArchTest
    static final ArchRule theSearchesSayNothing =
            noClasses()
                    .that()
                    .resideInAnyPackage(SEARCHES)
                    .should()
                    .dependOnClassesThat(resideInAPackage("deferent.motion.tell"))
                    .allowEmptyShould(true);

    @ArchTest
    static final ArchRule theMathematicsUsesNothingButMathematics =
            classes()
                    .that()
                    .resideInAPackage("deferent.motion..")
                    .should()
                    .onlyDependOnClassesThat(
                            resideInAnyPackage(
                                    "deferent.motion..",
                                    "org.hipparchus..",
                                    "org.locationtech.jts..",
                                    "org.jgrapht..",
                                    "org.jspecify..",
                                    "java.lang..",
                                    "java.util..",
                                    "java.math..",
                                    "java.text.."));

    @ArchTest
    static final ArchRule theMathematicsReadsNoClock =
            noClasses()
                    .that()
                    .resideInAPackage("deferent.motion..")
                    .should()
                    .callMethod(System.class, "currentTimeMillis")
                    .orShould()
                    .callMethod(System.class, "nanoTime");
}
