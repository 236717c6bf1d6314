package slabfield.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.law.AirState;
import slabfield.law.Conductance;
import slabfield.law.FanAndPipe;
import slabfield.law.FlowLaw;
import slabfield.law.Orifice;
import slabfield.law.PowerLaw;
import slabfield.law.QuadraticResistance;
import slabfield.law.TileFriction;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.Opening;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.Network.Kind;

/**
 * Ties what is drawn to the layer's cells: openings, drain tile, block walls, suction points.
 *
 * <p>A line is cut at the grid's lines; {@link LineFeeds} says where each piece draws from.
 */
final class Devices {
    private static final double TILES_MEET = 0.05;
    /** Lifts nothing; the hair of a slope keeps the law rising where the pipe has no loss. */
    private static final Source.FanCurve IDLE_FAN = new Source.FanCurve(List.of(0.0, 1.0), List.of(0.0, -1e-6));

    private final Scenario scenario;
    private final LayerGrid layer;
    private final Grid grid;
    private final AirState air;
    private final boolean fanOn;
    private final Network net;
    private final int room;
    private final int outdoors;
    private final int[] discNode;
    private final LineFeeds feeds;
    private final Map<String, TileStations> tiles = new HashMap<>();
    private final Map<String, Integer> riserFoot = new HashMap<>();
    private final Map<String, Integer> riserEnd = new HashMap<>();
    private final List<TileLink> tileLinks = new ArrayList<>();
    private final List<String> doubts = new ArrayList<>();
    private final int[] suctionNode;
    private final int[] suctionAccount;
    private final int[] suctionEnd;

    private Devices(Scenario scenario, LayerGrid layer, AirState air, boolean fanOn) {
        this.scenario = scenario;
        this.layer = layer;
        this.grid = layer.grid;
        this.air = air;
        this.fanOn = fanOn;
        net = new Network(layer, scenario.outdoorPressure());
        room = net.addFixed(0);
        outdoors = net.addFixed(scenario.outdoorPressure());
        discNode = new int[layer.discs.size()];
        feeds = new LineFeeds(layer, discNode);
        suctionNode = new int[scenario.suctionPoints().size()];
        suctionAccount = new int[suctionNode.length];
        suctionEnd = new int[suctionNode.length];
    }

    /**
     * A network ready to be closed, and where its parts are.
     *
     * @param suctionNode node of each suction point
     * @param suctionAccount account of each suction point that draws through a link, 0 for the others
     * @param suctionEnd fixed node of the discharge of each suction point behind a fan, 0 for the others; branches of a riser share one
     * @param discNode node of each of the layer's discs
     * @param tileLinks stretches of all tiles
     * @param doubts what could not be tied as drawn
     */
    record Built(
            Network network,
            int[] suctionNode,
            int[] suctionAccount,
            int[] suctionEnd,
            int[] discNode,
            List<TileLink> tileLinks,
            List<String> doubts) {}

    /** One stretch of a tile between two stations. */
    record TileLink(DrainTile tile, int link, int from, int to) {}

    /** Discs of a scenario in the order in which they are added to the layer: suction pits, then spot openings. */
    static void addDiscs(Scenario scenario, LayerGrid layer) {
        for (SuctionPoint s : scenario.suctionPoints())
            if (s.tile().isEmpty()) layer.addDisc(s.id(), s.at(), s.pit().radius());
        for (Opening o : scenario.openings())
            if (o.place() instanceof Opening.Spot spot && !onTile(scenario, o))
                layer.addDisc(o.id(), spot.at(), spot.radius());
    }

    /** Number, among a network's devices, that the pit of one more suction point would get. */
    static int nodeOfNextPit(Scenario scenario) {
        return 2
                + (int) scenario.suctionPoints().stream()
                        .filter(s -> s.tile().isEmpty())
                        .count();
    }

    private static boolean onTile(Scenario scenario, Opening o) {
        return scenario.drainTiles().stream().anyMatch(t -> t.sump().equals(Optional.of(o.id())));
    }

