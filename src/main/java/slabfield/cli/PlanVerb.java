package slabfield.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.figure.Paper;
import slabfield.figure.PlanScale;
import slabfield.figure.PlanSheets;
import slabfield.model.Scenario;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;
import slabfield.report.PipeWords;
import slabfield.wording.Nearest;

/** Draws the plan to scale. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        header = "Draws the plan true to scale as a PDF, on as many sheets as it takes.",
        description =
                "%nHoles and suction points are also listed by two tape distances from corners. Each sheet has a ruler to"
                        + " check the printer by, and marks that match its neighbours.%n",
        footerHeading = "%nExample: a quarter of an inch to the foot on letter paper:%n",
        footer = "  slabfield plan house.json --scale \"1/4 in = 1 ft\" --paper letter --out plan.pdf")
final class PlanVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(names = "--out", required = true, paramLabel = "OUT", description = "PDF to write.")
    private Path out;

    @Option(
            names = "--scale",
            paramLabel = "SCALE",
            description =
                    "1:50, 1:100, \"1/4 in = 1 ft\" or \"1/8 in = 1 ft\" (1:50, or 1/4 in = 1 ft where lengths are in feet).")
    private Optional<String> scale = Optional.empty();

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            description = "A4, A3 or letter (A4, or letter where lengths are in feet).")
    private Optional<String> paper = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--out", Optional.of(out)).check(file, force);
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        Shown shown = face.units().over(scenario.display());
        boolean feet = shown.imperial();
        Paper size =
                paper.isPresent() ? Words.of("--paper", paper.get(), Paper.values()) : feet ? Paper.LETTER : Paper.A4;
        DoubleFunction<String> tape = feet ? Quantity::feetInches : si -> Quantity.formatDecimals(si, Unit.METRE, 2);
        List<String> pipes = PipeWords.of(scenario, shown::smallLength, tape);
        PlanSheets sheets = new PlanSheets(scenario, scale(feet), size, shown.forFigures(), tape, pipes);
        Outputs.write(out, sheets.pdf());
        return Exit.FINE.code();
    }

    private PlanScale scale(boolean feet) throws Refusal {
        if (scale.isEmpty()) return feet ? PlanScale.QUARTER_INCH : PlanScale.ONE_TO_50;
        String given = scale.get().replaceAll("\\s", "");
        List<String> words =
                Arrays.stream(PlanScale.values()).map(PlanScale::words).toList();
        for (PlanScale each : PlanScale.values())
            if (each.words().replaceAll("\\s", "").equals(given)) return each;
        throw new Refusal(
                Exit.WRONG_INPUT, "--scale: there is no \"" + scale.get() + "\"; " + Nearest.hint(scale.get(), words));
    }
}
