package slabfield.model;

import static org.assertj.core.api.Assertions.assertThat;
import static slabfield.model.DrawnHouse.barrier;
import static slabfield.model.DrawnHouse.crack;
import static slabfield.model.DrawnHouse.hole;
import static slabfield.model.DrawnHouse.path;
import static slabfield.model.DrawnHouse.rectangle;
import static slabfield.model.DrawnHouse.slab;
import static slabfield.model.DrawnHouse.spot;
import static slabfield.model.DrawnHouse.stage;
import static slabfield.model.DrawnHouse.suction;
import static slabfield.model.DrawnHouse.tee;
import static slabfield.model.DrawnHouse.tile;
import static slabfield.model.DrawnHouse.wall;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** One house for each message, and houses that must pass. */
class ScenarioCheckTest {

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("bad")
    void namesTheThingThePlaceAndTheRemedy(String path, String message, Consumer<DrawnHouse> change) {
        DrawnHouse house = new DrawnHouse();
        change.accept(house);
        assertThat(house.problems()).containsExactly(new Problem(path, message));
    }

    static Stream<Arguments> bad() {
        return Stream.concat(Stream.concat(outlines(), places()), names());
    }

    private static Stream<Arguments> outlines() {
        return Stream.of(
                bad(
                        "/slabs/0/outline",
                        "slab \"bow\": its outline crosses itself near (5.00 m, 4.00 m); list the corners in order, once around",
                        h -> h.slabs.set(
                                0,
                                new Slab("bow", path(0, 0, 10, 8, 10, 0, 0, 8).points(), List.of(), 0.1, true))),
                bad(
                        "/slabs/0/outline",
                        "slab \"line\": its outline encloses no area; check its corners",
                        h -> h.slabs.set(
                                0, new Slab("line", path(0, 0, 5, 0, 10, 0).points(), List.of(), 0.1, true))),
                bad(
                        "/slabs/0/outline",
                        "slab \"twice\": its outline repeats its first corner at the end; leave the last one out",
                        h -> h.slabs.set(
                                0,
                                new Slab("twice", path(0, 0, 9, 0, 9, 9, 0, 0).points(), List.of(), 0.1, true))),
                bad(
                        "/slabs/1/outline",
                        "slab \"b\" lies partly over slab \"basement\"; slabs may touch but not overlap",
                        h -> h.slabs.add(slab("b", 9, 0, 12, 2))),
                bad(
                        "/slabs/0/holes/0",
                        "slab \"h\": hole 1 lies wholly or partly outside its outline; move it inside",
                        h -> h.slabs.set(
                                0, new Slab("h", rectangle(0, 0, 9, 9), List.of(rectangle(8, 8, 10, 10)), 0.1, true))),
                bad(
                        "/slabs/0/holes",
                        "slab \"h\": its holes leave nothing of it",
                        h -> h.slabs.set(
                                0, new Slab("h", rectangle(0, 0, 9, 9), List.of(rectangle(0, 0, 9, 9)), 0.1, true))),
                bad(
                        "/layer/zones/0/outline",
                        "zone \"z\" lies outside every slab outline; move it inside or redraw the outline",
                        h -> h.zones.add(new Zone("z", rectangle(10, 0, 12, 8), Fill.of(FillWord.MIXED, 0.1)))),
                bad(
                        "/slabs/1",
                        "slab \"wing\" is cut off from every suction point; draw a gap in the barrier, add a suction point, or say \"treated\": false",
                        h -> {
                            h.slabs.add(slab("wing", 10, 0, 14, 8));
                            h.barriers.add(barrier("strip", path(10, 0, 10, 8)));
                            h.suctions.add(suction("S1", 5, 5));
                        }));
    }

