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
import slabfield.equipment.Sizing;
import slabfield.field.Progress;
import slabfield.io.FanCsv;
import slabfield.io.ScenarioProblems;
import slabfield.model.FanOffer;
import slabfield.model.Scenario;
import slabfield.wording.Nearest;

/** Ranks fans and compares pipes in the whole network. */
@Command(
        name = "size",
        mixinStandardHelpOptions = true,
        header = "Ranks fans and compares pipes by the vacuum they leave at the slab; worst day, season, cost.",
        description =
                "%nTries each fan of the scenario's list in the whole network, as drawn and on the worst day, and goes on"
                        + " with the smallest that holds the target. Without a list it tries invented classes and says so.%n",
        footerHeading = "%nExample: a fan from a table, in inches of water and cfm, numbers as JSON:%n",
        footer = "  slabfield size house.json --fan-csv my-fan.csv --units \"inH2O,cfm,ft\" --json sizes.json")
final class SizeVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.")
    private Path file;

    @Option(
            names = "--fan-csv",
            paramLabel = "TABLE",
            description = "Try this fan too: columns such as flow cfm, rise inH2O, power W. May be given again.")
    private List<Path> tables = new ArrayList<>();

    @Option(names = "--fan", paramLabel = "ID", description = "Go on with this fan in place of the best.")
    private Optional<String> fan = Optional.empty();

    @Option(names = "--json", paramLabel = "OUT", description = "Write all numbers as JSON; \"-\": to standard output.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--force", description = "Replace a file that is there already.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--json", json).check(file, force);
        Scenario scenario = withTables(ScenarioFile.read(file, face.standardInput()));
        if (scenario.suctionPoints().isEmpty())
            throw new Refusal(Exit.WRONG_INPUT, "The scenario has no suction point; draw one under \"suctionPoints\".");
        List<String> ids = Sizing.offers(scenario).stream().map(FanOffer::id).toList();
        if (fan.isPresent() && !ids.contains(fan.get()))
            throw new Refusal(
                    Exit.WRONG_INPUT, "--fan: there is no fan \"" + fan.get() + "\"; " + Nearest.hint(fan.get(), ids));
        Sizing sizing = Sizing.of(scenario, fan, Progress.NONE);
        if (sizing.chosen().isEmpty())
            throw new Refusal(
                    Exit.NOT_CONVERGED,
                    "No solve settled with these fans: "
                            + String.join(", ", sizing.ranking().unsolved())
                            + ". Look for values far outside the usual.");
        if (json.isPresent()) Outputs.write(json.get(), SizeJson.text(sizing), face.out());
        Shown shown = face.units().over(scenario.display());
        if (json.filter(Outputs.STANDARD::equals).isEmpty()) face.out().print(new SizePage(sizing, shown).text());
        return Exit.FINE.code();
    }

    private Scenario withTables(Scenario scenario) throws Refusal {
        List<FanOffer> fans = new ArrayList<>(scenario.equipment().fans());
        List<String> problems = new ArrayList<>();
        for (Path table : tables) {
            try {
                FanOffer offer = FanCsv.read(table);
                if (fans.stream().anyMatch(f -> f.id().equals(offer.id())))
                    problems.add(
                            "--fan-csv " + table + ": there is a fan \"" + offer.id() + "\" already; rename the file.");
                fans.add(offer);
            } catch (ScenarioProblems e) {
                problems.add(e.getMessage());
            }
        }
        if (!problems.isEmpty()) throw new Refusal(Exit.WRONG_INPUT, problems);
        return scenario.withEquipment(scenario.equipment().withFans(fans));
    }
}
