package slabfield.cli;

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
import slabfield.advice.Combinations;
import slabfield.advice.Houses;
import slabfield.advice.Suggestion;
import slabfield.advice.TestCover;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/** Tries measures and ranks them. */
@Command(
        name = "suggest",
        mixinStandardHelpOptions = true,
        header =
                "Tries sealing, suction points, pits, tile, footings, pipe and fan one by one and ranks what they gain.",
        description = {
            "%nEach measure is solved by itself; gains do not add up. --plans puts measures together, step by step, and keeps"
                    + " the plans that no other beats.",
            "Without --band the numbers are those of one house, as drawn. With it each gain has the range that holds it nine"
                    + " times of ten, and the odds of meeting the target.%n"
        },
        footerHeading = "%nExample: the five best measures, in inches of water and cfm:%n",
        footer = "  slabfield suggest house.json --top 5 --units \"inH2O,cfm,ft\"")
final class SuggestVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "10",
            description = "How many to list (${DEFAULT-VALUE}).")
    private int top;

    @Option(
            names = "--band",
            paramLabel = "FROM",
            description =
                    "Ranges and odds. readings: fits the readings first; assumed: from the usual ranges of fill and leaks.")
    private Optional<BandFrom> band = Optional.empty();

    @Option(
            names = "--plans",
            paramLabel = "N",
            description = "Also put up to N measures together; shows vacuum against room air and power.")
    private Optional<Integer> plans = Optional.empty();

    @Option(names = "--covers", description = "Also show what a temporary cover over each opening would tell.")
    private boolean covers;

    @Option(names = "--json", paramLabel = "OUT", description = "Write them as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Option(names = "--progress", description = "Show how far it is, also where no terminal seems to watch.")
    private boolean progress;

    @Override
    public Integer call() throws Refusal {
        if (top < 1) throw new ParameterException(spec.commandLine(), "--top " + top + ": give a number from 1.");
        if (plans.filter(n -> n < 1).isPresent())
            throw new ParameterException(spec.commandLine(), "--plans " + plans.get() + ": give a number from 1.");
        new Outputs().add("--json", json).check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        Progress watch = SolveCounter.where(progress || face.onTerminal(), face.err());
        Optional<Houses> houses = houses(drawn, watch);
        Scenario scenario = houses.map(Houses::best).orElse(drawn);
        Result base = SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        if (base instanceof Result.Unsolved unsolved) throw new Refusal(Exit.NOT_CONVERGED, unsolved.reason());
        List<Suggestion> all =
                houses.isPresent() ? Advisor.suggest(houses.get(), top, watch) : Advisor.suggest(scenario, watch);
        Advice advice = new Advice(
                (Result.Solved) base,
                all.subList(0, Math.min(top, all.size())),
                all.size(),
                covers ? Advisor.covers(scenario, watch) : List.of(),
                plans.map(n -> Combinations.search(scenario, n, watch)));
        SolveCounter.end(watch);
        if (json.isPresent()) Outputs.write(json.get(), AdviceJson.suggestions(advice), face.out());
        Shown shown = face.units().over(drawn.display());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out().print(new SuggestPage(advice, PlausibleHouses.hasReadings(drawn), shown).text());
        return Exit.FINE.code();
    }

    private Optional<Houses> houses(Scenario drawn, Progress watch) throws Refusal {
        if (band.isEmpty()) return Optional.empty();
        return Optional.of(
                band.get() == BandFrom.readings
                        ? PlausibleHouses.fromReadings(drawn, Advisor.USUAL_HOUSES, watch)
                        : PlausibleHouses.assumed(drawn, Advisor.USUAL_HOUSES));
    }

    /** Where ranges come from, in the words of the option. */
    enum BandFrom {
        readings,
        assumed
    }

    /**
     * All that was found.
     *
     * @param base the house without any measure
     * @param best those to list, best first
     * @param tried how many there are in all
     */
    record Advice(
            Result.Solved base,
            List<Suggestion> best,
            int tried,
            List<TestCover> covers,
            Optional<Combinations> plans) {}
}
