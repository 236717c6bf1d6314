package slabfield.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import slabfield.validation.PrintedReports.ClaimLine;
import slabfield.validation.PrintedReports.Line;
import slabfield.validation.PrintedReports.Report;

class PrintedReportsTest {
    private static final String REPORT = """
            # 0099 A case

            **Question.** Does it?

            **Missed, and known to be:** It is wrong here.

            | number | unit | source | ours | error | tolerance | | accepted |
            | --- | --- | ---: | ---: | ---: | ---: | --- | --- |
            | first | Pa | 1 | 1.2 | +20.0 % | 5 % | **RED** | stands |
            | second | Pa | 0 to 2 | 1 |  | span | agrees | was 3 |

            | number | 10 cm | 5 cm | 2.5 cm | order |
            | --- | ---: | ---: | ---: | ---: |
            | first | 1 | 1 | 1 | 2.00 |

            ## What this does not show

            Much.
            """;

    @Test
    void aReportIsReadAsItIsWritten() {
        Report report = PrintedReports.report(REPORT);
        assertThat(report.question()).isEqualTo("Does it?");
        assertThat(report.missed()).contains("It is wrong here.");
        assertThat(report.doesNotShow()).isEqualTo("Much.");
        assertThat(report.claims())
                .containsExactly(
                        new ClaimLine("first", "Pa", "1", "1.2", "+20.0 %", "5 %", "RED"),
                        new ClaimLine("second", "Pa", "0 to 2", "1", "", "span", "agrees"));
        assertThat(report.claims()).extracting(ClaimLine::agrees).containsExactly(false, true);
    }

    /** The packaged index names the same cases as the folder, each with its report and numbers. */
    @Test
    void theProgramBringsAllCasesOfTheFolder() throws IOException {
        Path folder = Path.of("validation");
        PrintedReports.Index index = PrintedReports.index();
        assertThat(index.cases())
                .extracting(l -> l.report().replace("/report.md", ""))
                .containsExactlyInAnyOrderElementsOf(Validation.folders(folder).stream()
                        .map(f -> f.getFileName().toString())
                        .toList());
        assertThat(index.summary()).startsWith(index.cases().size() + " cases");
        int numbers = 0;
        for (Line line : index.cases()) {
            Report report = PrintedReports.report(line);
            assertThat(report.question()).as(line.title()).isNotEmpty();
            assertThat(report.doesNotShow()).as(line.title()).isNotEmpty();
            boolean allAgree = report.claims().stream().allMatch(ClaimLine::agrees);
            assertThat(allAgree).as(line.title()).isEqualTo(!line.verdict().equals(Outcome.Verdict.RED.word()));
            numbers += report.claims().size();
        }
        assertThat(index.summary()).contains(" " + numbers + " numbers");
        assertThat(Files.readString(folder.resolve("README.md"))).contains(index.summary());
    }
}
