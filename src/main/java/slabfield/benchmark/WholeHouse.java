package slabfield.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Air;
import slabfield.model.BlockWall;
import slabfield.model.Display;
import slabfield.model.DrainTile;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;

/**
 * An invented house of 150 m2 that has all that the solver knows: inertial loss in the fill, a drain tile along the walls, hollow
 * walls on four sides, a joint, a sump, a fan.
 */
final class WholeHouse {
    private static final double LONG = 15;
    private static final double WIDE = 10;
    private static final double TILE_OFF = 0.4;

    private WholeHouse() {}

    /** @param cell side [m] */
    static Scenario withCells(double cell) {
        Slab slab = new Slab(
                "slab",
                List.of(new Point(0, 0), new Point(LONG, 0), new Point(LONG, WIDE), new Point(0, WIDE)),
                List.of(),
                0.1,
                true);
        DrainTile tile = new DrainTile(
                "tile",
                path(
                        TILE_OFF,
                        TILE_OFF,
                        LONG - TILE_OFF,
                        TILE_OFF,
                        LONG - TILE_OFF,
                        WIDE - TILE_OFF,
                        TILE_OFF,
                        WIDE - TILE_OFF),
                0.102,
                0.017,
                2e-3,
                List.of(),
                List.of(),
                Optional.of("sump"));
        Opening joint = new Opening(
                "joint",
                OpeningKind.OTHER,
                new Opening.Perimeter("slab"),
                new Opening.Crack(5e-4, 0),
                Seal.of(SealState.OPEN));
        Opening sump = new Opening(
                "sump",
                OpeningKind.OTHER,
                new Opening.Spot(new Point(TILE_OFF, TILE_OFF), 0.1),
                new Opening.Orifice(1e-3, 0.61),
                Seal.of(SealState.OPEN));
        Source fan = new Source.Fan(
                new Source.FanCurve(List.of(0.0, 0.04, 0.08), List.of(420.0, 250.0, 0.0)),
                new Source.Pipe(0.1, 9, 3, 1.5, 1.5e-6),
                0);
        SuctionPoint point =
                new SuctionPoint("S1", new Point(6.05, 4.05), Optional.empty(), new SuctionPoint.Pit(0.15), fan, false);
        return new Scenario(
                "house",
                "",
                "",
                Display.SI,
                List.of(slab),
                new Layer(Fill.of(0.1, 5e-8, 1500), List.of()),
                List.of(),
                List.of(tile),
                walls(),
                List.of(joint, sump),
                1e-6,
                -1,
                Air.STANDARD,
                List.of(point),
                List.of(),
                List.of(),
                Target.COMMON_PRACTICE,
                cell);
    }

    private static List<BlockWall> walls() {
        double[][] ends = {{0, 0, LONG, 0}, {LONG, 0, LONG, WIDE}, {LONG, WIDE, 0, WIDE}, {0, WIDE, 0, 0}};
        List<BlockWall> walls = new ArrayList<>();
        for (double[] e : ends)
            walls.add(new BlockWall(
                    "wall " + (walls.size() + 1),
                    path(e),
                    BlockWall.USUAL_HEIGHT,
                    Seal.of(SealState.COVERED),
                    BlockWall.FULLY_OPEN_TOP_AREA,
                    BlockWall.USUAL_JOINT,
                    BlockWall.USUAL_FACE,
                    BlockWall.USUAL_FACE,
                    BlockWall.USUAL_ALONG,
                    true,
                    Optional.empty()));
        return walls;
    }

    private static Path path(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) points.add(new Point(xy[i], xy[i + 1]));
        return new Path(points);
    }
}
