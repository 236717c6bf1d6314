package slabfield.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import slabfield.law.AirState;
import slabfield.law.Orifice;
import slabfield.law.QuadraticResistance;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.Slab;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.Zone;
import slabfield.network.SlabSolver;

/**
 * What can be unknown of a house, each with what is believed of it before any reading. The spread of a fill's word is that
 * of the range which {@link FillWord} gives it; all other spreads are common practice.
 */
public final class Unknowns {
    /** Standard normal deviate of 5 and 95 %. */
    private static final double OUTER = 1.6449;

    private static final double GIVEN_BY_NUMBER = 3;
    private static final double INERTIAL = 2;
    private static final double LEAK = 4;
    private static final double WALL_FOOT = 5;
    private static final double LEFT_BY_SEAL = 3;
    private static final double SOIL = 10;
    private static final double BARRIER = 30;
    private static final double GAP = 2;
    private static final double TILE = 3;
    private static final double PIT = 1.5;
    private static final double OUTDOORS = 2;

    /** Begins the ids of the leaks of openings. */
    static final String OPENING = "opening ";

    /** Pressure difference at which a leak keeps its flow while its exponent is changed [Pa]. */
    private static final double REFERENCE = 10;

    private Unknowns() {}

    /**
     * What is usually unknown: every fill, the inertial coefficient where there is one and where coarse fill is drawn without
     * one, every opening's leak and exponent, the fill beside those of one place, wall tops and foot,
     * native soil where it leaks as drawn, barriers that are only suspected, and the pressure outdoors where readings with
     * the fan off tell of it.
     */
    public static List<Parameter> of(Scenario house) {
        List<Parameter> out = new ArrayList<>();
        out.add(fill(house));
        for (Zone z : house.layer().zones()) out.add(zone(house, z.id()));
        if (house.layer().fill().inertial() > 0) out.add(inertial(house));
        InertialNotDrawn.of(house).ifPresent(out::add);
        for (Opening o : house.openings()) {
            out.add(leak(house, o.id()));
            out.add(exponent(house, o.id()));
            FillBeside.of(house, o).ifPresent(out::add);
        }
        for (BlockWall w : house.blockWalls()) {
            if (w.topArea() > 0) out.add(tops(house, w.id()));
            if (w.joint() > 0) out.add(wallFoot(house, w.id()));
        }
        if (house.soilLeakance() > 0) out.add(soil(house.soilLeakance()));
        for (Barrier b : house.barriers()) if (!b.known()) out.add(barrier(house, b.id()));
        if (house.outdoorPressure() != 0 && hasFanOff(house)) out.add(outdoors(house));
        return out;
    }

    private static boolean hasFanOff(Scenario house) {
        return house.stages().stream()
                .flatMap(s -> s.holes().stream())
                .anyMatch(r -> r.fanOff().isPresent());
    }

    /** Permeability of the layer where no zone says otherwise [m2]. */
    public static Parameter fill(Scenario house) {
        return new Parameter(
                "fill",
                Parameter.Kind.PERMEABILITY,
                "the permeability of the fill",
                permeability(house.layer().fill()),
                (h, k) -> withFill(h, f -> with(f, k)));
    }

    /** Permeability of a zone [m2]. */
    public static Parameter zone(Scenario house, String id) {
        Zone zone = one(house.layer().zones(), Zone::id, id);
        return new Parameter(
                "zone " + id,
                Parameter.Kind.PERMEABILITY,
                "the permeability of zone \"" + id + "\"",
                permeability(zone.fill()),
                (h, k) -> h.withLayer(new Layer(
                        h.layer().fill(),
                        each(h.layer().zones(), Zone::id, id, z -> new Zone(id, z.outline(), with(z.fill(), k))))));
    }

    /** Inertial coefficient of the layer's own fill [1/m]. */
    public static Parameter inertial(Scenario house) {
        return new Parameter(
                "inertial",
                Parameter.Kind.INERTIAL,
                "the inertial coefficient of the fill",
                Prior.factor(house.layer().fill().inertial(), INERTIAL),
                (h, b) -> withFill(h, f -> new Fill(f.word(), f.thickness(), f.permeability(), b, f.assumed())));
    }

