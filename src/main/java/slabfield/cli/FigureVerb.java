package slabfield.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.advice.Advisor;
import slabfield.advice.Measure;
import slabfield.equipment.Sizing;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.Bounds;
import slabfield.figure.DifferenceFigure;
import slabfield.figure.Figure;
import slabfield.figure.Figures;
import slabfield.figure.MapFigure;
import slabfield.figure.MapStyle;
import slabfield.figure.ProbabilityFigure;
import slabfield.figure.Profile;
import slabfield.fit.Ensemble;
import slabfield.fit.HouseFit;
import slabfield.fit.NotFitted;
import slabfield.fit.Outlook;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.readings.Band;
import slabfield.readings.Comparison;
import slabfield.report.Curves;

/** Draws one figure of one house. */
@Command(
        name = "figure",
        mixinStandardHelpOptions = true,
        header = "Draws one figure of a house as PNG, SVG or PDF: map, difference, profile, parity and more.",
        description =
                "%nThe ending of --out says which kind of file it is. Kinds:%n  map         the predicted pressure%n"
                        + "  difference  as drawn against everything sealed, or against a --stage, on one scale%n"
                        + "  profile     along a line --from --to, with the holes near it%n"
                        + "  parity      readings of a --stage over their predictions%n"
                        + "  system      the fan against pipe and slab%n"
                        + "  frontier    vacuum at the weakest place against the air drawn from the room, for every suggestion%n"
                        + "  power       vacuum held against fan power, for every fan with a known power%n"
                        + "  probability that the target is met at each place, after a fit to the readings%n"
                        + "  season      the vacuum held through the year, and the worst day%n",
        footerHeading = "%nExample: the readings of one stage over their predictions:%n",
        footer = "  slabfield figure house.json parity --stage \"before sealing\" --out parity.svg")
final class FigureVerb implements Callable<Integer> {
    private enum Kind {
        MAP,
        DIFFERENCE,
        PROFILE,
        PARITY,
        SYSTEM,
        FRONTIER,
        POWER,
        SEASON,
        PROBABILITY
    }

    /** The same members each time. */
    private static final long SEED = 1;

    @ParentCommand
    private CommandLineFace face;

    @Parameters(index = "0", paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Parameters(index = "1", paramLabel = "KIND", description = "What to draw, one of the kinds above.")
    private String kind;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "OUT",
            description = "File to write; ends in .png, .svg or .pdf.")
    private Path out;

    @Option(names = "--stage", paramLabel = "ID", description = "Stage of readings.")
    private Optional<String> stage = Optional.empty();

    @Option(names = "--from", paramLabel = "X,Y", description = "Where a profile begins, such as \"0 ft, 14 ft\".")
    private Optional<String> from = Optional.empty();

    @Option(names = "--to", paramLabel = "X,Y", description = "Where it ends.")
    private Optional<String> to = Optional.empty();

    @Option(
            names = "--beside",
            paramLabel = "LENGTH",
            converter = LengthReader.class,
            description = "How far from a profile holes may stand (1 m).")
    private Optional<Double> beside = Optional.empty();

