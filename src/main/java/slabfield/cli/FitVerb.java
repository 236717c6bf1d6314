package slabfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import slabfield.field.Progress;
import slabfield.fit.Ensemble;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.Identifiability;
import slabfield.fit.Interval;
import slabfield.fit.NotFitted;
import slabfield.fit.Outlook;
import slabfield.fit.Profile;
import slabfield.model.Scenario;

/** Finds the house that explains the readings. */
@Command(
        name = "fit",
        mixinStandardHelpOptions = true,
        header = "Finds fill and leaks that explain the readings of all stages, and says what they cannot tell.",
        description =
                "%nUnknown are every fill, every opening, wall tops and foot, the soil and suspected barriers. What"
                        + " you drew is where the search starts and what it leans on where the readings say nothing.%n",
        footerHeading = "%nExample: with the result as JSON:%n",
        footer = "  slabfield fit house.json --json found.json")
final class FitVerb implements Callable<Integer> {
    private static final int FEWEST = 10;
    private static final long SEED = 1;
    private static final double RANGE = 0.9;

    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(
            names = "--houses",
            paramLabel = "N",
            defaultValue = "80",
            description =
                    "How many houses that explain the readings to draw for the ranges (${DEFAULT-VALUE}); 0: none.")
    private int houses;

    @Option(
            names = "--profile",
            description =
                    "Also find each unknown's range by moving it alone and fitting the others anew, which takes longer.")
    private boolean profile;

    @Option(names = "--json", paramLabel = "OUT", description = "Write the result as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Option(names = "--progress", description = "Show how far it is, also where no terminal seems to watch.")
    private boolean progress;

    @Override
    public Integer call() throws Refusal {
        if (houses != 0 && houses < FEWEST)
            throw new ParameterException(
                    spec.commandLine(), "--houses " + houses + ": give 0 or a number from " + FEWEST + ".");
        new Outputs().add("--json", json).check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        Fitted fit = fitted(drawn);
        Identifiability known = Identifiability.of(fit);
        Map<Integer, Interval> profiles = profile ? Profile.intervals(fit, RANGE, watch("unknown")) : Map.of();
        Optional<Ensemble> ensemble =
                houses == 0 ? Optional.empty() : Optional.of(Ensemble.of(fit, houses, SEED, watch("house")));
        Optional<Outlook> outlook = ensemble.map(e -> e.outlook(UnaryOperator.identity(), watch("solved")));
        if (json.isPresent()) Outputs.write(json.get(), FitJson.of(fit, known, profiles, outlook), face.out());
        Shown shown = face.units().over(drawn.display());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out().print(new FitPage(fit, known, profiles, ensemble, outlook, shown).text());
        return Exit.FINE.code();
    }

    private Fitted fitted(Scenario drawn) throws Refusal {
        try {
            return HouseFit.fit(drawn, watch("step"));
        } catch (NotFitted e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        }
    }

    private Progress watch(String what) {
        return progress || face.onTerminal() ? new Counter(face.err(), what) : Progress.NONE;
    }

    /** Counts on one line, from several threads. */
    private record Counter(PrintWriter err, String what) implements Progress {
        @Override
        public void step(int done, int total, double residual) {
            synchronized (err) {
                err.print("\r" + what + " " + done + (total > 0 ? " of " + total : "") + (done == total ? "\n" : ""));
                err.flush();
            }
        }
    }
}