    /** Leak of an opening as a multiple of what is drawn. */
    public static Parameter leak(Scenario house, String id) {
        Opening opening = one(house.openings(), Opening::id, id);
        return new Parameter(
                OPENING + id,
                Parameter.Kind.LEAK,
                "the leak of \"" + id + "\"",
                Prior.factor(1, LEAK),
                (h, m) -> h.withOpenings(each(
                        h.openings(),
                        Opening::id,
                        id,
                        o -> new Opening(id, o.kind(), o.place(), times(opening.passage(), m), o.seal()))));
    }

    private static Opening.Passage times(Opening.Passage passage, double multiple) {
        if (passage instanceof Opening.Orifice a)
            return new Opening.Orifice(a.area() * multiple, a.dischargeCoefficient());
        if (passage instanceof Opening.Crack c) return new Opening.Crack(c.width() * Math.cbrt(multiple), c.bends());
        Opening.PowerLaw p = (Opening.PowerLaw) passage;
        return new Opening.PowerLaw(p.coefficient() * multiple, p.exponent());
    }

    /**
     * How the flow of an opening grows with its pressure difference, q ~ dp^n, n from 0.5 for a hole to 1 for a fine crack. No
     * real opening is as ideal as the law that is drawn; what is drawn counts at 10 Pa.
     */
    public static Parameter exponent(Scenario house, String id) {
        Opening.Passage drawn = one(house.openings(), Opening::id, id).passage();
        double median =
                drawn instanceof Opening.PowerLaw p ? p.exponent() : drawn instanceof Opening.Crack ? 0.85 : 0.58;
        double spread = drawn instanceof Opening.PowerLaw ? 0.05 : drawn instanceof Opening.Crack ? 0.12 : 0.06;
        return new Parameter(
                "exponent " + id,
                Parameter.Kind.EXPONENT,
                "the exponent of \"" + id + "\"",
                new Prior(Prior.Scale.LINEAR, median, spread, Prior.COMMON_PRACTICE),
                (h, n) -> h.withOpenings(each(
                        h.openings(),
                        Opening::id,
                        id,
                        o -> new Opening(
                                id,
                                o.kind(),
                                o.place(),
                                withExponent(h, o, Math.max(0.5, Math.min(1, n))),
                                o.seal()))));
    }

    private static Opening.Passage withExponent(Scenario h, Opening o, double n) {
        AirState air = SlabSolver.airOf(h);
        double flow;
        if (o.passage() instanceof Opening.Orifice a)
            flow = Orifice.of(a.area(), a.dischargeCoefficient(), air.density()).flow(REFERENCE);
        else if (o.passage() instanceof Opening.Crack c)
            flow = QuadraticResistance.crack(
                            c.width(),
                            h.slabs().get(0).thickness(),
                            length(h, o.place()),
                            c.bends(),
                            air.viscosity(),
                            air.density())
                    .flow(REFERENCE);
        else {
            Opening.PowerLaw p = (Opening.PowerLaw) o.passage();
            flow = p.coefficient() * Math.pow(REFERENCE, p.exponent());
        }
        return new Opening.PowerLaw(flow / Math.pow(REFERENCE, n), n);
    }

    private static double length(Scenario h, Opening.Place place) {
        if (place instanceof Opening.Along line) return line.path().length();
        String slab = ((Opening.Perimeter) place).slab();
        List<Point> ring = new ArrayList<>(one(h.slabs(), Slab::id, slab).outline());
        ring.add(ring.get(0));
        return new Path(ring).length();
    }

