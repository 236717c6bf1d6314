package slabfield.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * One test for each folder of the validation set, its control included. A case that is known to miss must miss: once it
 * agrees, its reason is to be taken away.
 */
class ValidationCasesTest {
    private static final Path FOLDER = Path.of("validation");
    private static final double BALANCE = 1e-9;

    @TestFactory
    Stream<DynamicTest> cases() throws IOException {
        return Validation.folders(FOLDER).stream()
                .map(f -> DynamicTest.dynamicTest(f.getFileName().toString(), () -> holds(ValidationCase.read(f))));
    }

    private static void holds(ValidationCase of) {
        Outcome outcome = CaseRunner.run(of, false);
        assertThat(outcome.problem()).as("problem").isEmpty();
        assertThat(outcome.control().works())
                .as(
                        "the control \"%s\" turns it red %s",
                        of.control(), outcome.control().broke().orElse(""))
                .isTrue();
        assertThat(outcome.imbalance()).as("mass imbalance").isLessThan(BALANCE);
        assertThat(failing(outcome, false))
                .as("numbers that moved since they were accepted")
                .isEmpty();
        if (of.missed().isPresent())
            assertThat(outcome.verdict()).as("known miss").isEqualTo(Outcome.Verdict.RED);
        else
            assertThat(failing(outcome, true))
                    .as("numbers outside their tolerance")
                    .isEmpty();
    }

    private static String failing(Outcome outcome, boolean source) {
        return outcome.checks().stream()
                .filter(c -> source ? !c.agrees() : !c.stands())
                .map(c -> String.format(
                        Locale.ROOT,
                        "%s: ours %.10g, allowed %.10g to %.10g, accepted %s",
                        c.claim().name(),
                        c.ours(),
                        c.claim().low(),
                        c.claim().high(),
                        c.baseline()))
                .collect(Collectors.joining("\n"));
    }

    /** The committed pages speak of the cases that are there. */
    @Test
    void everyCaseHasItsPageAndItsLineInTheIndex() throws IOException {
        String index = Files.readString(FOLDER.resolve("README.md"));
        assertThat(Validation.folders(FOLDER)).hasSizeGreaterThanOrEqualTo(40).allSatisfy(f -> {
            assertThat(f.resolve("report.md")).exists();
            assertThat(f.resolve("figure.svg")).exists();
            assertThat(index).contains("](" + f.getFileName() + "/report.md)");
        });
    }
}
