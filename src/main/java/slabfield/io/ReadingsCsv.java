package slabfield.io;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import slabfield.model.FlowReading;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;

/**
 * Readings as a table: one row for each hole or suction point of each stage, units in the heading. Cells stand between
 * commas, semicolons or tabs; decimals have a point or a comma. docs/readings-table.md describes it.
 */
public final class ReadingsCsv {
    private static final int LARGEST_FILE = 1024 * 1024;
    /** How every table that this program writes with commas begins. */
    static final String START = "stage,kind,hole,suction point,";

    private static final String END = "\r\n";

    private ReadingsCsv() {}

    /**
     * The text of a table in a file.
     *
     * @throws ScenarioProblems where it cannot be read
     */
    public static String file(Path file) throws ScenarioProblems {
        try {
            if (Files.size(file) > LARGEST_FILE)
                throw problem(file, "the table is larger than 1 MB, which no table of readings is");
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
                    .toString();
        } catch (CharacterCodingException e) {
            throw problem(file, "the table is not UTF-8 text; save it again as \"CSV UTF-8\"");
        } catch (IOException e) {
            throw problem(file, "the table cannot be read; check that it is there and that you may open it");
        }
    }

    private static ScenarioProblems problem(Path file, String message) {
        return new ScenarioProblems(file.toString(), List.of(new FileProblem(file.toString(), 0, "", message)));
    }

    /**
     * Takes readings from a table into a scenario. A reading at the same place in the same stage is replaced; a stage that is
     * not there yet is added.
     *
     * @param scenario that names the holes and suction points
     * @param stage id of the stage for rows that name none; empty where every row must
     * @param text of the table, as read from a file or pasted from a spreadsheet
     * @param name of the table, for messages
     * @throws ScenarioProblems with everything that is wrong, by line and column
     */
    public static Scenario into(Scenario scenario, Optional<String> stage, String text, String name)
            throws ScenarioProblems {
        ReadingsTable table = new ReadingsTable(scenario, stage, name);
        List<ReadingsTable.Taken> rows = table.read(DelimitedText.read(text));
        List<Stage> stages = new ArrayList<>(scenario.stages());
        for (ReadingsTable.Taken row : rows) {
            int at = stages.stream().map(Stage::id).toList().indexOf(row.stage());
            if (at < 0) {
                at = stages.size();
                stages.add(begun(row.stage(), row.kind()));
            }
            stages.set(at, with(stages.get(at), row));
        }
        return scenario.withStages(stages);
    }

    /** A stage without readings yet. */
    static Stage begun(String id, StageKind kind) {
        return new Stage(id, kind, Map.of(), Map.of(), List.of(), List.of(), "", "");
    }

    private static Stage with(Stage stage, ReadingsTable.Taken row) {
        List<Stage.HoleReading> holes = stage.holes().stream()
                .filter(h -> row.hole().filter(r -> r.hole().equals(h.hole())).isEmpty())
                .collect(Collectors.toCollection(ArrayList::new));
        List<Stage.SystemReading> systems = stage.systems().stream()
                .filter(s -> row.system()
                        .filter(r -> r.suctionPoint().equals(s.suctionPoint()))
                        .isEmpty())
                .collect(Collectors.toCollection(ArrayList::new));
        row.hole().ifPresent(holes::add);
        row.system().ifPresent(systems::add);
        return stage.with(holes, systems);
    }

    /**
     * Stages as a table that {@link #into} reads back to the same readings, in SI units.
     *
     * @param decimalComma true for decimal commas, and then semicolons between cells
     */
    public static String text(List<Stage> stages, boolean decimalComma) {
        String separator = decimalComma ? ";" : ",";
        StringBuilder text = new StringBuilder(row(
                Stream.of(ReadingsColumn.values()).map(ReadingsColumn::heading).toList(), separator));
        for (Stage stage : stages) {
            for (Stage.HoleReading r : stage.holes()) text.append(row(cells(stage, hole(r), decimalComma), separator));
            for (Stage.SystemReading r : stage.systems())
                text.append(row(cells(stage, system(r), decimalComma), separator));
        }
        return text.toString();
    }

