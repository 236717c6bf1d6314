package slabfield.io;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import slabfield.model.FlowReading;
import slabfield.model.ImpossibleValue;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;
import slabfield.wording.Nearest;

/** Reads a table of readings row by row and notes all that is wrong, by line and column. */
final class ReadingsTable {
    private final Scenario scenario;
    private final Optional<String> usualStage;
    private final String name;
    private final List<FileProblem> problems = new ArrayList<>();
    private final Set<List<String>> seen = new HashSet<>();

    ReadingsTable(Scenario scenario, Optional<String> usualStage, String name) {
        this.scenario = scenario;
        this.usualStage = usualStage;
        this.name = name;
    }

    /** One row: a reading at a hole or at a suction point. */
    record Taken(
            String stage, StageKind kind, Optional<Stage.HoleReading> hole, Optional<Stage.SystemReading> system) {}

    /** A column, where it stands, and the unit of its heading. */
    private record Column(ReadingsColumn what, int place, Optional<Unit> unit) {
        String title() {
            return "column " + (place + 1) + ", " + what.words();
        }
    }

    List<Taken> read(DelimitedText table) throws ScenarioProblems {
        List<Taken> taken = new ArrayList<>();
        if (table.rows().isEmpty()) note(1, "", "the table is empty; it needs a row of headings such as " + example());
        else {
            Map<ReadingsColumn, Column> columns = headings(table.rows().get(0));
            if (problems.isEmpty())
                for (DelimitedText.Row row :
                        table.rows().subList(1, table.rows().size()))
                    new Line(row, columns, table.separator() == ';').take().ifPresent(taken::add);
            if (problems.isEmpty() && taken.isEmpty()) note(1, "", "the table has headings and no readings below them");
        }
        if (!problems.isEmpty()) throw new ScenarioProblems(name, problems);
        return taken;
    }

    private void note(int line, String column, String message) {
        problems.add(new FileProblem(name, line, column, message));
    }

    private static String example() {
        return "\"hole\", \"fan off [Pa]\", \"fan on [Pa]\"";
    }

    private Map<ReadingsColumn, Column> headings(DelimitedText.Row row) {
        Map<ReadingsColumn, Column> columns = new EnumMap<>(ReadingsColumn.class);
        for (int i = 0; i < row.cells().size(); i++) {
            String heading = row.cells().get(i), place = "column " + (i + 1);
            if (heading.isEmpty()) continue;
            Optional<ReadingsColumn> what = ReadingsColumn.of(heading);
            if (what.isEmpty()) {
                List<String> known = Arrays.stream(ReadingsColumn.values())
                        .map(ReadingsColumn::words)
                        .toList();
                note(
                        row.line(),
                        place,
                        "\"" + heading + "\" is no heading of a table of readings; " + Nearest.hint(heading, known));
                continue;
            }
            Optional<Unit> unit = unit(row.line(), place, heading, what.get());
            if (columns.put(what.get(), new Column(what.get(), i, unit)) != null)
                note(row.line(), place, "\"" + what.get().words() + "\" stands over two columns; keep one");
        }
        if (!columns.containsKey(ReadingsColumn.HOLE) && !columns.containsKey(ReadingsColumn.SUCTION_POINT))
            note(
                    row.line(),
                    "",
                    "the table needs a column \"hole\" or \"suction point\"; begin it with headings such as "
                            + example());
        return columns;
    }

    private Optional<Unit> unit(int line, String place, String heading, ReadingsColumn what) {
        String written = what.behind(heading);
        if (what.dimension().isEmpty()) {
            if (!written.isEmpty()) note(line, place, "\"" + heading + "\": \"" + what.words() + "\" has no unit");
            return Optional.empty();
        }
        Dimension dimension = what.dimension().get();
        Optional<Unit> unit = written.isEmpty() ? Optional.empty() : Unit.find(written, dimension);
        if (unit.isEmpty())
            note(
                    line,
                    place,
                    "\"" + heading + "\" "
                            + (written.isEmpty() ? "has no unit" : "has no unit that is " + dimension.words())
                            + "; write it as \"" + what.heading() + "\" with one of "
                            + String.join(
                                    ", ",
                                    Unit.of(dimension).stream()
                                            .map(Unit::symbol)
                                            .toList()));
        return unit;
    }

    /** One row under its headings. */
    private final class Line {
        private final DelimitedText.Row row;
        private final Map<ReadingsColumn, Column> columns;
        private final boolean decimalCommas;
        private final int problemsBefore = problems.size();

        Line(DelimitedText.Row row, Map<ReadingsColumn, Column> columns, boolean decimalCommas) {
            this.row = row;
            this.columns = columns;
            this.decimalCommas = decimalCommas;
        }

