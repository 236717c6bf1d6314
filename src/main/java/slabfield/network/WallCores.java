package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import slabfield.field.Grid;
import slabfield.law.AirState;
import slabfield.law.Conductance;
import slabfield.law.Orifice;
import slabfield.law.QuadraticResistance;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.network.Network.Kind;

/**
 * The cores of hollow-block walls: nodes in a row along each wall's foot, tied to the layer by the joint, to each other
 * along the wall, to the room through tops and inside face, to outdoors through the outside face.
 */
final class WallCores {
    private static final double SAME_PLACE = 0.01;

    private final Network net;
    private final int room;
    private final int outdoors;
    private final LineFeeds feeds;
    private final Map<String, TileStations> tiles;
    private final Grid grid;
    private final AirState air;

    /**
     * @param room node of the room
     * @param outdoors node of the outdoors
     * @param tiles stations by tile id
     */
    WallCores(
            Network net,
            int room,
            int outdoors,
            LineFeeds feeds,
            Map<String, TileStations> tiles,
            Grid grid,
            AirState air) {
        this.net = net;
        this.room = room;
        this.outdoors = outdoors;
        this.feeds = feeds;
        this.tiles = tiles;
        this.grid = grid;
        this.air = air;
    }

    /** The two ends of a wall's row of core nodes. */
    private record WallEnd(BlockWall wall, Point at, int node, double half) {}

    /** Builds the cores of all walls and joins them at their corners. */
    void build(List<BlockWall> walls) {
        List<WallEnd> ends = new ArrayList<>();
        for (BlockWall wall : walls) ends.addAll(row(wall));
        for (int a = 0; a < ends.size(); a++) for (int b = a + 1; b < ends.size(); b++) join(ends.get(a), ends.get(b));
    }

    /** One wall's row of cores, one to each piece of its foot; returns its two ends. */
    private List<WallEnd> row(BlockWall wall) {
        int tops = net.addAccount(wall.id() + ": block tops", Kind.ROOM);
        int inside = net.addAccount(wall.id() + ": inside face", Kind.ROOM);
        int outside = net.addAccount(wall.id() + ": outside face", Kind.OUTDOORS);
        net.nextPart();
        List<Pieces.Piece> pieces = Pieces.cut(wall.path().points(), grid);
        int[] nodes = new int[pieces.size()];
        for (int k = 0; k < nodes.length; k++) {
            Pieces.Piece piece = pieces.get(k);
            nodes[k] = net.addNode(piece.x(), piece.y());
            if (k > 0)
                tie(
                        nodes[k - 1],
                        nodes[k],
                        wall.along() / (piece.along() - pieces.get(k - 1).along()),
                        Network.WITHIN);
            tieToLayer(wall, piece, nodes[k]);
            double topArea = wall.topArea() * wall.tops().remaining() * piece.length(),
                    face = wall.height() * piece.length();
            if (topArea > 0)
                net.link(nodes[k], room, Orifice.of(topArea, Opening.Orifice.USUAL_COEFFICIENT, air.density()), tops);
            tie(nodes[k], room, wall.faceToRoom() * face, inside);
            tie(nodes[k], outdoors, wall.faceToOutdoors() * face, outside);
        }
        if (nodes.length == 0) return List.of();
        Pieces.Piece first = pieces.get(0), last = pieces.get(nodes.length - 1);
        List<Point> points = wall.path().points();
        return List.of(
                new WallEnd(wall, points.get(0), nodes[0], first.along()),
                new WallEnd(
                        wall,
                        points.get(points.size() - 1),
                        nodes[nodes.length - 1],
                        wall.path().length() - last.along()));
    }

    private void tieToLayer(BlockWall wall, Pieces.Piece piece, int node) {
        if (wall.joint() > 0)
            for (LineFeeds.Feed f : feeds.of(piece))
                net.link(
                        f.node(),
                        node,
                        new QuadraticResistance(
                                1 / (wall.joint() * piece.length() * f.share()) + f.resistance(), f.inertial()),
                        Network.WITHIN,
                        f.cell(),
                        f.resistance(),
                        f.inertial());
        wall.tile().ifPresent(t -> {
            int station = tiles.get(t.tile()).nearest(new Point(piece.x(), piece.y()));
            if (station >= 0) tie(node, station, t.conductance() * piece.length(), Network.WITHIN);
        });
    }

    private void tie(int a, int b, double conductance, int account) {
        if (conductance > 0) net.link(a, b, new Conductance(conductance), account);
    }

    private void join(WallEnd a, WallEnd b) {
        if (a.at.distanceTo(b.at) > SAME_PLACE || a.node == b.node) return;
        if (!a.wall.joinsAtCorners() || !b.wall.joinsAtCorners()) return;
        if (a.wall.along() <= 0 || b.wall.along() <= 0) return;
        net.link(
                a.node,
                b.node,
                new Conductance(1 / (a.half / a.wall.along() + b.half / b.wall.along())),
                Network.WITHIN);
    }
}