    private static Stream<Arguments> places() {
        String outside = " lies outside every slab outline; move it inside or redraw the outline";
        String onBarrier = " stands on a barrier, where there is no layer; move it off the strip or draw a gap";
        return Stream.of(
                bad("/openings/0/at", "opening \"sump\"" + outside, h -> h.openings.add(spot("sump", 11, 3))),
                bad("/openings/0/at", "opening \"sump\"" + outside, h -> h.openings.add(spot("sump", 10, 3))),
                bad(
                        "/openings/0/path",
                        "opening \"crack\"" + outside,
                        h -> h.openings.add(crack("crack", new Opening.Along(path(11, 0, 12, 0))))),
                bad(
                        "/openings/0/path",
                        "opening \"crack\" runs outside every slab outline; keep all of it under a slab",
                        h -> h.openings.add(crack("crack", new Opening.Along(path(9, 1, 10.05, 1))))),
                bad("/suctionPoints/0/at", "suction point \"S1\"" + outside, h -> {
                    h.suctions.add(suction("S1", 14.2, 3));
                    h.slabs.set(0, new Slab("basement", rectangle(0, 0, 10, 8), List.of(), 0.1, false));
                }),
                bad("/testHoles/0/at", "test hole \"T1\"" + outside, h -> h.holes.add(hole("T1", -1, 0))),
                bad("/testHoles/0/at", "test hole \"T1\"" + onBarrier, h -> {
                    h.holes.add(hole("T1", 5.1, 4));
                    h.barriers.add(barrier("footing", path(5, 0, 5, 8)));
                }),
                bad(
                        "/barriers/0/path",
                        "barrier \"footing\"" + outside,
                        h -> h.barriers.add(barrier("footing", path(11, 0, 11, 8)))),
                bad(
                        "/barriers/0/gaps/0/at",
                        "barrier \"f\": gap 1 lies 0.60 m from the line; put its middle on the line",
                        h -> h.barriers.add(barrier("f", path(5, 0, 5, 8), new Gap(new Point(5.6, 4), 1)))),
                bad(
                        "/barriers/0/gaps/0/length",
                        "barrier \"f\": gap 1 has no length; write how wide it is",
                        h -> h.barriers.add(barrier("f", path(5, 0, 5, 8), new Gap(new Point(5, 4), 0)))),
                bad(
                        "/drainTile/0/path",
                        "drain tile \"loop\" runs outside every slab outline; keep all of it under a slab",
                        h -> h.tiles.add(tile("loop", path(1, 1, 1, 9)))),
                bad(
                        "/drainTile/0/breaks/0/at",
                        "drain tile \"loop\": break 1 lies 2.00 m from the line; put its middle on the line",
                        h -> h.tiles.add(tile("loop", path(1, 1, 1, 7), new Gap(new Point(3, 3), 0)))),
                bad(
                        "/blockWalls/0/path",
                        "block wall \"north\" runs outside every slab outline; keep all of it under a slab",
                        h -> h.walls.add(wall("north", path(0, 8, 11, 8)))),
                bad(
                        "/suctionPoints/0/at",
                        "suction point \"S1\" is teed into drain tile \"loop\" but stands 1.50 m from it; move it to the tile or leave out \"tile\"",
                        h -> {
                            h.tiles.add(tile("loop", path(1, 1, 1, 7)));
                            h.suctions.add(tee("S1", "loop", 2.5, 3));
                        }),
                bad(
                        "/suctionPoints/0/at",
                        "suction point \"S1\" overlaps opening \"sump\": their middles are 0.30 m apart and their radii together 0.40 m; move one or make it smaller",
                        h -> {
                            h.suctions.add(suction("S1", 3, 3));
                            h.openings.add(spot("sump", 3.3, 3));
                        }));
    }

    private static Stream<Arguments> names() {
        return Stream.of(
                bad(
                        "/testHoles/1/id",
                        "test hole \"T1\" has the same name as number 1 of the list; give each its own",
                        h -> {
                            h.holes.add(hole("T1", 1, 1));
                            h.holes.add(hole("T1", 2, 2));
                        }),
                bad(
                        "/openings/0/id",
                        "opening \"north\" has the name of a block wall; a stage could not tell them apart, so give it another",
                        h -> {
                            h.openings.add(spot("north", 1, 1));
                            h.walls.add(wall("north", path(0, 8, 10, 8)));
                        }),
                bad(
                        "/openings/0/perimeterOf",
                        "opening \"joint\" names the slab \"basment\", which is not drawn; did you mean \"basement\"?",
                        h -> h.openings.add(crack("joint", new Opening.Perimeter("basment")))),
                bad(
                        "/drainTile/0/sump",
                        "drain tile \"loop\" names the opening \"sunp\", which is not drawn; did you mean \"sump\"?",
                        h -> {
                            h.openings.add(spot("sump", 5, 5));
                            h.tiles.add(endingIn("sunp"));
                        }),
                bad(
                        "/drainTile/0/sump",
                        "drain tile \"loop\" ends in opening \"crack\", which is a line; a sump is a spot with \"at\"",
                        h -> {
                            h.openings.add(crack("crack", new Opening.Along(path(1, 1, 2, 2))));
                            h.tiles.add(endingIn("crack"));
                        }),
                bad(
                        "/suctionPoints/0/tile",
                        "suction point \"S1\" names the drain tile \"loop\", which is not drawn; there is none yet",
                        h -> {
                            h.suctions.add(tee("S1", "loop", 2, 2));
                            h.suctions.add(suction("S2", 5, 5));
                        }),
                bad(
                        "/stages/0/readings/0/hole",
                        "stage \"first\" names the test hole \"T2\", which is not drawn; did you mean \"T1\"?",
                        h -> staged(h, Map.of(), Map.of(), "T2", "S1")),
                bad(
                        "/stages/0/system/0/suctionPoint",
                        "stage \"first\" names the suction point \"fan\", which is not drawn; there is \"S1\"",
                        h -> staged(h, Map.of(), Map.of(), "T1", "fan")),
                bad(
                        "/stages/0/openings/a~1b",
                        "stage \"first\" names the opening or block wall \"a/b\", which is not drawn; there is none yet",
                        h -> staged(h, Map.of("a/b", Seal.of(SealState.SEALED)), Map.of(), "T1", "S1")),
                bad(
                        "/stages/0/sources/S9",
                        "stage \"first\" names the suction point \"S9\", which is not drawn; did you mean \"S1\"?",
                        h -> staged(h, Map.of(), Map.of("S9", new Source.Pressure(-5)), "T1", "S1")));
    }

