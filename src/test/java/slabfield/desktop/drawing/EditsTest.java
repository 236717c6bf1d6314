package slabfield.desktop.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Blank;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.ScenarioCheck;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;

class EditsTest {
    private static final Item SLAB = Item.of(Kind.SLAB, "basement");
    private static final Item WALL = Item.of(Kind.WALL, "wall 1");
    private static final Item FOOTING = Item.of(Kind.BARRIER, "footing 1");

    /** 6 m by 4 m with a wall on its right edge, a footing across with a gap, a perimeter joint, a tile loop and a point. */
    private static Scenario house() {
        Scenario s = Makers.slab(Blank.house(), Places.rectangle(new Point(0, 0), new Point(6, 4)))
                .scenario();
        s = Makers.wall(s, List.of(new Point(6, 0), new Point(6, 4))).scenario();
        s = Makers.barrier(s, List.of(new Point(3, 0), new Point(3, 4))).scenario();
        s = Makers.gap(s, new Point(3.2, 2), 0.8).orElseThrow().scenario();
        s = Makers.perimeter(s, "basement").scenario();
        s = Makers.tile(s, Makers.loopInside(s.slabs().get(0)).orElseThrow()).scenario();
        return Makers.suction(s, new Point(1, 0.3)).scenario();
    }

    private static List<Point> points(Scenario s, Item item) {
        return Items.form(s, item).orElseThrow().points();
    }

    @Test
    void everythingThatIsMadeIsListedAndStandsWell() {
        assertThat(Items.all(house()))
                .extracting(Item::title)
                .containsExactly(
                        "slab basement",
                        "tile 1",
                        "barrier footing 1",
                        "gap 1 of footing 1",
                        "wall 1",
                        "opening joint 1",
                        "suction point S1");
        assertThat(ScenarioCheck.problems(house())).isEmpty();
        assertThat(house().suctionPoint("S1").orElseThrow().tile()).contains("tile 1");
    }

    @Test
    void aMovedBarrierTakesItsGapAlong() {
        Scenario moved = Edits.move(house(), List.of(FOOTING), 0.5, 0.3);
        assertThat(points(moved, FOOTING)).containsExactly(new Point(3.5, 0.3), new Point(3.5, 4.3));
        assertThat(moved.barriers().get(0).gaps().get(0).at()).isEqualTo(new Point(3.5, 2.3));
    }

    @Test
    void aGapMovesAlongItsBarrierAlone() {
        Scenario moved = Edits.move(house(), List.of(new Item(Kind.GAP, "footing 1", 0)), 0.7, 0.5);
        assertThat(moved.barriers().get(0).gaps().get(0).at()).isEqualTo(new Point(3, 2.5));
    }

    @Test
    void aLengthThatIsTypedKeepsARectangleSquareAndTakesTheWallAlong() {
        Scenario longer = Edits.setLength(house(), SLAB, 0, 7.5);
        assertThat(points(longer, SLAB)).isEqualTo(Places.rectangle(new Point(0, 0), new Point(7.5, 4)));
        assertThat(points(longer, WALL)).containsExactly(new Point(7.5, 0), new Point(7.5, 4));
        assertThat(ScenarioCheck.problems(longer)).isEmpty();
    }

    @Test
    void aLengthInAnObliqueOutlineMovesOneCornerAlone() {
        Scenario s = Makers.slab(
                        Blank.house(), List.of(new Point(0, 0), new Point(4, 0), new Point(5, 3), new Point(0, 3)))
                .scenario();
        assertThat(points(Edits.setLength(s, SLAB, 0, 3), SLAB))
                .containsExactly(new Point(0, 0), new Point(3, 0), new Point(5, 3), new Point(0, 3));
    }

    @Test
    void cornersAreAddedMovedAndTakenAway() {
        Scenario split = Edits.splitEdge(house(), SLAB, 0, new Point(2, 0));
        assertThat(points(split, SLAB)).hasSize(5).contains(new Point(2, 0));
        Scenario moved = Edits.moveCorner(split, SLAB, 1, new Point(2, -1));
        assertThat(points(moved, SLAB).get(1)).isEqualTo(new Point(2, -1));
        assertThat(Edits.deleteCorner(moved, SLAB, 1)).isEqualTo(house());
        Scenario triangle = Edits.deleteCorner(house(), SLAB, 2);
        assertThat(points(triangle, SLAB)).hasSize(3);
        assertThat(Edits.deleteCorner(triangle, SLAB, 0))
                .as("three corners are the fewest")
                .isEqualTo(triangle);
        assertThat(Edits.moveCorner(house(), SLAB, 0, new Point(6, 0)))
                .as("on its neighbour")
                .isEqualTo(house());
    }

    @Test
    void anEdgeMovesWithBothItsEnds() {
        assertThat(points(Edits.moveEdge(house(), SLAB, 1, 1, 0), SLAB))
                .isEqualTo(Places.rectangle(new Point(0, 0), new Point(7, 4)));
    }