    /** Leak of the block tops of a wall as a multiple of what is drawn. */
    public static Parameter tops(Scenario house, String wall) {
        double drawn = one(house.blockWalls(), BlockWall::id, wall).topArea();
        return new Parameter(
                "tops " + wall,
                Parameter.Kind.LEAK,
                "the leak of the block tops of \"" + wall + "\"",
                Prior.factor(1, LEAK),
                (h, m) -> withWall(
                        h,
                        wall,
                        w -> new BlockWall(
                                wall,
                                w.path(),
                                w.height(),
                                w.tops(),
                                drawn * m,
                                w.joint(),
                                w.faceToRoom(),
                                w.faceToOutdoors(),
                                w.along(),
                                w.joinsAtCorners(),
                                w.tile())));
    }

    /** Conductance of the foot of a wall into its cores as a multiple of what is drawn. */
    public static Parameter wallFoot(Scenario house, String wall) {
        double drawn = one(house.blockWalls(), BlockWall::id, wall).joint();
        return new Parameter(
                "foot " + wall,
                Parameter.Kind.LEAK,
                "the leak at the foot of \"" + wall + "\"",
                Prior.factor(1, WALL_FOOT),
                (h, m) -> withWall(
                        h,
                        wall,
                        w -> new BlockWall(
                                wall,
                                w.path(),
                                w.height(),
                                w.tops(),
                                w.topArea(),
                                drawn * m,
                                w.faceToRoom(),
                                w.faceToOutdoors(),
                                w.along(),
                                w.joinsAtCorners(),
                                w.tile())));
    }

