package slabfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.diagnosis.Diagnoser;
import slabfield.diagnosis.Diagnosis;
import slabfield.diagnosis.Explanation;
import slabfield.field.Progress;
import slabfield.fit.NotFitted;
import slabfield.model.Scenario;

/** Says what could be wrong. */
@Command(
        name = "diagnose",
        mixinStandardHelpOptions = true,
        header = "Weighs what could be wrong against the readings, and says which check would tell.",
        description =
                "%nEvery cause is a changed house, fitted to the readings of all stages together. \"Can't tell\" is an"
                        + " answer: then the check comes first that would tell the two likeliest apart.%n",
        footerHeading = "%nExample: with the checklist of what cannot be weighed:%n",
        footer = "  slabfield diagnose house.json --checklist")
final class DiagnoseVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file with readings; \"-\" reads standard input.")
    private Path file;

    @Option(names = "--checklist", description = "Also list the patterns that the model cannot weigh.")
    private boolean checklist;

    @Option(names = "--json", paramLabel = "OUT", description = "Write the result as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Option(names = "--progress", description = "Show how far it is, also where no terminal seems to watch.")
    private boolean progress;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--json", json).check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        Diagnosis diagnosis = diagnose(drawn);
        if (json.isPresent()) Outputs.write(json.get(), DiagnoseJson.of(drawn, diagnosis), face.out());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out()
                    .print(new DiagnosePage(
                                    drawn, diagnosis, checklist, face.units().over(drawn.display()))
                            .text());
        return Exit.FINE.code();
    }

    private Diagnosis diagnose(Scenario drawn) throws Refusal {
        boolean watched = progress || face.onTerminal();
        try {
            return Diagnoser.diagnose(drawn, watched ? new Counter(face.err()) : Progress.NONE);
        } catch (NotFitted e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        } finally {
            if (watched) {
                face.err().print("\n");
                face.err().flush();
            }
        }
    }

    /** Percent and explanation on one line. */
    private static final class Counter implements Diagnoser.Watch {
        private final PrintWriter err;
        private String fitting = "";
        private int percent;

        Counter(PrintWriter err) {
            this.err = err;
        }

        @Override
        public synchronized void fitting(int number, int of, Explanation explanation) {
            fitting = "fit " + number + " of " + of + ": " + explanation.cause().words();
            show();
        }

        @Override
        public synchronized void step(int done, int total, double residual) {
            int now = 100 * done / total;
            if (now == percent) return;
            percent = now;
            show();
        }

        private void show() {
            err.print(String.format(Locale.ROOT, "\r%3d %%  %-60s", percent, fitting));
            err.flush();
        }
    }
}