    @Mixin
    private FigureOptions look;

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        look.check();
        new Outputs().add("--out", Optional.of(out)).check(file, force);
        String ending = ending();
        Kind wanted = Words.of("KIND", kind, Kind.values());
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        MapStyle style = look.style(face.units().over(scenario.display()));
        Figure figure = drawn(wanted, scenario, style);
        Outputs.write(
                out,
                switch (ending) {
                    case "png" -> Figures.png(figure, look.width(), look.dpi());
                    case "svg" -> Figures.svg(figure, look.points()).getBytes(StandardCharsets.UTF_8);
                    default -> Figures.pdf(figure, look.points());
                });
        return Exit.FINE.code();
    }

    private String ending() throws Refusal {
        String name = out.getFileName().toString().toLowerCase(Locale.ROOT);
        for (String ending : List.of("png", "svg", "pdf")) if (name.endsWith("." + ending)) return ending;
        throw new Refusal(Exit.WRONG_INPUT, "--out " + out + ": end the name in .png, .svg or .pdf.");
    }

    private Figure drawn(Kind wanted, Scenario scenario, MapStyle style) throws Refusal {
        return switch (wanted) {
            case MAP ->
                new MapFigure(
                        solve(stage.isPresent() ? ScenarioFile.during(scenario, stage(scenario)) : scenario), style);
            case DIFFERENCE -> difference(scenario, style);
            case PROFILE -> profile(scenario).figure(solve(scenario), beside.orElse(1.0), style);
            case PARITY -> parity(scenario, style);
            case SYSTEM ->
                there(Curves.system(sizing(scenario), style), "no solve settled with a fan; draw a fan or list some.");
            case FRONTIER -> Curves.roomAir(scenario, solve(scenario), Advisor.suggest(scenario, Progress.NONE), style);
            case POWER ->
                there(
                        Curves.power(sizing(scenario), style),
                        "no fan has a power; give \"watts\" in its curve under \"equipment\".");
            case PROBABILITY -> probability(scenario, style);
            case SEASON ->
                there(
                        Curves.season(
                                sizing(scenario),
                                face.units().over(scenario.display()).temperatureUnit(),
                                style),
                        "the year is not known; give \"bins\" under \"house\".\"climate\".");
        };
    }

    private static Result.Solved solve(Scenario scenario) throws Refusal {
        Result result = SlabSolver.solve(scenario, Progress.NONE);
        if (result instanceof Result.Unsolved unsolved) throw new Refusal(Exit.NOT_CONVERGED, unsolved.reason());
        return (Result.Solved) result;
    }

    private Stage stage(Scenario scenario) throws Refusal {
        if (stage.isEmpty()) throw new Refusal(Exit.WRONG_INPUT, "Say of which stage, with --stage.");
        return ScenarioFile.stage(scenario, stage.get());
    }

    private Figure difference(Scenario scenario, MapStyle style) throws Refusal {
        if (stage.isEmpty())
            return new DifferenceFigure(
                    solve(scenario), solve(new Measure.SealAll().apply(scenario)), "everything open sealed", style);
        Stage at = stage(scenario);
        return new DifferenceFigure(
                solve(ScenarioFile.during(scenario, at)),
                solve(scenario),
                "stage \"" + at.id() + "\" against as drawn",
                style);
    }

    private Figure parity(Scenario scenario, MapStyle style) throws Refusal {
        Stage at = stage(scenario);
        Comparison comparison = Comparison.of(scenario, at, solve(ScenarioFile.during(scenario, at)), Band.USUAL);
        return there(
                Curves.parity(scenario.name(), comparison, style),
                "no hole of this stage has a reading and a prediction.");
    }

    private static Figure probability(Scenario scenario, MapStyle style) throws Refusal {
        try {
            Ensemble ensemble = Ensemble.of(HouseFit.fit(scenario, Progress.NONE), Ensemble.USUAL, SEED, Progress.NONE);
            Outlook outlook = ensemble.outlook(UnaryOperator.identity(), Progress.NONE);
            double target = scenario.target().vacuum();
            String what = "a vacuum of at least " + style.units().round(target) + " "
                    + style.units().pressureSymbol();
            return new ProbabilityFigure(
                    outlook.forecasts().get(0).solved(),
                    outlook.chanceOf(target),
                    what,
                    outlook.forecasts().size()
                            + " houses that explain the readings about as well were solved; what none of them holds is"
                            + " not in it.",
                    style);
        } catch (NotFitted e) {
            throw new Refusal(Exit.WRONG_INPUT, "There is nothing to draw: " + e.getMessage());
        }
    }

    private static Sizing sizing(Scenario scenario) throws Refusal {
        if (scenario.suctionPoints().isEmpty())
            throw new Refusal(Exit.WRONG_INPUT, "The scenario has no suction point; draw one under \"suctionPoints\".");
        return Sizing.of(scenario, Optional.empty(), Progress.NONE);
    }

    private static Figure there(Optional<Figure> figure, String why) throws Refusal {
        if (figure.isEmpty()) throw new Refusal(Exit.WRONG_INPUT, "There is nothing to draw: " + why);
        return figure.get();
    }

    /** The line asked for, or else the longer middle line of the plan. */
    private Profile profile(Scenario scenario) throws Refusal {
        Bounds all = Bounds.of(scenario);
        boolean across = all.width() >= all.height();
        double middle = across ? (all.bottom() + all.top()) / 2 : (all.left() + all.right()) / 2;
        Point begin = across ? new Point(all.left(), middle) : new Point(middle, all.bottom());
        Point end = across ? new Point(all.right(), middle) : new Point(middle, all.top());
        if (from.isPresent()) begin = place("--from", from.get());
        if (to.isPresent()) end = place("--to", to.get());
        if (!(begin.distanceTo(end) > 0))
            throw new Refusal(Exit.WRONG_INPUT, "--from and --to are the same place; give two.");
        return new Profile(begin, end);
    }

    private static Point place(String option, String text) throws Refusal {
        String[] parts = text.split(",");
        try {
            if (parts.length == 2)
                return new Point(
                        Quantity.parse(parts[0], Dimension.LENGTH), Quantity.parse(parts[1], Dimension.LENGTH));
        } catch (NotAQuantity e) {
            throw new Refusal(Exit.WRONG_INPUT, option + ": " + e.getMessage());
        }
        throw new Refusal(Exit.WRONG_INPUT, option + " \"" + text + "\": write two lengths such as \"0 ft, 14 ft\".");
    }
}
