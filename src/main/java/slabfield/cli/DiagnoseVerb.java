package slabfield.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.diagnosis.Diagnoser;
import slabfield.diagnosis.Diagnosis;
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

    private static Diagnosis diagnose(Scenario drawn) throws Refusal {
        try {
            return Diagnoser.diagnose(drawn, Progress.NONE);
        } catch (NotFitted e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        }
    }
}
