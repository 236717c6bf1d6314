package slabfield.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import slabfield.advice.Houses;
import slabfield.field.Progress;
import slabfield.model.Scenario;
import slabfield.siting.NextHole;

/** Says where to drill the next test hole. */
@Command(
        name = "next-hole",
        mixinStandardHelpOptions = true,
        header = "Says where the next test hole would settle most whether the target is met.",
        description = {
            "%nPlausible houses are solved: those that agree with the readings where there are any, else those that the usual"
                    + " ranges of fill and leaks allow. The places are outside areas kept from drilling and away from edges,"
                    + " footings, openings and other holes.%n"
        },
        footerHeading = "%nExample: the three best places:%n",
        footer = "  slabfield next-hole house.json --top 3")
final class NextHoleVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(names = "--top", paramLabel = "N", defaultValue = "3", description = "How many places (${DEFAULT-VALUE}).")
    private int top;

    @Option(names = "--assumed", description = "Leave the readings aside.")
    private boolean assumed;

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
        Progress watch = SolveCounter.where(progress || face.onTerminal(), face.err());
        boolean fromReadings = !assumed && PlausibleHouses.hasReadings(scenario);
        Houses houses = fromReadings
                ? PlausibleHouses.fromReadings(scenario, NextHole.USUAL_HOUSES, watch)
                : PlausibleHouses.assumed(scenario, NextHole.USUAL_HOUSES);
        NextHole next;
        try {
            next = NextHole.suggest(houses, top, watch);
        } catch (IllegalStateException e) {
            throw new Refusal(Exit.NOT_CONVERGED, "No place can be named: " + e.getMessage() + ".");
        }
        SolveCounter.end(watch);
        if (json.isPresent()) Outputs.write(json.get(), AdviceJson.nextHole(scenario, next), face.out());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out().print(new NextHolePage(scenario, next, face.units().over(scenario.display())).text());
        return Exit.FINE.code();
    }
}