    private static String row(List<String> cells, String separator) {
        return String.join(separator, cells) + END;
    }

    private static Map<ReadingsColumn, Object> hole(Stage.HoleReading r) {
        Map<ReadingsColumn, Object> cells = new EnumMap<>(ReadingsColumn.class);
        cells.put(ReadingsColumn.HOLE, r.hole());
        put(cells, ReadingsColumn.FAN_OFF, r.fanOff());
        put(cells, ReadingsColumn.FAN_ON, r.fanOn());
        put(cells, ReadingsColumn.SPREAD, r.spread());
        r.count().ifPresent(n -> cells.put(ReadingsColumn.COUNT, (double) n));
        put(cells, ReadingsColumn.METER_STEP, r.meterStep());
        put(cells, ReadingsColumn.WAITED, r.waited());
        cells.put(ReadingsColumn.TIME, r.time());
        return cells;
    }

    private static Map<ReadingsColumn, Object> system(Stage.SystemReading r) {
        Map<ReadingsColumn, Object> cells = new EnumMap<>(ReadingsColumn.class);
        cells.put(ReadingsColumn.SUCTION_POINT, r.suctionPoint());
        r.flowReading().ifPresent(read -> flow(cells, read));
        put(cells, ReadingsColumn.RISER, r.riser());
        put(cells, ReadingsColumn.PIT, r.pit());
        put(cells, ReadingsColumn.SPREAD, r.spread());
        put(cells, ReadingsColumn.METER_STEP, r.meterStep());
        cells.put(ReadingsColumn.TIME, r.time());
        return cells;
    }

    private static void flow(Map<ReadingsColumn, Object> cells, FlowReading read) {
        if (read instanceof FlowReading.Stated stated) {
            cells.put(ReadingsColumn.FLOW, List.of(stated.flow()));
            put(cells, ReadingsColumn.FLOW_UNCERTAINTY, stated.uncertainty());
        } else if (read instanceof FlowReading.Below below) cells.put(ReadingsColumn.FLOW, below);
        else if (read instanceof FlowReading.InPipe pipe) {
            boolean v = pipe.velocity();
            cells.put(v ? ReadingsColumn.VELOCITY : ReadingsColumn.VELOCITY_PRESSURE, pipe.shown());
            put(cells, v ? ReadingsColumn.VELOCITY_STEP : ReadingsColumn.VELOCITY_PRESSURE_STEP, pipe.meterStep());
            cells.put(ReadingsColumn.PIPE_DIAMETER, pipe.diameter());
            cells.put(ReadingsColumn.POSITION, pipe.traverse() ? "traverse" : "centre line");
            put(cells, ReadingsColumn.AIR_DENSITY, pipe.density());
        }
    }

    private static void put(Map<ReadingsColumn, Object> cells, ReadingsColumn column, OptionalDouble value) {
        value.ifPresent(v -> cells.put(column, v));
    }

    private static List<String> cells(Stage stage, Map<ReadingsColumn, Object> values, boolean comma) {
        values.put(ReadingsColumn.STAGE, stage.id());
        values.put(ReadingsColumn.KIND, stage.kind().words());
        return Stream.of(ReadingsColumn.values())
                .map(c -> cell(values.getOrDefault(c, ""), comma))
                .toList();
    }

    private static String cell(Object value, boolean comma) {
        if (value instanceof Double number) return number(number, comma);
        if (value instanceof FlowReading.Below below) return "<" + number(below.bound(), comma);
        if (value instanceof List<?> list)
            return list.stream().map(v -> number((Double) v, comma)).collect(Collectors.joining(" "));
        return CsvCell.of(value.toString());
    }

    private static String number(double value, boolean comma) {
        String digits = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
        return comma ? digits.replace('.', ',') : digits;
    }

    /** A word as it was before {@link CsvCell} put a guard before it. */
    static String unguarded(String cell) {
        boolean guarded = cell.startsWith("'")
                && CsvCell.of(cell.substring(1)).replaceFirst("^\"", "").startsWith("'");
        return guarded ? cell.substring(1) : cell;
    }
}
