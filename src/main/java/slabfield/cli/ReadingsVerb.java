package slabfield.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import slabfield.io.ReadingsCsv;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioWriter;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.readings.Finding;
import slabfield.readings.ReadingChecks;

/** Readings from a table into a scenario, and out of it. */
@Command(
        name = "readings",
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "import|export",
        header = "Takes readings from a table into a scenario, or writes them as a table.",
        footerHeading = "%nExample: readings as a table, and a filled table back into a scenario:%n",
        footer = {
            "  slabfield readings export house.json --csv readings.csv",
            "  slabfield readings import house.json readings.csv --out house-read.json"
        })
final class ReadingsVerb implements Runnable {
    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say which way: import or export.");
    }

    /** Takes them in. */
    @Command(
            name = "import",
            mixinStandardHelpOptions = true,
            description =
                    "%nReadings at the same place in the same stage are replaced. What is odd about the new readings is"
                            + " said at once.%n")
    int importTable(
            @Parameters(paramLabel = "FILE", description = "Scenario file.") Path file,
            @Parameters(
                            paramLabel = "TABLE",
                            description = "Table with units in its headings; \"-\" reads standard input.")
                    Path table,
            @Option(names = "--stage", paramLabel = "ID", description = "Stage of rows that name none.")
                    Optional<String> stage,
            @Option(names = "--out", paramLabel = "OUT", required = true, description = "Scenario with the readings.")
                    Path out,
            @Option(names = "--force", description = "Replace a file even if this program did not write it.")
                    boolean force)
            throws Refusal {
        new Outputs().add("--out", Optional.of(out)).check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        Scenario filled = filled(drawn, table, stage);
        Outputs.write(out, ScenarioWriter.toJson(filled), face.out());
        if (out.equals(Outputs.STANDARD)) return Exit.FINE.code();
        Page page = new Page().title(filled.name());
        for (Stage each : filled.stages()) {
            if (drawn.stages().contains(each)) continue;
            page.part("Stage \"" + each.id() + "\": " + each.holes().size() + " holes, "
                    + each.systems().size() + " suction points");
            page.list(ReadingChecks.of(filled, each, Optional.empty()).stream()
                    .map(Finding::sentence)
                    .toList());
        }
        face.out().print(page.text("Written to " + out + ".").cautioned());
        return Exit.FINE.code();
    }

    private Scenario filled(Scenario drawn, Path table, Optional<String> stage) throws Refusal {
        try {
            boolean standard = table.equals(Outputs.STANDARD);
            String text = standard
                    ? new String(face.standardInput().readAllBytes(), StandardCharsets.UTF_8)
                    : ReadingsCsv.file(table);
            return ReadingsCsv.into(drawn, stage, text, standard ? "standard input" : table.toString());
        } catch (ScenarioProblems e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        } catch (IOException e) {
            throw new Refusal(Exit.WRONG_INPUT, "standard input cannot be read");
        }
    }

    /** Writes them out. */
    @Command(
            name = "export",
            mixinStandardHelpOptions = true,
            description = "%nOne row for each hole and suction point of each stage, in SI units.%n")
    int exportTable(
            @Parameters(paramLabel = "FILE", description = "Scenario file; \"-\" reads standard input.") Path file,
            @Option(names = "--stage", paramLabel = "ID", description = "This stage alone.") Optional<String> stage,
            @Option(
                            names = "--csv",
                            paramLabel = "OUT",
                            defaultValue = "-",
                            description = "Where to; standard output without it.")
                    Path csv,
            @Option(names = "--decimal-comma", description = "Decimal commas, and semicolons between cells.")
                    boolean comma,
            @Option(names = "--force", description = "Replace a file even if this program did not write it.")
                    boolean force)
            throws Refusal {
        new Outputs().add("--csv", Optional.of(csv)).check(file, force);
        Scenario drawn = ScenarioFile.read(file, face.standardInput());
        List<Stage> stages = stage.isEmpty() ? drawn.stages() : List.of(ScenarioFile.stage(drawn, stage.get()));
        Outputs.write(csv, ReadingsCsv.text(stages, comma), face.out());
        return Exit.FINE.code();
    }
}
