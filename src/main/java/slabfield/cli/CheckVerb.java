package slabfield.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Reads scenario files and says what is wrong with them. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        header = "Reads scenario files and lists all their problems; solves nothing.",
        footerHeading = "%nExample:%n",
        footer = "  slabfield check house.json other-house.json")
final class CheckVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Scenario files; \"-\" reads standard input.")
    private List<Path> files;

    @Override
    public Integer call() throws Refusal {
        List<String> problems = new ArrayList<>();
        for (Path file : files) {
            try {
                ScenarioFile.read(file, face.standardInput());
                face.out().println(CommandLineFace.printable(file + ": no problems"));
            } catch (Refusal e) {
                problems.add(e.getMessage());
            }
        }
        if (!problems.isEmpty()) throw new Refusal(Exit.WRONG_INPUT, problems);
        return Exit.FINE.code();
    }
}
