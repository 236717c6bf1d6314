package slabfield.io;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import slabfield.model.Air;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.Display;
import slabfield.model.DrainTile;
import slabfield.model.Equipment;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.House;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Plan;
import slabfield.model.Point;
import slabfield.model.Problem;
import slabfield.model.Scenario;
import slabfield.model.ScenarioCheck;
import slabfield.model.Slab;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Reads the outermost object of a scenario file and checks the house as a whole. */
final class HouseReader {
    /** Problems that may come only from another thing that could not be read. */
    private static final Pattern MAY_FOLLOW = Pattern.compile("/slabs/\\d+|/stages/.*|/drainTile/\\d+/sump"
            + "|/suctionPoints/\\d+/(?:tile|source/riser)|/blockWalls/\\d+/tile|/openings/\\d+/perimeterOf");

    private HouseReader() {}

    /** What is on the plan, as far as it could be read. */
    private record Drawn(
            List<Slab> slabs,
            Optional<Layer> layer,
            List<Barrier> barriers,
            List<DrainTile> tiles,
            List<BlockWall> walls,
            List<Opening> openings,
            List<SuctionPoint> suctions,
            List<TestHole> holes,
            List<Stage> stages,
            Optional<Equipment> equipment) {

        /** A house with this plan and nothing else that could be wrong. */
        Scenario bare() {
            Fill anything = Fill.of(FillWord.MIXED, Fill.USUAL_THICKNESS);
            return new Scenario(
                    "unnamed",
                    "",
                    "",
                    Display.SI,
                    slabs,
                    layer.orElse(new Layer(anything, List.of())),
                    barriers,
                    tiles,
                    walls,
                    openings,
                    0,
                    0,
                    Air.STANDARD,
                    suctions,
                    holes,
                    stages,
                    Target.COMMON_PRACTICE,
                    Scenario.USUAL_CELL,
                    equipment.orElse(Equipment.NONE),
                    House.UNKNOWN,
                    Plan.EMPTY);
        }
    }

    /**
     * @param unfinished true where things may stand to each other as they cannot in a house that is solved
     */
    static Optional<Scenario> house(Entry e, ScenarioReader.MostCells mostCells, boolean unfinished) {
        Unit unit = e.word("lengthUnit", Words.units(Dimension.LENGTH), Unit.METRE);
        e.reading().lengthUnit(unit);
        Drawn drawn = drawn(e);
        String name = e.text("name"), teaches = e.text("teaches"), notes = e.text("notes");
        Optional<Display> display = display(e.entry("display", FileObject.DISPLAY), unit);
        double leakance = e.entry("soil", FileObject.SOIL).quantity("leakance", Dimension.LEAKANCE, 0);
        Entry above = e.entry("house", FileObject.HOUSE);
        double outdoors = above.quantity("pressureOutdoorsAtFloor", Dimension.PRESSURE, 0);
        Optional<House> house = BuildingReader.house(above);
        Optional<Air> air = air(e.entry("air", FileObject.AIR));
        Optional<Target> target = target(e);
        Optional<Plan> plan = PlanReader.plan(e.entry("plan", FileObject.PLAN));
        double cell = e.quantity("cell", Dimension.LENGTH, Scenario.USUAL_CELL);
        cells(e, drawn.slabs(), cell, drawn.layer().map(mostCells::in).orElse(mostCells.inertial()));
        Optional<Scenario> made = e.make(() -> new Scenario(
                name,
                teaches,
                notes,
                display.orElseThrow(),
                drawn.slabs(),
                drawn.layer().orElseThrow(),
                drawn.barriers(),
                drawn.tiles(),
                drawn.walls(),
                drawn.openings(),
                leakance,
                outdoors,
                air.orElseThrow(),
                drawn.suctions(),
                drawn.holes(),
                drawn.stages(),
                target.orElseThrow(),
                cell,
                drawn.equipment().orElseThrow(),
                house.orElseThrow(),
                plan.orElseThrow()));
        if (unfinished) return made;
        if (drawn.slabs().isEmpty() && e.get("slabs").isEmpty())
            e.problem("slabs", "the scenario: \"slabs\" needs at least one slab");
        boolean allSlabs = !drawn.slabs().isEmpty()
                && drawn.slabs().size() == e.get("slabs").size();
        if (allSlabs) check(e.reading(), made.isPresent(), made.orElseGet(drawn::bare));
        return made;
    }

