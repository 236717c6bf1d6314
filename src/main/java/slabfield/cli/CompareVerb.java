package slabfield.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;
import slabfield.readings.Band;
import slabfield.readings.Comparison;

/** Holds readings against the prediction. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        header = "Holds the readings of each stage against the prediction, hole by hole.",
        description = "%nSolves the house as it stood at each stage that has readings, and says which holes differ by"
                + " more than meter, unrest and model explain.%n",
        footerHeading = "%nExample: the readings taken after sealing:%n",
        footer = "  slabfield compare house.json --stage \"after sealing\"")
final class CompareVerb implements Callable<Integer> {
    /** One stage, solved. */
    record Compared(Stage stage, Result result, Optional<Comparison> comparison) {}

    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(names = "--stage", paramLabel = "ID", description = "This stage alone.")
    private Optional<String> stage = Optional.empty();

    @Option(
            names = "--json",
            paramLabel = "OUT",
            description = "Write the comparison as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--json", json).check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        List<Compared> all = stages(drawn).stream().map(s -> compare(drawn, s)).toList();
        if (json.isPresent()) Outputs.write(json.get(), JsonPages.comparisons(drawn, all), face.out());
        Shown shown = face.units().over(drawn.display());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out().print(new ComparePage(drawn, all, shown).text());
        List<String> unsolved = new ArrayList<>();
        for (Compared one : all)
            if (one.result() instanceof Result.Unsolved u)
                unsolved.add("Stage \"" + one.stage().id() + "\": " + u.reason());
        if (!unsolved.isEmpty()) throw new Refusal(Exit.NOT_CONVERGED, unsolved);
        return Exit.FINE.code();
    }

    private List<Stage> stages(Scenario drawn) throws Refusal {
        List<Stage> asked = stage.isEmpty() ? drawn.stages() : List.of(ScenarioFile.stage(drawn, stage.get()));
        List<Stage> read = asked.stream()
                .filter(s -> !s.holes().isEmpty() || !s.systems().isEmpty())
                .toList();
        if (read.isEmpty())
            throw new Refusal(
                    Exit.WRONG_INPUT,
                    stage.map(s -> "Stage \"" + s + "\" holds no readings.")
                            .orElse("The scenario holds no readings to compare; put them under \"stages\"."));
        return read;
    }

    private static Compared compare(Scenario drawn, Stage stage) {
        Result result = SlabSolver.solve(drawn.during(stage), Progress.NONE);
        Optional<Comparison> comparison = result instanceof Result.Solved solved
                ? Optional.of(Comparison.of(drawn, stage, solved, Band.USUAL))
                : Optional.empty();
        return new Compared(stage, result, comparison);
    }
}
