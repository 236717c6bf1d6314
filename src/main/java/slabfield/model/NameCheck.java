package slabfield.model;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import slabfield.wording.Nearest;

/** Names given twice, and names of things that are not there. */
final class NameCheck {
    private final Scenario scenario;
    private final List<Problem> problems = new ArrayList<>();

    private NameCheck(Scenario scenario) {
        this.scenario = scenario;
    }

    static List<Problem> problems(Scenario scenario) {
        NameCheck check = new NameCheck(scenario);
        check.twice();
        check.openings();
        check.tiles();
        for (int i = 0; i < scenario.suctionPoints().size(); i++) {
            SuctionPoint point = scenario.suctionPoints().get(i);
            check.riser("/suctionPoints/" + i + "/source/riser", title(point), point.source());
        }
        for (int i = 0; i < scenario.stages().size(); i++)
            check.stage(scenario.stages().get(i), "/stages/" + i);
        return check.problems;
    }

    private void twice() {
        twice("slab", "/slabs/", scenario.slabs().stream().map(Slab::id).toList());
        twice(
                "zone",
                "/layer/zones/",
                scenario.layer().zones().stream().map(Zone::id).toList());
        twice(
                "barrier",
                "/barriers/",
                scenario.barriers().stream().map(Barrier::id).toList());
        twice("drain tile", "/drainTile/", tileIds());
        twice("block wall", "/blockWalls/", wallIds());
        twice("opening", "/openings/", openingIds());
        twice("suction point", "/suctionPoints/", suctionIds());
        twice("riser", "/equipment/risers/", riserIds());
        twice(
                "fan",
                "/equipment/fans/",
                scenario.equipment().fans().stream().map(FanOffer::id).toList());
        twice(
                "exhaust",
                "/house/exhausts/",
                scenario.house().exhausts().stream().map(House.Exhaust::id).toList());
        twice("test hole", "/testHoles/", holeIds());
        twice("stage", "/stages/", scenario.stages().stream().map(Stage::id).toList());
        twice(
                "no-drill area",
                "/plan/noDrillAreas/",
                scenario.plan().noDrillAreas().stream().map(NoDrillArea::id).toList());
        for (int i = 0; i < openingIds().size(); i++)
            if (wallIds().contains(openingIds().get(i)))
                add(
                        "/openings/" + i + "/id",
                        "opening \"" + openingIds().get(i)
                                + "\" has the name of a block wall; a stage could not tell them apart, so give it another");
    }

    private void twice(String kind, String path, List<String> ids) {
        Map<String, Integer> first = new HashMap<>();
        for (int i = 0; i < ids.size(); i++) {
            Integer before = first.putIfAbsent(ids.get(i), i);
            if (before != null)
                add(
                        path + i + "/id",
                        kind + " \"" + ids.get(i) + "\" has the same name as number " + (before + 1)
                                + " of the list; give each its own");
        }
    }

    private void openings() {
        List<String> slabs = scenario.slabs().stream().map(Slab::id).toList();
        for (int i = 0; i < scenario.openings().size(); i++) {
            Opening opening = scenario.openings().get(i);
            if (opening.place() instanceof Opening.Perimeter edge)
                known("/openings/" + i + "/perimeterOf", title(opening), "slab", edge.slab(), slabs);
        }
    }

    private void tiles() {
        for (int i = 0; i < scenario.drainTiles().size(); i++) {
            DrainTile tile = scenario.drainTiles().get(i);
            if (tile.sump().isEmpty()) continue;
            String path = "/drainTile/" + i + "/sump", who = "drain tile \"" + tile.id() + "\"";
            if (!known(path, who, "opening", tile.sump().get(), openingIds())) continue;
            Optional<Opening> sump = scenario.opening(tile.sump().get());
            if (sump.isPresent() && !(sump.get().place() instanceof Opening.Spot))
                add(path, who + " ends in " + title(sump.get()) + ", which is a line; a sump is a spot with \"at\"");
        }
        for (int i = 0; i < scenario.suctionPoints().size(); i++) {
            SuctionPoint point = scenario.suctionPoints().get(i);
            String path = "/suctionPoints/" + i + "/tile";
            point.tile().ifPresent(t -> known(path, title(point), "drain tile", t, tileIds()));
        }
        for (int i = 0; i < scenario.blockWalls().size(); i++) {
            BlockWall wall = scenario.blockWalls().get(i);
            String path = "/blockWalls/" + i + "/tile";
            wall.tile()
                    .ifPresent(t -> known(path, "block wall \"" + wall.id() + "\"", "drain tile", t.tile(), tileIds()));
        }
    }

    private void stage(Stage stage, String path) {
        String who = "stage \"" + stage.id() + "\"";
        List<String> sealable = new ArrayList<>(openingIds());
        sealable.addAll(wallIds());
        for (String id : new TreeSet<>(stage.seals().keySet()))
            known(path + "/openings/" + escaped(id), who, "opening or block wall", id, sealable);
        for (String id : new TreeSet<>(stage.sources().keySet()))
            if (known(path + "/sources/" + escaped(id), who, "suction point", id, suctionIds()))
                riser(
                        path + "/sources/" + escaped(id) + "/riser",
                        who,
                        stage.sources().get(id));
        for (int i = 0; i < stage.holes().size(); i++)
            known(
                    path + "/readings/" + i + "/hole",
                    who,
                    "test hole",
                    stage.holes().get(i).hole(),
                    holeIds());
        for (int i = 0; i < stage.systems().size(); i++)
            known(
                    path + "/system/" + i + "/suctionPoint",
                    who,
                    "suction point",
                    stage.systems().get(i).suctionPoint(),
                    suctionIds());
    }

    private void riser(String path, String who, Source source) {
        if (source instanceof Source.Branch branch) known(path, who, "riser", branch.riser(), riserIds());
    }

    private List<String> riserIds() {
        return scenario.equipment().risers().stream().map(Riser::id).toList();
    }

    private boolean known(String path, String who, String kind, String id, List<String> ids) {
        if (ids.contains(id)) return true;
        add(path, who + " names the " + kind + " \"" + id + "\", which is not drawn; " + Nearest.hint(id, ids));
        return false;
    }

    private void add(String path, String message) {
        problems.add(new Problem(path, message));
    }

    static String title(Opening opening) {
        return "opening \"" + opening.id() + "\"";
    }

    static String title(SuctionPoint point) {
        return "suction point \"" + point.id() + "\"";
    }

    private static String escaped(String key) {
        return key.replace("~", "~0").replace("/", "~1");
    }

    private List<String> openingIds() {
        return scenario.openings().stream().map(Opening::id).toList();
    }

    private List<String> wallIds() {
        return scenario.blockWalls().stream().map(BlockWall::id).toList();
    }

    private List<String> tileIds() {
        return scenario.drainTiles().stream().map(DrainTile::id).toList();
    }

    private List<String> suctionIds() {
        return scenario.suctionPoints().stream().map(SuctionPoint::id).toList();
    }

    private List<String> holeIds() {
        return scenario.testHoles().stream().map(TestHole::id).toList();
    }
}