    @Test
    void aFrameStretchesWhatIsInIt() {
        Scenario wide = Edits.setFrame(house(), Item.of(Kind.TILE, "tile 1"), new Frame(1, 1, 3, 2));
        assertThat(Frame.about(points(wide, Item.of(Kind.TILE, "tile 1")))).isEqualTo(new Frame(1, 1, 3, 2));
    }

    @Test
    void whatIsDeletedIsForgottenEverywhere() {
        Stage stage = new Stage(
                "test",
                StageKind.COMMUNICATION_TEST,
                Map.of("joint 1", Seal.of(SealState.SEALED)),
                Map.of(),
                List.of(),
                List.of(),
                "",
                "");
        Scenario s = house().withStages(List.of(stage));
        Scenario without = Edits.remove(s, List.of(Item.of(Kind.TILE, "tile 1"), Item.of(Kind.OPENING, "joint 1")));
        assertThat(without.drainTiles()).isEmpty();
        assertThat(without.suctionPoint("S1").flatMap(SuctionPoint::tile)).isEmpty();
        assertThat(without.stages().get(0).seals()).isEmpty();
        assertThat(Edits.remove(house(), List.of(SLAB)).openings())
                .as("the joint round the slab goes with it")
                .isEmpty();
        assertThat(Edits.remove(house(), List.of(new Item(Kind.GAP, "footing 1", 0)))
                        .barriers()
                        .get(0)
                        .gaps())
                .isEmpty();
    }

    @Test
    void aNewNameIsTakenOverEverywhereAndIsOnesOwn() {
        Scenario named = Naming.rename(house(), SLAB, "cellar");
        assertThat(((Opening.Perimeter) named.openings().get(0).place()).slab()).isEqualTo("cellar");
        named = Naming.rename(named, Item.of(Kind.TILE, "tile 1"), "loop");
        assertThat(named.suctionPoint("S1").flatMap(SuctionPoint::tile)).contains("loop");
        assertThat(ScenarioCheck.problems(named)).isEmpty();
        assertThatThrownBy(() -> Naming.rename(house(), WALL, "joint 1")).hasMessageContaining("joint 1");
        assertThatThrownBy(() -> Naming.rename(house(), WALL, " ")).hasMessageContaining("empty");
    }

    @Test
    void copiesHaveNamesOfTheirOwn() {
        Edits.Pasted pasted = Edits.paste(house(), List.of(FOOTING, Item.of(Kind.SUCTION, "S1")), house(), 1, 0);
        assertThat(pasted.items()).containsExactly(Item.of(Kind.BARRIER, "footing 2"), Item.of(Kind.SUCTION, "S2"));
        assertThat(pasted.scenario().barriers().get(1).gaps().get(0).at()).isEqualTo(new Point(4, 2));
        Edits.Pasted elsewhere = Edits.paste(house(), List.of(FOOTING), Blank.house(), 0, 0);
        assertThat(elsewhere.items()).containsExactly(FOOTING);
        Scenario gaps = Edits.paste(house(), List.of(new Item(Kind.GAP, "footing 1", 0)), house(), 0, 1)
                .scenario();
        assertThat(gaps.barriers().get(0).gaps()).extracting(g -> g.at().y()).containsExactly(2.0, 3.0);
    }

    @Test
    void theLoopOfATileRunsInsideTheSlab() {
        Form loop = Items.form(house(), Item.of(Kind.TILE, "tile 1")).orElseThrow();
        assertThat(loop.shape()).isEqualTo(Form.Shape.LOOP);
        assertThat(Frame.about(loop.points()).left()).isCloseTo(0.3, within(1e-9));
        assertThat(Frame.about(loop.points()).high()).isCloseTo(3.7, within(1e-9));
        var narrow = Makers.slab(Blank.house(), Places.rectangle(new Point(0, 0), new Point(6, 0.5)))
                .scenario()
                .slabs()
                .get(0);
        assertThat(Makers.loopInside(narrow)).isEqualTo(Optional.empty());
    }

    @Test
    void underThePointerSpotsComeBeforeLinesAndLinesBeforeAreas() {
        List<Hit> hits = Hit.all(house(), List.of(Layer.values()), new Point(3, 0.32), 0.1);
        assertThat(hits)
                .extracting(h -> h.item().kind())
                .startsWith(Kind.BARRIER, Kind.TILE)
                .endsWith(Kind.SLAB);
        assertThat(Hit.all(house(), List.of(Layer.SLABS), new Point(3, 0.32), 0.1))
                .hasSize(1);
        assertThat(Hit.all(house(), List.of(Layer.values()), new Point(1.05, 0.31), 0.1)
                        .get(0)
                        .item()
                        .kind())
                .isEqualTo(Kind.SUCTION);
        assertThat(Hit.all(house(), List.of(Layer.values()), new Point(9, 9), 0.1))
                .isEmpty();
        assertThat(Hit.grip(house(), SLAB, new Point(6.02, 4.02), 0.1)).contains(new Hit(SLAB, Hit.Part.CORNER, 2));
    }
}