    /**
     * Builds the network of a scenario on its layer, whose discs are already cut out.
     *
     * @param fanOn false for the state with the suction off
     */
    static Built build(Scenario scenario, LayerGrid layer, AirState air, boolean fanOn) {
        Devices d = new Devices(scenario, layer, air, fanOn);
        d.tieDiscs();
        d.layTiles();
        d.openOpenings();
        new WallCores(d.net, d.room, d.outdoors, d.feeds, d.tiles, layer.grid, air).build(scenario.blockWalls());
        d.connectSuction();
        return new Built(d.net, d.suctionNode, d.suctionAccount, d.suctionEnd, d.discNode, d.tileLinks, d.doubts);
    }

    private void tieDiscs() {
        for (int k = 0; k < discNode.length; k++) {
            LayerGrid.Disc disc = layer.discs.get(k);
            net.nextPart();
            int node = net.addDisc(k, disc.at().x(), disc.at().y());
            discNode[k] = node;
            boolean tied = false;
            for (DiscTie.Link l : disc.tie().links) {
                int cell = layer.cellAt(l.column(), l.row());
                if (cell < 0 || layer.kind[cell] != CellKind.LAYER) continue;
                double open = disc.tie().resolved ? layer.openness(l) : feeds.separated(disc.at(), cell) ? 0 : 1;
                if (open <= 0) continue;
                double t = layer.transmissivity[cell], h = layer.thickness[cell];
                double linear = 1 / (t * l.conductance() * open);
                FlowLaw law = resistance(linear, l.inertial() * layer.drag[cell] / (h * h) / (open * open));
                net.link(cell, node, law, Network.WITHIN, cell, linear, 0);
                tied = true;
            }
            if (!tied)
                doubts.add("\"" + disc.subject() + "\" meets no layer: it lies on a barrier or too close to one.");
        }
    }

    private static FlowLaw resistance(double linear, double quadratic) {
        return quadratic > 0 ? new QuadraticResistance(linear, quadratic) : new Conductance(1 / linear);
    }

    private void layTiles() {
        for (DrainTile tile : scenario.drainTiles()) {
            TileStations stations = new TileStations();
            net.nextPart();
            tiles.put(tile.id(), stations);
            List<Gap> gaps = new ArrayList<>(tile.breaks());
            gaps.addAll(tile.waterFilled());
            for (Path stretch : Shapes.pieces(tile.path(), gaps)) layStretch(tile, stretch, stations);
        }
        joinTiles();
    }

    private void layStretch(DrainTile tile, Path stretch, TileStations stations) {
        int first = -1, last = -1;
        double firstAlong = 0, lastAlong = 0;
        for (Pieces.Piece piece : Pieces.cut(stretch.points(), grid)) {
            int node = net.addNode(piece.x(), piece.y());
            stations.add(piece, node);
            if (last >= 0) tieStations(tile, last, node, piece.along() - lastAlong);
            else {
                first = node;
                firstAlong = piece.along();
            }
            last = node;
            lastAlong = piece.along();
            for (LineFeeds.Feed f : feeds.of(piece)) {
                double slots = tile.slotArea() * piece.length() * f.share();
                Orifice law = Orifice.of(slots, Opening.Orifice.USUAL_COEFFICIENT, air.density());
                FlowLaw whole = f.inertial() > 0 ? f.before(law) : law.behind(f.resistance());
                net.link(f.node(), node, whole, Network.WITHIN, f.cell(), f.resistance(), f.inertial());
            }
        }
        if (stretch.isClosed() && last != first)
            tieStations(tile, last, first, stretch.length() - lastAlong + firstAlong);
    }

    private void tieStations(DrainTile tile, int a, int b, double length) {
        tileLinks.add(new TileLink(tile, net.link(a, b, friction(tile, length), Network.WITHIN), a, b));
    }

    private FlowLaw friction(DrainTile tile, double length) {
        return TileFriction.corrugated(tile.diameter(), tile.manning(), length, air.viscosity(), air.density());
    }

