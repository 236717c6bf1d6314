package slabfield;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static com.tngtech.archunit.library.plantuml.rules.PlantUmlArchCondition.Configuration.consideringOnlyDependenciesInAnyPackage;
import static com.tngtech.archunit.library.plantuml.rules.PlantUmlArchCondition.adhereToPlantUmlDiagram;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.PackageMatcher;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which package may use which, as docs/architecture.puml draws it, and what is kept out of where.
 *
 * <p>A hole that stays open: the compiler copies constants of a primitive type into the class that uses them, so such a
 * use leaves no trace and is not seen here. Units are objects for that reason.
 */
class ArchitectureTest {
    private static final Path DIAGRAM = Path.of("docs", "architecture.puml");
    private static final Pattern BOX = Pattern.compile("^\\[[^]]+]\\s*<<([^>]+)>> as (\\w+)", Pattern.MULTILINE);
    private static final Pattern ARROW = Pattern.compile("^(\\w+) --> (\\w+)", Pattern.MULTILINE);
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("slabfield");
    private static final Set<String> PACKAGES =
            CLASSES.stream().map(JavaClass::getPackageName).collect(Collectors.toCollection(TreeSet::new));

    /** What each box of the diagram holds, by the box's short name. */
    private static Map<String, PackageMatcher> boxes() throws IOException {
        return BOX.matcher(Files.readString(DIAGRAM))
                .results()
                .collect(Collectors.toMap(m -> m.group(2), m -> PackageMatcher.of(m.group(1))));
    }

    @Test
    void importsFollowTheArrowsOfTheDiagram() {
        classes()
                .should(adhereToPlantUmlDiagram(DIAGRAM, consideringOnlyDependenciesInAnyPackage("slabfield..")))
                .check(CLASSES);
    }

    /** The diagram alone would let a cycle pass if somebody drew it. */
    @Test
    void packagesAreFreeOfCycles() {
        slices().matching("slabfield.(*)..").should().beFreeOfCycles().check(CLASSES);
        slices().matching("slabfield.desktop.(*)..")
                .should()
                .beFreeOfCycles()
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    @Test
    void everyBoxHasAClass() throws IOException {
        assertThat(boxes())
                .isNotEmpty()
                .allSatisfy((name, box) ->
                        assertThat(PACKAGES).as("packages in box %s", name).anyMatch(box::matches));
    }

    @Test
    void everyPackageHasABox() throws IOException {
        Collection<PackageMatcher> boxes = boxes().values();
        assertThat(PACKAGES)
                .isNotEmpty()
                .allSatisfy(name ->
                        assertThat(boxes).as("boxes of package %s", name).anyMatch(box -> box.matches(name)));
    }

    /** An arrow that nobody uses would let a later import pass unseen. */
    @Test
    void everyArrowIsUsed() throws IOException {
        Map<String, PackageMatcher> boxes = boxes();
        List<String> idle = ARROW.matcher(Files.readString(DIAGRAM))
                .results()
                .filter(arrow -> !uses(boxes.get(arrow.group(1)), boxes.get(arrow.group(2))))
                .map(MatchResult::group)
                .toList();
        assertThat(idle).as("arrows without an import").isEmpty();
    }

    private static boolean uses(PackageMatcher from, PackageMatcher to) {
        return CLASSES.stream()
                .filter(c -> from.matches(c.getPackageName()))
                .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                .anyMatch(d -> to.matches(d.getTargetClass().getPackageName()));
    }

    /** Each library stays where it is needed; the toolkits above all. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "javafx..               | slabfield.desktop..",
                "java.awt..             | slabfield.figure.. slabfield.desktop.view..",
                "javax.imageio..        | slabfield.figure..",
                "org.apache.pdfbox..    | slabfield.figure.. slabfield.report..",
                "javax.swing..          |",
                "picocli..              | slabfield.cli..",
                "com.fasterxml..        | slabfield.io.. slabfield.cli.. slabfield.validation..",
                "org.ejml..             | slabfield.solve..",
                "org.locationtech.jts.. | slabfield.model.. slabfield.network.. slabfield.advice.. slabfield.siting.. slabfield.desktop.viewmodel.."
            })
    void libraryStaysInItsPackages(String library, String packages) {
        String[] allowed = packages == null ? new String[] {} : packages.split(" ");
        noClasses()
                .that()
                .resideOutsideOfPackages(allowed)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .check(CLASSES);
    }

    @Test
    void viewModelsRunWithoutAScreen() {
        noClasses()
                .that()
                .resideInAPackage("slabfield.desktop.viewmodel..")
                .should()
                .dependOnClassesThat(resideInAPackage("javafx..")
                        .and(JavaClass.Predicates.resideOutsideOfPackages("javafx.beans..", "javafx.collections..")))
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    @Test
    void onlyTheFacesWriteToTheTerminal() {
        noClasses()
                .that()
                .resideOutsideOfPackages("slabfield", "slabfield.cli..", "slabfield.desktop", "slabfield.benchmark")
                .should(ACCESS_STANDARD_STREAMS)
                .check(CLASSES);
    }

    @Test
    void nothingStaticChanges() {
        fields().that().areStatic().should().beFinal().check(CLASSES);
    }

    @ParameterizedTest
    @CsvSource({"Manager", "Util", "Utils", "Helper", "Impl"})
    void noClassHasANameThatSaysNothing(String ending) {
        noClasses().should().haveSimpleNameEndingWith(ending).check(CLASSES);
    }

    @Test
    void noClassIsCalledAbstract() {
        noClasses().should().haveSimpleNameStartingWith("Abstract").check(CLASSES);
    }
}