        Optional<Taken> take() {
            for (int i = 0; i < row.cells().size(); i++) {
                int place = i;
                if (!row.cells().get(i).isEmpty() && columns.values().stream().noneMatch(c -> c.place() == place))
                    note(
                            row.line(),
                            "column " + (i + 1),
                            "\"" + row.cells().get(i) + "\" stands under no heading; a decimal comma in"
                                    + " a table with commas must stand between quotes");
            }
            String hole = text(ReadingsColumn.HOLE), point = text(ReadingsColumn.SUCTION_POINT);
            if (hole.isEmpty() == point.isEmpty()) {
                note(row.line(), "", "a row names a hole or a suction point, one of them");
                return Optional.empty();
            }
            String stage = stage();
            StageKind kind = kind(stage);
            if (!seen.add(List.of(stage, hole, point)))
                note(
                        row.line(),
                        "",
                        (hole.isEmpty() ? "suction point \"" + point : "hole \"" + hole) + "\" has two rows in stage \""
                                + stage + "\"; keep one");
            if (!stage.isEmpty()) make(() -> ReadingsCsv.begun(stage, kind));
            Optional<Stage.HoleReading> atHole = hole.isEmpty() ? Optional.empty() : hole(hole);
            Optional<Stage.SystemReading> atPoint = point.isEmpty() ? Optional.empty() : system(point);
            return problems.size() > problemsBefore
                    ? Optional.empty()
                    : Optional.of(new Taken(stage, kind, atHole, atPoint));
        }

        private String stage() {
            String stage = text(ReadingsColumn.STAGE);
            if (stage.isEmpty() && usualStage.isEmpty())
                note(
                        row.line(),
                        title(ReadingsColumn.STAGE),
                        "the row names no stage; fill a column \"stage\", or choose one for all");
            return stage.isEmpty() ? usualStage.orElse("") : stage;
        }

        private StageKind kind(String stage) {
            String word = text(ReadingsColumn.KIND);
            if (word.isEmpty()) return Words.STAGES.getOrDefault(stage, StageKind.LATER_VISIT);
            if (!Words.STAGES.containsKey(word))
                note(
                        row.line(),
                        title(ReadingsColumn.KIND),
                        "\"" + word + "\" is no kind of stage; " + Nearest.hint(word, Words.STAGES.keySet()));
            return Words.STAGES.getOrDefault(word, StageKind.LATER_VISIT);
        }

        private Optional<Stage.HoleReading> hole(String id) {
            known(
                    ReadingsColumn.HOLE,
                    id,
                    "test hole",
                    scenario.testHoles().stream().map(TestHole::id).toList());
            refuse(ReadingsColumn.OF_SYSTEMS, "a suction point");
            OptionalDouble off = number(ReadingsColumn.FAN_OFF), on = number(ReadingsColumn.FAN_ON);
            OptionalDouble spread = number(ReadingsColumn.SPREAD), step = number(ReadingsColumn.METER_STEP);
            OptionalDouble waited = number(ReadingsColumn.WAITED);
            OptionalInt count = count();
            if (text(ReadingsColumn.FAN_OFF).isEmpty()
                    && text(ReadingsColumn.FAN_ON).isEmpty())
                note(
                        row.line(),
                        "",
                        "hole \"" + id
                                + "\" has no reading; fill \"fan on\", \"fan off\" or both, or leave the row out");
            return make(
                    () -> new Stage.HoleReading(id, off, on, spread, count, step, waited, text(ReadingsColumn.TIME)));
        }

        private Optional<Stage.SystemReading> system(String id) {
            List<String> ids =
                    scenario.suctionPoints().stream().map(SuctionPoint::id).toList();
            known(ReadingsColumn.SUCTION_POINT, id, "suction point", ids);
            refuse(ReadingsColumn.OF_HOLES, "a hole");
            Optional<FlowReading> flow = flow();
            OptionalDouble riser = number(ReadingsColumn.RISER), pit = number(ReadingsColumn.PIT);
            OptionalDouble spread = number(ReadingsColumn.SPREAD), step = number(ReadingsColumn.METER_STEP);
            return make(() -> new Stage.SystemReading(id, flow, riser, pit, spread, step, text(ReadingsColumn.TIME)));
        }