    /** Joins a tile whose end lies on another one. */
    private void joinTiles() {
        List<DrainTile> all = scenario.drainTiles();
        for (DrainTile a : all)
            for (DrainTile b : all) {
                if (a == b || a.path().isClosed()) continue;
                List<Point> points = a.path().points();
                for (Point end : List.of(points.get(0), points.get(points.size() - 1))) {
                    if (b.path().at(b.path().nearest(end)).distanceTo(end) > TILES_MEET) continue;
                    int n1 = tiles.get(a.id()).nearest(end),
                            n2 = tiles.get(b.id()).nearest(end);
                    if (n1 >= 0 && n2 >= 0) net.link(n1, n2, friction(a, Math.max(grid.width(), grid.height())), 0);
                }
            }
    }

    private void openOpenings() {
        int discs = (int) scenario.suctionPoints().stream()
                .filter(s -> s.tile().isEmpty())
                .count();
        for (Opening o : scenario.openings()) {
            int account = net.addAccount(o.id(), Kind.ROOM);
            double left = o.seal().remaining();
            if (o.place() instanceof Opening.Spot spot) {
                int node;
                if (onTile(scenario, o)) node = sumpNode(o, spot);
                else node = discNode[discs++];
                if (left > 0 && node >= 0) net.link(node, room, spotLaw(o, left), account);
                continue;
            }
            if (left <= 0) continue;
            double whole = lineLength(o);
            for (LineOnSlab line : lines(o))
                for (Pieces.Piece piece : Pieces.cut(line.points, grid))
                    for (LineFeeds.Feed f : feeds.of(piece))
                        net.link(
                                f.node(),
                                room,
                                lineLaw(o, piece.length() * f.share() * left, whole, line.slab, f),
                                account,
                                f.cell(),
                                f.resistance(),
                                f.inertial());
        }
    }

    private int sumpNode(Opening o, Opening.Spot spot) {
        for (DrainTile t : scenario.drainTiles())
            if (t.sump().equals(Optional.of(o.id()))) return tiles.get(t.id()).nearest(spot.at());
        return -1;
    }

    private FlowLaw spotLaw(Opening o, double left) {
        if (o.passage() instanceof Opening.Orifice a)
            return Orifice.of(a.area() * left, a.dischargeCoefficient(), air.density());
        if (o.passage() instanceof Opening.PowerLaw p) return new PowerLaw(p.coefficient() * left, p.exponent(), 0);
        throw new IllegalStateException("a spot has no crack law: " + o.id());
    }

    private FlowLaw lineLaw(Opening o, double length, double whole, Slab slab, LineFeeds.Feed feed) {
        double series = feed.resistance();
        if (o.passage() instanceof Opening.Crack c) {
            QuadraticResistance crack = QuadraticResistance.crack(
                    c.width(), slab.thickness(), length, c.bends(), air.viscosity(), air.density());
            return new QuadraticResistance(crack.linear() + series, crack.quadratic() + feed.inertial());
        }
        if (o.passage() instanceof Opening.Orifice a) {
            Orifice hole = Orifice.of(a.area() * length / whole, a.dischargeCoefficient(), air.density());
            return feed.inertial() > 0 ? feed.before(hole) : hole.behind(series);
        }
        Opening.PowerLaw p = (Opening.PowerLaw) o.passage();
        PowerLaw leak = new PowerLaw(p.coefficient() * length / whole, p.exponent(), 0);
        return feed.inertial() > 0 ? feed.before(leak) : leak.behind(series);
    }

    private record LineOnSlab(List<Point> points, Slab slab) {}

    private List<LineOnSlab> lines(Opening o) {
        if (o.place() instanceof Opening.Perimeter edge) {
            Slab slab = scenario.slabs().stream()
                    .filter(s -> s.id().equals(edge.slab()))
                    .findFirst()
                    .orElseThrow();
            List<Point> ring = new ArrayList<>(slab.outline());
            ring.add(ring.get(0));
            return List.of(new LineOnSlab(ring, slab));
        }
        Path path = ((Opening.Along) o.place()).path();
        return List.of(new LineOnSlab(path.points(), slabAt(path)));
    }

    private double lineLength(Opening o) {
        double sum = 0;
        for (LineOnSlab l : lines(o)) sum += new Path(l.points).length();
        return sum;
    }