    private static Drawn drawn(Entry e) {
        return new Drawn(
                e.list("slabs", FileObject.SLAB, GroundReader::slab),
                e.has("layer") ? GroundReader.layer(e.entry("layer", FileObject.LAYER)) : Optional.empty(),
                e.list("barriers", FileObject.BARRIER, GroundReader::barrier),
                e.list("drainTile", FileObject.DRAIN_TILE, DeviceReader::drainTile),
                e.list("blockWalls", FileObject.BLOCK_WALL, DeviceReader::blockWall),
                e.list("openings", FileObject.OPENING, DeviceReader::opening),
                e.list("suctionPoints", FileObject.SUCTION_POINT, SystemReader::suctionPoint),
                e.list("testHoles", FileObject.TEST_HOLE, SystemReader::testHole),
                e.list("stages", FileObject.STAGE, SystemReader::stage),
                EquipmentReader.equipment(e.entry("equipment", FileObject.EQUIPMENT)));
    }

    private static void check(FileReading reading, boolean complete, Scenario scenario) {
        for (Problem p : ScenarioCheck.problems(scenario))
            if (complete || !MAY_FOLLOW.matcher(p.path()).matches()) reading.add(reading.inFile(p.path()), p.message());
    }

    private static Optional<Display> display(Entry e, Unit lengthUnit) {
        boolean feet = lengthUnit == Unit.FOOT || lengthUnit == Unit.INCH;
        Unit pressure = e.word("pressure", Words.units(Dimension.PRESSURE), Unit.PASCAL);
        Unit flow = e.word("flow", Words.units(Dimension.FLOW), feet ? Unit.CFM : Unit.LITRE_PER_SECOND);
        Unit length = e.word("length", Words.units(Dimension.LENGTH), lengthUnit);
        return e.make(() -> new Display(pressure.symbol(), flow.symbol(), length.symbol()));
    }

    private static Optional<Air> air(Entry e) {
        OptionalDouble temperature = e.optional("temperature", Dimension.TEMPERATURE);
        OptionalDouble altitude = e.optional("altitude", Dimension.LENGTH);
        return e.make(() -> new Air(temperature, altitude));
    }

    private static Optional<Target> target(Entry e) {
        if (!e.has("target")) return Optional.of(Target.COMMON_PRACTICE);
        Entry target = e.entry("target", FileObject.TARGET);
        double vacuum = target.quantity("vacuum", Dimension.PRESSURE);
        String choice = target.text("choice");
        return target.make(() -> new Target(vacuum, choice));
    }

    /** Refuses a grid that would not fit into memory. */
    private static void cells(Entry e, List<Slab> slabs, double cell, long most) {
        if (slabs.isEmpty() || !(cell > 0)) return;
        DoubleSummaryStatistics x = new DoubleSummaryStatistics(), y = new DoubleSummaryStatistics();
        for (Slab slab : slabs)
            for (Point corner : slab.outline()) {
                x.accept(corner.x());
                y.accept(corner.y());
            }
        double width = x.getMax() - x.getMin(), height = y.getMax() - y.getMin();
        double cells = Math.ceil(width / cell) * Math.ceil(height / cell);
        if (cells <= most) return;
        double enough = Math.ceil(1000 * Math.sqrt(width * height / most) * 1.01) / 1000;
        String given = e.has("cell") ? Entry.shown(e.get("cell")) : "the usual cell of 10 cm";
        String message = String.format(
                Locale.ROOT,
                "%s makes a grid of %.0f cells, and this computer's memory takes about %d; make \"cell\" at least \"%s\"",
                given,
                cells,
                most,
                Quantity.format(enough, Unit.CENTIMETRE, 3));
        e.problem("cell", message);
    }
}