        private Optional<FlowReading> flow() {
            List<ReadingsColumn> given =
                    List.of(ReadingsColumn.FLOW, ReadingsColumn.VELOCITY_PRESSURE, ReadingsColumn.VELOCITY).stream()
                            .filter(c -> !text(c).isEmpty())
                            .toList();
            if (given.size() > 1)
                note(
                        row.line(),
                        title(given.get(1)),
                        "the flow is given by \"" + given.get(0).words() + "\" already; keep one");
            if (given.isEmpty()) return Optional.empty();
            if (given.get(0) == ReadingsColumn.FLOW) return stated();
            boolean velocity = given.get(0) == ReadingsColumn.VELOCITY;
            List<Double> shown = numbers(given.get(0));
            OptionalDouble step =
                    number(velocity ? ReadingsColumn.VELOCITY_STEP : ReadingsColumn.VELOCITY_PRESSURE_STEP);
            OptionalDouble diameter = number(ReadingsColumn.PIPE_DIAMETER),
                    density = number(ReadingsColumn.AIR_DENSITY);
            if (text(ReadingsColumn.PIPE_DIAMETER).isEmpty())
                note(
                        row.line(),
                        title(ReadingsColumn.PIPE_DIAMETER),
                        "a reading in the pipe needs the pipe's inside diameter");
            String position = text(ReadingsColumn.POSITION);
            if (!position.isEmpty() && !Words.POSITIONS.containsKey(position))
                note(
                        row.line(),
                        title(ReadingsColumn.POSITION),
                        "\"" + position + "\" is no position; " + Nearest.hint(position, Words.POSITIONS.keySet()));
            boolean traverse = Words.POSITIONS.getOrDefault(position, shown.size() > 1);
            return make(() ->
                    new FlowReading.InPipe(shown, velocity, diameter.orElse(Double.NaN), traverse, step, density));
        }

        private Optional<FlowReading> stated() {
            String cell = text(ReadingsColumn.FLOW);
            if (!cell.startsWith("<")) {
                OptionalDouble flow = number(ReadingsColumn.FLOW),
                        uncertainty = number(ReadingsColumn.FLOW_UNCERTAINTY);
                return make(() -> new FlowReading.Stated(flow.orElse(Double.NaN), uncertainty));
            }
            OptionalDouble bound = number(ReadingsColumn.FLOW, cell.substring(1));
            return make(() -> new FlowReading.Below(bound.orElse(Double.NaN)));
        }

        private void known(ReadingsColumn column, String id, String kind, List<String> ids) {
            if (!ids.contains(id))
                note(row.line(), title(column), "there is no " + kind + " \"" + id + "\"; " + Nearest.hint(id, ids));
        }

        private void refuse(List<ReadingsColumn> others, String kind) {
            for (ReadingsColumn column : others)
                if (!text(column).isEmpty())
                    note(row.line(), title(column), "only " + kind + " has this; leave the cell empty");
        }

        private String title(ReadingsColumn column) {
            return columns.containsKey(column) ? columns.get(column).title() : column.words();
        }

        private String text(ReadingsColumn column) {
            if (!columns.containsKey(column)) return "";
            int place = columns.get(column).place();
            return place < row.cells().size()
                    ? ReadingsCsv.unguarded(row.cells().get(place))
                    : "";
        }

        private OptionalInt count() {
            String cell = text(ReadingsColumn.COUNT);
            if (cell.matches("\\d{1,6}")) return OptionalInt.of(Integer.parseInt(cell));
            if (!cell.isEmpty()) note(row.line(), title(ReadingsColumn.COUNT), "\"" + cell + "\" is no whole number");
            return OptionalInt.empty();
        }

        private List<Double> numbers(ReadingsColumn column) {
            List<Double> all = new ArrayList<>();
            for (String one : text(column).split("\\s+")) number(column, one).ifPresent(all::add);
            return all;
        }

        private OptionalDouble number(ReadingsColumn column) {
            return number(column, text(column));
        }

        private OptionalDouble number(ReadingsColumn column, String cell) {
            if (cell.isEmpty() || cell.equals("-")) return OptionalDouble.empty();
            Unit unit = columns.get(column).unit().orElseThrow();
            String plain = decimalCommas && cell.matches("[+-]?\\d+,\\d+") ? cell.replace(',', '.') : cell;
            boolean withUnit = !plain.matches(".*\\d");
            try {
                return OptionalDouble.of(
                        Quantity.parse(withUnit ? plain : plain + " " + unit.symbol(), unit.dimension()));
            } catch (NotAQuantity e) {
                note(row.line(), title(column), e.getMessage());
                return OptionalDouble.empty();
            }
        }

        private <T> Optional<T> make(java.util.function.Supplier<T> maker) {
            if (problems.size() > problemsBefore) return Optional.empty();
            try {
                return Optional.of(maker.get());
            } catch (ImpossibleValue e) {
                note(row.line(), "", e.part() + " " + e.reason());
                return Optional.empty();
            }
        }
    }
}
