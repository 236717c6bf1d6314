package slabfield;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.net.URL;
import java.nio.channels.NetworkChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program never goes to the network: no class can, and the verbs do not try. */
class NoNetworkTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("slabfield");

    @TempDir
    private Path folder;

    /** The only use of an address is that of a style sheet inside the program, as text. */
    @Test
    void noClassOpensAConnection() {
        noClasses()
                .should()
                .dependOnClassesThat(resideInAPackage("java.net..")
                        .and(com.tngtech.archunit.base.DescribedPredicate.not(assignableTo(URL.class))))
                .check(CLASSES);
        noClasses()
                .should()
                .dependOnClassesThat(resideInAPackage("javax.net.."))
                .check(CLASSES);
        noClasses()
                .should()
                .dependOnClassesThat(assignableTo(NetworkChannel.class))
                .check(CLASSES);
        for (String opening : List.of("openStream", "openConnection", "getContent"))
            noClasses().should().callMethod(URL.class, opening).check(CLASSES);
    }

    /** Each verb at work, in a process that ends with a fault where anything under it so much as looks up a name. */
    @Test
    void theVerbsDoNotTry() throws IOException, InterruptedException {
        assumeTrue(Runtime.version().feature() < 24, "this Java has no security hook any more");
        assertThat(said("lookup")).as("the hook itself").contains("NETWORK USED: ");
        String house = Path.of("scenarios", "tight-sand-loop.json").toString();
        String all = said(
                "solve " + house + " --cell 40cm --json " + folder.resolve("a.json") + " --csv "
                        + folder.resolve("a.csv") + " --png " + folder.resolve("a.png") + " --width 400",
                "check " + house,
                "compare " + house,
                "checklist " + house,
                "examples --write " + folder.resolve("houses"),
                "flow --diameter 3in --velocity-pressure 12Pa",
                "size scenarios/two-points-one-riser.json",
                "completion",
                "--version");
        assertThat(all.lines().filter(l -> l.contains("NETWORK USED: "))).isEmpty();
        assertThat(all.lines().filter(l -> l.startsWith("exit "))).hasSize(9).containsOnly("exit 0");
    }

    private static String said(String... commands) throws IOException, InterruptedException {
        List<String> line = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.security.manager=allow",
                "-Xmx512m",
                "-cp",
                System.getProperty("java.class.path"),
                NetworkRefused.class.getName()));
        line.addAll(List.of(commands));
        Process process = new ProcessBuilder(line).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String all = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        return all;
    }
}
