package slabfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import slabfield.advice.Advisor;
import slabfield.advice.Suggestion;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/** Tries measures and ranks them. */
@Command(
        name = "suggest",
        mixinStandardHelpOptions = true,
        header = "Tries sealing and further suction points one by one and ranks what they gain.",
        description = "%nEach measure is solved by itself; gains do not add up.%n",
        footerHeading = "%nExample: the five best measures, in inches of water and cfm:%n",
        footer = "  slabfield suggest house.json --top 5 --units \"inH2O,cfm,ft\"")
final class SuggestVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(names = "--top", paramLabel = "N", defaultValue = "10", description = "How many to list (${DEFAULT-VALUE}).")
    private int top;

    @Option(names = "--json", paramLabel = "OUT", description = "Write them as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Option(names = "--progress", description = "Show how far it is, also where no terminal seems to watch.")
    private boolean progress;

    @Override
    public Integer call() throws Refusal {
        if (top < 1) throw new ParameterException(spec.commandLine(), "--top " + top + ": give a number from 1.");
        new Outputs().add("--json", json).check(file, force);
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        Result base = SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        if (base instanceof Result.Unsolved unsolved) throw new Refusal(Exit.NOT_CONVERGED, unsolved.reason());
        List<Suggestion> all = Advisor.suggest(scenario, watch());
        List<Suggestion> best = all.subList(0, Math.min(top, all.size()));
        if (json.isPresent()) Outputs.write(json.get(), JsonPages.suggestions(scenario, best), face.out());
        Shown shown = face.units().over(scenario.display());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out().print(new SuggestPage(scenario, (Result.Solved) base, best, all.size(), shown).text());
        return Exit.FINE.code();
    }

    private Progress watch() {
        return progress || face.onTerminal() ? new Counter(face.err()) : Progress.NONE;
    }

    /** Counts solves on one line, from several threads. */
    private record Counter(PrintWriter err) implements Progress {
        @Override
        public void step(int done, int total, double residual) {
            synchronized (err) {
                err.print("\rtried " + done + " of " + total + (done < total ? "" : "\n"));
                err.flush();
            }
        }
    }
}