    /** The slab that the line's middle lies under, or the nearest one. */
    private Slab slabAt(Path path) {
        Point middle = path.at(path.length() / 2);
        return scenario.slabs().stream()
                .min(java.util.Comparator.comparingDouble(s -> Shapes.area(s).distance(Shapes.point(middle))))
                .orElseThrow();
    }

    private void connectSuction() {
        int disc = 0;
        for (int k = 0; k < suctionNode.length; k++) {
            SuctionPoint s = scenario.suctionPoints().get(k);
            net.nextPart();
            int node = s.tile().isPresent() ? tiles.get(s.tile().get()).nearest(s.at()) : discNode[disc++];
            suctionNode[k] = node;
            if (node < 0) {
                doubts.add("Suction point \"" + s.id() + "\" meets no open stretch of its tile.");
                continue;
            }
            Source source = s.source();
            if (source instanceof Source.Fan fan) {
                if (!fanOn && !s.openWhenOff()) continue;
                suctionAccount[k] = net.addAccount(s.id(), Kind.EXHAUST);
                suctionEnd[k] = net.addFixed(fan.discharge());
                lay(node, fan.run(), fanOn ? fan.curve() : IDLE_FAN, suctionEnd[k], suctionAccount[k]);
            } else if (source instanceof Source.Branch branch) {
                if (!fanOn && !s.openWhenOff()) continue;
                suctionAccount[k] = net.addAccount(s.id(), Kind.EXHAUST);
                int foot = riserFoot(branch.riser(), s.at());
                suctionEnd[k] = riserEnd.get(branch.riser());
                lay(node, branch.run(), IDLE_FAN, foot, suctionAccount[k]);
            } else if (fanOn && source instanceof Source.Pressure p) net.hold(node, p.pressure());
            else if (fanOn && source instanceof Source.Flow f) net.draw(node, f.flow());
        }
    }

    /** Node at the foot of a riser, made with the riser's own pipe and fan when its first branch asks for it. */
    private int riserFoot(String id, Point near) {
        return riserFoot.computeIfAbsent(id, name -> {
            Riser riser = scenario.equipment().riser(name).orElseThrow();
            int foot = net.addNode(near.x(), near.y());
            int end = net.addFixed(riser.discharge());
            riserEnd.put(name, end);
            lay(foot, riser.run(), fanOn ? riser.curve() : IDLE_FAN, end, Network.WITHIN);
            return foot;
        });
    }

    /** Lays stretches of pipe one after the other, the last with the fan; the first link has the account. */
    private void lay(int from, List<Source.Pipe> run, Source.FanCurve curve, int to, int account) {
        int at = from, first = account;
        List<FanAndPipe> laws = line(run, curve, air);
        for (int i = 0; i + 1 < laws.size(); i++) {
            int next = net.addNode(net.x(from), net.y(from));
            net.link(at, next, laws.get(i), first);
            first = Network.WITHIN;
            at = next;
        }
        net.link(at, to, laws.get(laws.size() - 1), first);
    }

    /** Laws of the stretches of a pipe from its pit on, the last with the fan. */
    static List<FanAndPipe> line(List<Source.Pipe> run, Source.FanCurve curve, AirState air) {
        List<FanAndPipe> out = new ArrayList<>();
        for (int i = 0; i + 1 < run.size(); i++) out.add(fanLaw(IDLE_FAN, run.get(i), air));
        out.add(fanLaw(curve, run.isEmpty() ? Source.Pipe.NONE : run.get(run.size() - 1), air));
        return out;
    }

    private static FanAndPipe fanLaw(Source.FanCurve curve, Source.Pipe pipe, AirState air) {
        double[] flows = curve.flows().stream().mapToDouble(v -> v).toArray();
        double[] rises = curve.rises().stream().mapToDouble(v -> v).toArray();
        return new FanAndPipe(
                flows,
                rises,
                pipe.diameter(),
                pipe.lengthWithTurns(),
                pipe.ells(),
                pipe.coefficients(),
                pipe.roughness(),
                air.viscosity(),
                air.density());
    }
}