    private static void staged(
            DrawnHouse h, Map<String, Seal> seals, Map<String, Source> sources, String hole, String suction) {
        h.holes.add(hole("T1", 1, 1));
        h.suctions.add(suction("S1", 5, 5));
        h.stages.add(stage(seals, sources, hole, suction));
    }

    private static DrainTile endingIn(String sump) {
        return new DrainTile("loop", path(1, 1, 1, 7), 0.1, 0.017, 2e-3, List.of(), List.of(), Optional.of(sump));
    }

    private static Arguments bad(String path, String message, Consumer<DrawnHouse> change) {
        return Arguments.of(path, message, change);
    }

    @Test
    void linesMayLieOnTheEdge() {
        DrawnHouse house = new DrawnHouse();
        house.openings.add(crack("joint", new Opening.Along(path(0, 0, 10, 0, 10, 8))));
        house.walls.add(wall("north", path(0, 8, 10, 8)));
        house.openings.add(crack("rim", new Opening.Perimeter("basement")));
        house.barriers.add(barrier("footing", path(5, 0, 5, 8), new Gap(new Point(5.4, 4), 1)));
        house.holes.add(hole("T1", 5, 4));
        assertThat(house.problems()).isEmpty();
    }

    @Test
    void aGapALeakyStripOrATileThroughTheStripReachesTheOtherSlab() {
        assertThat(twoSlabs(barrier("s", path(10, 0, 10, 8), new Gap(new Point(10, 1), 0.3)))
                        .problems())
                .isEmpty();
        Barrier leaky = new Barrier("s", path(10, 0, 10, 8), 0.4, 1e-12, true, List.of());
        assertThat(twoSlabs(leaky).problems()).isEmpty();
        DrawnHouse tiled = twoSlabs(barrier("s", path(10, 0, 10, 8)));
        tiled.tiles.add(tile("t", path(2, 2, 13, 2)));
        assertThat(tiled.problems()).isEmpty();
    }

    @Test
    void aBrokenTileDoesNotReachTheOtherSlab() {
        DrawnHouse tiled = twoSlabs(barrier("s", path(10, 0, 10, 8)));
        tiled.tiles.add(tile("t", path(2, 2, 13, 2), new Gap(new Point(10, 2), 0)));
        assertThat(tiled.problems()).extracting(Problem::path).containsExactly("/slabs/1");
    }

    @Test
    void aTeeDrawsThroughItsPieceOfTileOnly() {
        DrawnHouse house = twoSlabs(barrier("s", path(10, 0, 10, 8)));
        house.suctions.set(0, tee("S1", "t", 3, 2));
        house.suctions.add(tee("S2", "t", 4, 2));
        house.tiles.add(tile("t", path(2, 2, 13, 2), new Gap(new Point(10, 2), 0)));
        assertThat(house.problems()).extracting(Problem::path).containsExactly("/slabs/1");
    }

    @Test
    void aSlabThatIsNotMeantToBeTreatedMayBeCutOff() {
        DrawnHouse house = twoSlabs(barrier("s", path(10, 0, 10, 8)));
        house.slabs.set(1, new Slab("wing", rectangle(10, 0, 14, 8), List.of(), 0.1, false));
        assertThat(house.problems()).isEmpty();
    }

    @Test
    void withoutAnySuctionPointNoSlabIsCutOff() {
        DrawnHouse house = twoSlabs(barrier("s", path(10, 0, 10, 8)));
        house.suctions.clear();
        assertThat(house.problems()).isEmpty();
    }

    private static DrawnHouse twoSlabs(Barrier between) {
        DrawnHouse house = new DrawnHouse();
        house.slabs.add(slab("wing", 10, 0, 14, 8));
        house.barriers.add(between);
        house.suctions.add(suction("S1", 5, 5));
        return house;
    }
}
