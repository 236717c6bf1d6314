package slabfield.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * What the best suggestion promises is kept: its gain in the truth lies in its 90 % range in 85 to 95 % of houses. The study
 * runs over as many houses as {@code -Dslabfield.study} says, and writes its figures to docs/studies; the suite tries the
 * first few. A long run keeps every house in target/predicted-gain.csv and goes on where it was ended; delete that after a change of
 * the method.
 */
class GainStudyTest {
    private static final int FEW = 5;
    /** First house of the study: those before it had served to work the method out. */
    private static final int FRESH = 1200;

    private static final Path STUDIES = Path.of("docs", "studies");
    private static final Path KEPT = Path.of("target", "predicted-gain.csv");
    private static final String LEFT_OUT = ",left out";

    private static double held(List<GainStudy.Outcome> outcomes) {
        return outcomes.stream().filter(GainStudy.Outcome::held).count() / (double) outcomes.size();
    }

    /** Of 5 ranges that hold 90 %, fewer than 3 are kept once in 117 times. */
    @Test
    void aFewHousesKeepThePromise() {
        List<GainStudy.Outcome> few = IntStream.range(0, FEW)
                .mapToObj(GainStudy::house)
                .flatMap(Optional::stream)
                .toList();
        assertThat(few).hasSize(FEW);
        assertThat(held(few))
                .as(few.stream().map(GainStudy::row).collect(Collectors.joining("\n")))
                .isGreaterThanOrEqualTo(0.6);
        assertThat(few)
                .as("ranges are not so wide that they hold anything")
                .anyMatch(o ->
                        o.promised().high() - o.promised().low() < o.promised().middle());
    }

    @Test
    @EnabledIfSystemProperty(named = "slabfield.study", matches = "\\d+")
    void wholeStudy() throws IOException {
        List<String> rows = Files.exists(KEPT) ? new ArrayList<>(Files.readAllLines(KEPT)) : new ArrayList<>();
        Set<String> done =
                rows.stream().map(r -> r.substring(0, r.indexOf(','))).collect(Collectors.toSet());
        int wanted = Integer.getInteger("slabfield.study");
        for (int k = FRESH; k < FRESH + wanted; k++) {
            if (done.contains(String.valueOf(k))) continue;
            String row = GainStudy.house(k).map(GainStudy::row).orElse(k + LEFT_OUT);
            Files.writeString(KEPT, row + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            rows.add(row);
            write(rows);
        }
        assertThat(write(rows)).isBetween(0.85, 0.95);
    }

    /** Writes page and table; tells the share of ranges that held. */
    private static double write(List<String> rows) throws IOException {
        List<String> fitted = rows.stream().filter(r -> !r.endsWith(LEFT_OUT)).toList();
        double part = fitted.stream().filter(r -> r.endsWith(",yes")).count() / (double) fitted.size(),
                error = Math.sqrt(0.9 * 0.1 / fitted.size());
        Files.writeString(
                STUDIES.resolve("predicted-gain.csv"), GainStudy.HEADER + "\n" + String.join("\n", fitted) + "\n");
        Files.writeString(
                STUDIES.resolve("predicted-gain.md"),
                String.format(
                        Locale.ROOT,
                        "# Is the predicted gain kept?%n%nWritten by `mvn test -Dtest=GainStudyTest -Dslabfield.study=200`. What is"
                                + " drawn, what is true and how it is read stands in `GainStudy`.%n%n- houses tried, from number %d:"
                                + " %d, of which fitted, and solved with the suggestion done: %d%n- true gain of the best suggestion in its 90 %% range: in %.1f %% of"
                                + " houses%n- standard error of that share where it is 90 %%: %.1f %%%n%nOne row for each house is in"
                                + " [predicted-gain.csv](predicted-gain.csv).%n",
                        FRESH,
                        rows.size(),
                        fitted.size(),
                        100 * part,
                        100 * error));
        return part;
    }
}
