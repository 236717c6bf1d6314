package slabfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import slabfield.io.RecordFile;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;
import slabfield.model.Stage;
import slabfield.safety.JobRecord;
import slabfield.wording.Nearest;

/** Reads the scenario that a verb is to work on. */
final class ScenarioFile {
    private static final Path STANDARD = Path.of("-");

    private ScenarioFile() {}

    /**
     * Reads a file.
     *
     * @param file its name, or "-" for standard input
     */
    static Scenario read(Path file, InputStream standardInput) throws Refusal {
        try {
            return file.equals(STANDARD) ? readStream(standardInput) : ScenarioReader.read(file);
        } catch (ScenarioProblems e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        }
    }

    private static Scenario readStream(InputStream in) throws Refusal, ScenarioProblems {
        try {
            byte[] bytes = in.readNBytes(ScenarioReader.LARGEST_FILE + 1);
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return ScenarioReader.read(text, "standard input");
        } catch (CharacterCodingException e) {
            throw new Refusal(Exit.WRONG_INPUT, "standard input is not UTF-8 text; convert it to that encoding");
        } catch (IOException e) {
            throw new Refusal(Exit.WRONG_INPUT, "standard input cannot be read");
        }
    }

    /** The stage of that name. */
    static Stage stage(Scenario scenario, String id) throws Refusal {
        List<String> ids = scenario.stages().stream().map(Stage::id).toList();
        return scenario.stage(id)
                .orElseThrow(() -> new Refusal(
                        Exit.WRONG_INPUT, "--stage: there is no stage \"" + id + "\"; " + Nearest.hint(id, ids)));
    }

    /** The house as it stood at a stage, with that stage's readings alone. */
    static Scenario during(Scenario scenario, Stage stage) {
        Stage alone = new Stage(
                stage.id(),
                stage.kind(),
                Map.of(),
                Map.of(),
                stage.holes(),
                stage.systems(),
                stage.time(),
                stage.notes());
        return scenario.during(stage).withStages(List.of(alone));
    }

    /** The scenario on another grid. */
    static Scenario withCell(Scenario scenario, double cell) throws Refusal {
        if (!(cell > 0)) throw new Refusal(Exit.WRONG_INPUT, "--cell: a cell is larger than 0");
        List<Point> corners = scenario.slabs().stream()
                .map(Slab::outline)
                .flatMap(List::stream)
                .toList();
        var x = corners.stream().mapToDouble(Point::x).summaryStatistics();
        var y = corners.stream().mapToDouble(Point::y).summaryStatistics();
        double cells = Math.ceil((x.getMax() - x.getMin()) / cell) * Math.ceil((y.getMax() - y.getMin()) / cell);
        long most = ScenarioReader.mostCells(scenario.layer());
        if (cells > most)
            throw new Refusal(
                    Exit.WRONG_INPUT,
                    String.format(
                            Locale.ROOT,
                            "--cell: this makes a grid of %.0f cells, and this computer's memory takes about %d;"
                                    + " give a larger cell",
                            cells,
                            most));
        return scenario.withCellSize(cell);
    }

    /** The job record that stands beside a scenario, or an empty one. */
    static JobRecord record(Path file, Scenario scenario) throws Refusal {
        Path place = file.equals(STANDARD) ? file : RecordFile.beside(file);
        if (file.equals(STANDARD) || !Files.exists(place)) return JobRecord.empty(scenario.name());
        try {
            return RecordFile.read(place);
        } catch (ScenarioProblems e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        }
    }
}
