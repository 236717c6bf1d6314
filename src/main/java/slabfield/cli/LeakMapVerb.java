package slabfield.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.field.Progress;
import slabfield.fit.Fitted;
import slabfield.model.Scenario;
import slabfield.siting.LeakMap;

/** Says where one leak more would explain the readings. */
@Command(
        name = "leak-map",
        mixinStandardHelpOptions = true,
        header = "Says where a leak that nobody drew would explain the readings, or that they do not say.",
        description = {
            "%nThe house is fitted to the readings of all stages; then one leak more is tried in every cell. Its gain is the"
                    + " logarithm of how much more likely it makes the readings. Many leaks can look like one.%n"
        },
        footerHeading = "%nExample, with the whole map as numbers:%n",
        footer = "  slabfield leak-map house.json --json leaks.json")
final class LeakMapVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(names = "--json", paramLabel = "OUT", description = "Write the map as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--json", json).check(file, force);
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        Fitted fitted = PlausibleHouses.fitted(scenario, Progress.NONE);
        LeakMap map;
        try {
            map = LeakMap.of(fitted, Progress.NONE);
        } catch (IllegalStateException e) {
            throw new Refusal(Exit.NOT_CONVERGED, "No leak map can be drawn: " + e.getMessage() + ".");
        }
        if (json.isPresent()) Outputs.write(json.get(), AdviceJson.leakMap(scenario, map), face.out());
        if (json.filter(Outputs.STANDARD::equals).isEmpty())
            face.out().print(new LeakMapPage(scenario, map, face.units().over(scenario.display())).text());
        return Exit.FINE.code();
    }
}
