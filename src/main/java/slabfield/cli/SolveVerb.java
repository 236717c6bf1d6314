package slabfield.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.Figure;
import slabfield.figure.Figures;
import slabfield.figure.MapFigure;
import slabfield.io.AsciiGrid;
import slabfield.io.FieldCsv;
import slabfield.io.HolesCsv;
import slabfield.io.ResultWriter;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;

/** Solves one house and says what was found. */
@Command(
        name = "solve",
        mixinStandardHelpOptions = true,
        header = "Predicts the vacuum under the slab and where the air comes from.",
        description = "%nPrints the weakest place, the test holes, the suction points and the air by source;"
                + " writes the same as JSON, the field as CSV and the map as a PNG where asked.%n",
        footerHeading = "%nExample: the map and the numbers of one house, in inches of water and cfm:%n",
        footer = "  slabfield solve house.json --units \"inH2O,cfm,ft\" --png map.png --json result.json")
final class SolveVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(
            names = "--stage",
            paramLabel = "ID",
            description = "Solve the house as it stood at this stage of readings.")
    private Optional<String> stage = Optional.empty();

    @Option(
            names = "--cell",
            paramLabel = "LENGTH",
            converter = LengthReader.class,
            description = "Largest side of a grid cell, such as \"10 cm\", in place of the scenario's.")
    private Optional<Double> cell = Optional.empty();

    @Option(names = "--json", paramLabel = "OUT", description = "Write the result as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--csv", paramLabel = "OUT", description = "Write the pressure of each cell as CSV.")
    private Optional<Path> csv = Optional.empty();

    @Option(
            names = "--grid",
            paramLabel = "OUT",
            description = "Write the pressure as an ASCII grid for geographic programs.")
    private Optional<Path> grid = Optional.empty();

    @Option(names = "--holes-csv", paramLabel = "OUT", description = "Write the predictions at the test holes as CSV.")
    private Optional<Path> holes = Optional.empty();

    @Option(names = "--png", paramLabel = "OUT", description = "Write the map as a PNG; needs no display.")
    private Optional<Path> png = Optional.empty();

    @Option(names = "--svg", paramLabel = "OUT", description = "Write the map as SVG, with text as text.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--pdf", paramLabel = "OUT", description = "Write the map as a PDF of one page, with text as text.")
    private Optional<Path> pdf = Optional.empty();

    @Mixin
    private FigureOptions look;

    @Option(names = "--force", description = "Replace files even if this program did not write them.")
    private boolean force;

    @Option(names = "--quiet", description = "Print no table.")
    private boolean quiet;

    @Override
    public Integer call() throws Refusal {
        look.check();
        new Outputs()
                .add("--json", json)
                .add("--csv", csv)
                .add("--grid", grid)
                .add("--holes-csv", holes)
                .add("--png", png)
                .add("--svg", svg)
                .add("--pdf", pdf)
                .check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        Optional<Stage> at = stage.isEmpty() ? Optional.empty() : Optional.of(ScenarioFile.stage(drawn, stage.get()));
        Scenario house = at.map(s -> ScenarioFile.during(drawn, s)).orElse(drawn);
        if (cell.isPresent()) house = ScenarioFile.withCell(house, cell.get());
        Result result = SlabSolver.solve(house, Progress.NONE);
        if (json.isPresent()) Outputs.write(json.get(), ResultWriter.json(result), face.out());
        if (result instanceof Result.Unsolved unsolved) throw new Refusal(Exit.NOT_CONVERGED, unsolved.reason());
        Result.Solved solved = (Result.Solved) result;
        Shown shown = face.units().over(house.display());
        if (csv.isPresent()) Outputs.write(csv.get(), FieldCsv.text(solved.field()), face.out());
        if (grid.isPresent()) Outputs.write(grid.get(), AsciiGrid.text(solved.field()), face.out());
        if (holes.isPresent()) Outputs.write(holes.get(), HolesCsv.predicted(solved), face.out());
        figures(new MapFigure(solved, look.style(shown)));
        boolean jsonThere = json.filter(Outputs.STANDARD::equals).isPresent();
        boolean csvThere = csv.filter(Outputs.STANDARD::equals).isPresent();
        if (!quiet && !jsonThere && !csvThere) face.out().print(new SolvePage(solved, at, shown).text());
        return Exit.FINE.code();
    }

    private void figures(Figure map) throws Refusal {
        if (png.isPresent()) Outputs.write(png.get(), Figures.png(map, look.width(), look.dpi()));
        if (svg.isPresent())
            Outputs.write(svg.get(), Figures.svg(map, look.points()).getBytes(StandardCharsets.UTF_8));
        if (pdf.isPresent()) Outputs.write(pdf.get(), Figures.pdf(map, look.points()));
    }
}
