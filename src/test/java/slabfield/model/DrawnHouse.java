package slabfield.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A house of 10 m by 8 m that tests add to. */
final class DrawnHouse {
    final List<Slab> slabs = new ArrayList<>(List.of(slab("basement", 0, 0, 10, 8)));
    final List<Zone> zones = new ArrayList<>();
    final List<Barrier> barriers = new ArrayList<>();
    final List<DrainTile> tiles = new ArrayList<>();
    final List<BlockWall> walls = new ArrayList<>();
    final List<Opening> openings = new ArrayList<>();
    final List<SuctionPoint> suctions = new ArrayList<>();
    final List<TestHole> holes = new ArrayList<>();
    final List<Stage> stages = new ArrayList<>();

    Scenario drawn() {
        return new Scenario(
                "House",
                "",
                "",
                Display.SI,
                slabs,
                new Layer(Fill.of(FillWord.SAND, 0.1), zones),
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
                0.1);
    }

    List<Problem> problems() {
        return ScenarioCheck.problems(drawn());
    }

    static Slab slab(String id, double left, double bottom, double right, double top) {
        return new Slab(id, rectangle(left, bottom, right, top), List.of(), 0.1, true);
    }

    static List<Point> rectangle(double left, double bottom, double right, double top) {
        return List.of(new Point(left, bottom), new Point(right, bottom), new Point(right, top), new Point(left, top));
    }

    static Path path(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) points.add(new Point(xy[i], xy[i + 1]));
        return new Path(points);
    }

    static Barrier barrier(String id, Path path, Gap... gaps) {
        return new Barrier(id, path, 0.4, 0, true, List.of(gaps));
    }

    static DrainTile tile(String id, Path path, Gap... breaks) {
        return new DrainTile(id, path, 0.1, 0.017, 2e-3, List.of(breaks), List.of(), Optional.empty());
    }

    static BlockWall wall(String id, Path path) {
        return new BlockWall(id, path, 2, Seal.of(SealState.OPEN), 0.09, 1e-4, 2e-5, 0, 1e-3, true, Optional.empty());
    }

    static Opening spot(String id, double x, double y) {
        return new Opening(
                id,
                OpeningKind.SUMP,
                new Opening.Spot(new Point(x, y), 0.2),
                new Opening.Orifice(0.01, 0.61),
                Seal.of(SealState.OPEN));
    }

    static Opening crack(String id, Opening.Place place) {
        return new Opening(id, OpeningKind.CRACK, place, new Opening.Crack(0.001, 0), Seal.of(SealState.OPEN));
    }

    static SuctionPoint suction(String id, double x, double y) {
        return new SuctionPoint(
                id, new Point(x, y), Optional.empty(), new SuctionPoint.Pit(0.2), new Source.Pressure(-100), false);
    }

    static SuctionPoint tee(String id, String tile, double x, double y) {
        return new SuctionPoint(
                id, new Point(x, y), Optional.of(tile), new SuctionPoint.Pit(0.2), new Source.Pressure(-100), false);
    }

    static TestHole hole(String id, double x, double y) {
        return new TestHole(id, new Point(x, y), "");
    }

    static Stage stage(Map<String, Seal> seals, Map<String, Source> sources, String hole, String suction) {
        return new Stage(
                "first",
                StageKind.BASELINE,
                seals,
                sources,
                List.of(new Stage.HoleReading(
                        hole,
                        OptionalDouble.of(1),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "")),
                List.of(new Stage.SystemReading(suction, OptionalDouble.empty(), OptionalDouble.of(-90), "")),
                "",
                "");
    }
}
