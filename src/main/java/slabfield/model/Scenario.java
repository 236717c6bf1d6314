package slabfield.model;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * One house as it is drawn: all that a solve needs, in SI. Immutable; a change makes another.
 *
 * @param name title
 * @param teaches what a learner sees in it, or empty
 * @param notes free text
 * @param display units to show results in
 * @param slabs at least one, to be solved
 * @param layer what lies under them
 * @param barriers footings and the like
 * @param drainTiles perforated pipes in the layer
 * @param blockWalls hollow-block walls at the slab's edge
 * @param openings ways for room air through the slab
 * @param soilLeakance conductance from the layer through native soil to outdoors, per slab area [m/(s Pa)]
 * @param outdoorPressure outdoors at floor level relative to the room: stack and wind; positive in winter [Pa]
 * @param air that moves
 * @param suctionPoints where the system draws
 * @param testHoles where the pressure is read
 * @param stages readings
 * @param target vacuum wanted
 * @param cellSize largest side of a grid cell [m]
 * @param equipment risers, fans to choose from, planned pipe
 * @param house what is above the slab
 * @param plan what the drawing carries beside the house
 */
public record Scenario(
        String name,
        String teaches,
        String notes,
        Display display,
        List<Slab> slabs,
        Layer layer,
        List<Barrier> barriers,
        List<DrainTile> drainTiles,
        List<BlockWall> blockWalls,
        List<Opening> openings,
        double soilLeakance,
        double outdoorPressure,
        Air air,
        List<SuctionPoint> suctionPoints,
        List<TestHole> testHoles,
        List<Stage> stages,
        Target target,
        double cellSize,
        Equipment equipment,
        House house,
        Plan plan) {
    public static final double USUAL_CELL = 0.1;

    public Scenario {
        Check.name("name", name);
        Check.text("teaches", teaches);
        Check.text("notes", notes);
        Check.present("display", display);
        slabs = Check.list("slabs", slabs);
        Check.present("layer", layer);
        barriers = Check.list("barriers", barriers);
        drainTiles = Check.list("drainTile", drainTiles);
        blockWalls = Check.list("blockWalls", blockWalls);
        openings = Check.list("openings", openings);
        Check.notNegative("leakance", soilLeakance);
        Check.finite("pressureOutdoorsAtFloor", outdoorPressure);
        Check.present("air", air);
        suctionPoints = Check.list("suctionPoints", suctionPoints);
        testHoles = Check.list("testHoles", testHoles);
        stages = Check.list("stages", stages);
        Check.present("target", target);
        Check.positive("cell", cellSize);
        Check.present("equipment", equipment);
        Check.present("house", house);
        Check.present("plan", plan);
    }

    /** A house of which nothing is said beyond its slab. */
    public Scenario(
            String name,
            String teaches,
            String notes,
            Display display,
            List<Slab> slabs,
            Layer layer,
            List<Barrier> barriers,
            List<DrainTile> drainTiles,
            List<BlockWall> blockWalls,
            List<Opening> openings,
            double soilLeakance,
            double outdoorPressure,
            Air air,
            List<SuctionPoint> suctionPoints,
            List<TestHole> testHoles,
            List<Stage> stages,
            Target target,
            double cellSize) {
        this(
                name,
                teaches,
                notes,
                display,
                slabs,
                layer,
                barriers,
                drainTiles,
                blockWalls,
                openings,
                soilLeakance,
                outdoorPressure,
                air,
                suctionPoints,
                testHoles,
                stages,
                target,
                cellSize,
                Equipment.NONE,
                House.UNKNOWN,
                Plan.EMPTY);
    }

    public Optional<Opening> opening(String id) {
        return openings.stream().filter(o -> o.id().equals(id)).findFirst();
    }

    public Optional<SuctionPoint> suctionPoint(String id) {
        return suctionPoints.stream().filter(s -> s.id().equals(id)).findFirst();
    }

    public Optional<TestHole> testHole(String id) {
        return testHoles.stream().filter(h -> h.id().equals(id)).findFirst();
    }

    public Optional<Stage> stage(String id) {
        return stages.stream().filter(s -> s.id().equals(id)).findFirst();
    }

    /** True where a slab, and so the layer, lies at a place. */
    public boolean hasLayerAt(Point place) {
        return slabs.stream().anyMatch(slab -> Shapes.area(slab).covers(Shapes.point(place)));
    }

    public Scenario withName(String other) {
        return with(parts -> parts.name = other);
    }

    public Scenario withTeaches(String other) {
        return with(parts -> parts.teaches = other);
    }

    public Scenario withNotes(String other) {
        return with(parts -> parts.notes = other);
    }

    public Scenario withDisplay(Display other) {
        return with(parts -> parts.display = other);
    }

    public Scenario withSlabs(List<Slab> other) {
        return with(parts -> parts.slabs = other);
    }

    public Scenario withLayer(Layer other) {
        return with(parts -> parts.layer = other);
    }

    public Scenario withBarriers(List<Barrier> other) {
        return with(parts -> parts.barriers = other);
    }

    public Scenario withDrainTiles(List<DrainTile> other) {
        return with(parts -> parts.drainTiles = other);
    }

    public Scenario withBlockWalls(List<BlockWall> other) {
        return with(parts -> parts.blockWalls = other);
    }

    public Scenario withOpenings(List<Opening> other) {
        return with(parts -> parts.openings = other);
    }

    /** The same house with another leakance of the soil to outdoors [m/(s Pa)]. */
    public Scenario withSoilLeakance(double other) {
        return with(parts -> parts.soilLeakance = other);
    }

    /** The same house with another pressure outdoors at floor level [Pa]. */
    public Scenario withOutdoorPressure(double other) {
        return with(parts -> parts.outdoorPressure = other);
    }

    public Scenario withAir(Air other) {
        return with(parts -> parts.air = other);
    }

    public Scenario withSuctionPoints(List<SuctionPoint> other) {
        return with(parts -> parts.suctionPoints = other);
    }

    public Scenario withTestHoles(List<TestHole> other) {
        return with(parts -> parts.testHoles = other);
    }

    public Scenario withStages(List<Stage> other) {
        return with(parts -> parts.stages = other);
    }

    public Scenario withTarget(Target other) {
        return with(parts -> parts.target = other);
    }

    /** The same house on cells of another side [m]. */
    public Scenario withCellSize(double other) {
        return with(parts -> parts.cellSize = other);
    }

    public Scenario withEquipment(Equipment other) {
        return with(parts -> parts.equipment = other);
    }

    public Scenario withHouse(House other) {
        return with(parts -> parts.house = other);
    }

    public Scenario withPlan(Plan other) {
        return with(parts -> parts.plan = other);
    }

    /** The same house with one opening in another state. */
    public Scenario withSeal(String opening, Seal seal) {
        return withOpenings(replace(openings, o -> o.id().equals(opening) ? o.with(seal) : o));
    }

    /** The same house with the tops of one block wall in another state. */
    public Scenario withTops(String wall, Seal seal) {
        return withBlockWalls(replace(blockWalls, w -> w.id().equals(wall) ? w.with(seal) : w));
    }

    /** The same house with all openings and block tops at least that far closed. */
    public Scenario withAllClosed(Seal seal) {
        return withOpenings(replace(openings, o -> o.seal().fraction() < seal.fraction() ? o.with(seal) : o))
                .withBlockWalls(replace(blockWalls, w -> w.tops().fraction() < seal.fraction() ? w.with(seal) : w));
    }

    /** The same house with one barrier changed. */
    public Scenario withBarrier(String id, UnaryOperator<Barrier> change) {
        return withBarriers(replace(barriers, b -> b.id().equals(id) ? change.apply(b) : b));
    }

    /** The same house with one drain tile changed. */
    public Scenario withDrainTile(String id, UnaryOperator<DrainTile> change) {
        return withDrainTiles(replace(drainTiles, t -> t.id().equals(id) ? change.apply(t) : t));
    }

    /** The same house with one suction point changed. */
    public Scenario withSuctionPoint(String id, UnaryOperator<SuctionPoint> change) {
        return withSuctionPoints(replace(suctionPoints, s -> s.id().equals(id) ? change.apply(s) : s));
    }

    /** The house as it stood while a stage's readings were taken. */
    public Scenario during(Stage stage) {
        return withOpenings(replace(
                        openings,
                        o -> stage.seals().containsKey(o.id())
                                ? o.with(stage.seals().get(o.id()))
                                : o))
                .withBlockWalls(replace(
                        blockWalls,
                        w -> stage.seals().containsKey(w.id())
                                ? w.with(stage.seals().get(w.id()))
                                : w))
                .withSuctionPoints(replace(
                        suctionPoints,
                        s -> stage.sources().containsKey(s.id())
                                ? s.drawnBy(stage.sources().get(s.id()))
                                : s));
    }

    private static <T> List<T> replace(List<T> items, UnaryOperator<T> change) {
        return items.stream().map(change).toList();
    }

    private Scenario with(Consumer<Parts> change) {
        Parts parts = new Parts(this);
        change.accept(parts);
        return parts.scenario();
    }

    /** All components of a scenario, any of which may be exchanged before another scenario is made of them. */
    private static final class Parts {
        String name;
        String teaches;
        String notes;
        Display display;
        List<Slab> slabs;
        Layer layer;
        List<Barrier> barriers;
        List<DrainTile> drainTiles;
        List<BlockWall> blockWalls;
        List<Opening> openings;
        double soilLeakance;
        double outdoorPressure;
        Air air;
        List<SuctionPoint> suctionPoints;
        List<TestHole> testHoles;
        List<Stage> stages;
        Target target;
        double cellSize;
        Equipment equipment;
        House house;
        Plan plan;

        Parts(Scenario from) {
            name = from.name;
            teaches = from.teaches;
            notes = from.notes;
            display = from.display;
            slabs = from.slabs;
            layer = from.layer;
            barriers = from.barriers;
            drainTiles = from.drainTiles;
            blockWalls = from.blockWalls;
            openings = from.openings;
            soilLeakance = from.soilLeakance;
            outdoorPressure = from.outdoorPressure;
            air = from.air;
            suctionPoints = from.suctionPoints;
            testHoles = from.testHoles;
            stages = from.stages;
            target = from.target;
            cellSize = from.cellSize;
            equipment = from.equipment;
            house = from.house;
            plan = from.plan;
        }

        Scenario scenario() {
            return new Scenario(
                    name,
                    teaches,
                    notes,
                    display,
                    slabs,
                    layer,
                    barriers,
                    drainTiles,
                    blockWalls,
                    openings,
                    soilLeakance,
                    outdoorPressure,
                    air,
                    suctionPoints,
                    testHoles,
                    stages,
                    target,
                    cellSize,
                    equipment,
                    house,
                    plan);
        }
    }
}