    /** Part of an opening, or of a wall's tops, that is left open in the stages that close it without giving a fraction. */
    public static Parameter leftBySeal(Scenario house, String id) {
        double assumed = house.stages().stream()
                .map(s -> s.seals().get(id))
                .filter(s -> s != null && s.assumed() && s.fraction() > 0)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no stage closes \"" + id + "\" by a word"))
                .remaining();
        return new Parameter(
                "left by seal " + id,
                Parameter.Kind.LEFT_BY_SEAL,
                "what the seal of \"" + id + "\" leaves open",
                Prior.factor(assumed, LEFT_BY_SEAL),
                (h, left) -> h.withStages(
                        h.stages().stream().map(s -> resealed(s, id, left)).toList()));
    }

    private static Stage resealed(Stage s, String id, double left) {
        Seal seal = s.seals().get(id);
        if (seal == null || !seal.assumed() || seal.fraction() == 0) return s;
        Map<String, Seal> seals = new LinkedHashMap<>(s.seals());
        seals.put(id, new Seal(seal.state(), 1 - Math.min(1, left), true));
        return new Stage(s.id(), s.kind(), seals, s.sources(), s.holes(), s.systems(), s.time(), s.notes());
    }

    /** Native soil's conductance to outdoors, per area [m/(s Pa)]. */
    public static Parameter soil(double median) {
        return new Parameter(
                "soil",
                Parameter.Kind.SOIL,
                "the leakance of the native soil",
                Prior.factor(median, SOIL),
                Scenario::withSoilLeakance);
    }

    /**
     * Permeability of what a barrier is made of [m2]. One that is drawn as tight is believed to pass a hundredth of what the
     * layer's fill passes.
     */
    public static Parameter barrier(Scenario house, String id) {
        Barrier drawn = one(house.barriers(), Barrier::id, id);
        double median = drawn.permeability() > 0
                ? drawn.permeability()
                : 0.01 * house.layer().fill().permeability();
        return new Parameter(
                "barrier " + id,
                Parameter.Kind.BARRIER,
                "the permeability of \"" + id + "\"",
                Prior.factor(median, BARRIER),
                (h, k) -> h.withBarriers(each(
                        h.barriers(),
                        Barrier::id,
                        id,
                        b -> new Barrier(id, b.path(), b.width(), k, b.known(), b.gaps()))));
    }

    /** Length of a barrier's gap, counted from 0 [m]. */
    public static Parameter gap(Scenario house, String id, int number) {
        double drawn = one(house.barriers(), Barrier::id, id).gaps().get(number).length();
        return new Parameter(
                "gap " + number + " of " + id,
                Parameter.Kind.GAP,
                "the length of gap " + (number + 1) + " in \"" + id + "\"",
                Prior.factor(drawn, GAP),
                (h, length) -> h.withBarriers(each(h.barriers(), Barrier::id, id, b -> {
                    List<Gap> gaps = new ArrayList<>(b.gaps());
                    gaps.set(number, new Gap(gaps.get(number).at(), length));
                    return new Barrier(id, b.path(), b.width(), b.permeability(), b.known(), gaps);
                })));
    }

    /** Open area of a tile's slots as a multiple of what is drawn: silt and cloth close them. */
    public static Parameter tileSlots(Scenario house, String id) {
        double drawn = one(house.drainTiles(), DrainTile::id, id).slotArea();
        return new Parameter(
                "tile " + id,
                Parameter.Kind.TILE,
                "the open slots of tile \"" + id + "\"",
                Prior.factor(1, TILE),
                (h, m) -> h.withDrainTiles(each(
                        h.drainTiles(),
                        DrainTile::id,
                        id,
                        t -> new DrainTile(
                                id,
                                t.path(),
                                t.diameter(),
                                t.manning(),
                                drawn * m,
                                t.breaks(),
                                t.waterFilled(),
                                t.sump()))));
    }

    /** Radius of a pit [m]. */
    public static Parameter pit(Scenario house, String suctionPoint) {
        double drawn =
                one(house.suctionPoints(), SuctionPoint::id, suctionPoint).pit().radius();
        return new Parameter(
                "pit " + suctionPoint,
                Parameter.Kind.PIT,
                "the radius of the pit of \"" + suctionPoint + "\"",
                Prior.factor(drawn, PIT),
                (h, r) -> h.withSuctionPoint(
                        suctionPoint,
                        s -> new SuctionPoint(
                                s.id(), s.at(), s.tile(), new SuctionPoint.Pit(r), s.source(), s.openWhenOff())));
    }

    /** Pressure outdoors at floor level [Pa]. */
    public static Parameter outdoors(Scenario house) {
        return new Parameter(
                "outdoors",
                Parameter.Kind.OUTDOORS,
                "the pressure outdoors at floor level",
                new Prior(Prior.Scale.LINEAR, house.outdoorPressure(), OUTDOORS, Prior.COMMON_PRACTICE),
                Scenario::withOutdoorPressure);
    }

    /** A word's range, taken as holding nine fills of ten; a number is trusted to a factor. */
    private static Prior permeability(Fill fill) {
        FillWord word = fill.word();
        if (!fill.assumed() || Double.isNaN(word.leastPermeability()))
            return Prior.factor(fill.permeability(), GIVEN_BY_NUMBER);
        double below = Math.log(fill.permeability() / word.leastPermeability());
        double above = Math.log(word.largestPermeability() / fill.permeability());
        return new Prior(
                Prior.Scale.LOGARITHMIC,
                fill.permeability(),
                Math.exp(Math.max(below, above) / OUTER),
                "the range of the word \"" + word.words() + "\"");
    }

    private static Fill with(Fill fill, double permeability) {
        return new Fill(fill.word(), fill.thickness(), permeability, fill.inertial(), false);
    }

    private static Scenario withFill(Scenario h, UnaryOperator<Fill> change) {
        return h.withLayer(new Layer(change.apply(h.layer().fill()), h.layer().zones()));
    }

    private static Scenario withWall(Scenario h, String id, UnaryOperator<BlockWall> change) {
        return h.withBlockWalls(each(h.blockWalls(), BlockWall::id, id, change));
    }

    private static <T> List<T> each(
            List<T> items, java.util.function.Function<T, String> name, String id, UnaryOperator<T> change) {
        return items.stream()
                .map(t -> name.apply(t).equals(id) ? change.apply(t) : t)
                .toList();
    }

    private static <T> T one(List<T> items, java.util.function.Function<T, String> name, String id) {
        return items.stream()
                .filter(t -> name.apply(t).equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the house has no \"" + id + "\""));
    }
}
