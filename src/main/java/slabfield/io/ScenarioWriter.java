package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.BiConsumer;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.Slab;
import slabfield.model.Zone;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/**
 * Writes a scenario as the text of a file that is read back as an equal scenario: quantities in SI to the last digit, plan
 * coordinates in the unit that the scenario shows lengths in, to the nanometre. Everything is written out, assumed
 * values too, save a fill's permeability and a seal's fraction where they come from their word.
 */
public final class ScenarioWriter {
    private final Unit lengthUnit;

    private ScenarioWriter(Unit lengthUnit) {
        this.lengthUnit = lengthUnit;
    }

    /**
     * The text of a file.
     *
     * @param scenario whose coordinates are whole nanometres, as those of every scenario that was read
     */
    public static String toJson(Scenario scenario) {
        return JsonText.of(tree(scenario));
    }

    /** The tree of which {@link #toJson} is the text. */
    static ObjectNode tree(Scenario scenario) {
        Unit unit = Unit.find(scenario.display().length(), Dimension.LENGTH).orElse(Unit.METRE);
        return new ScenarioWriter(unit).whole(scenario);
    }

    private ObjectNode whole(Scenario s) {
        ObjectNode root = object();
        root.put("slabfield", ScenarioReader.VERSION).put("name", s.name());
        root.put("teaches", s.teaches()).put("notes", s.notes());
        root.put("lengthUnit", lengthUnit.symbol());
        root.putObject("display")
                .put("pressure", s.display().pressure())
                .put("flow", s.display().flow())
                .put("length", s.display().length());
        root.put("cell", metres(s.cellSize()));
        list(root, "slabs", s.slabs(), this::slab);
        layer(root.putObject("layer"), s.layer());
        list(root, "barriers", s.barriers(), this::barrier);
        list(root, "drainTile", s.drainTiles(), this::drainTile);
        list(root, "blockWalls", s.blockWalls(), this::blockWall);
        list(root, "openings", s.openings(), this::opening);
        root.putObject("soil").put("leakance", Quantity.exact(s.soilLeakance(), Unit.METRE_PER_SECOND_PASCAL));
        ObjectNode house = root.putObject("house");
        house.put("pressureOutdoorsAtFloor", Quantity.exact(s.outdoorPressure(), Unit.PASCAL));
        BuildingWriter.house(house, s.house());
        ObjectNode air = root.putObject("air");
        s.air().temperature().ifPresent(t -> air.put("temperature", Quantity.exact(t, Unit.KELVIN)));
        s.air().altitude().ifPresent(z -> air.put("altitude", metres(z)));
        SystemWriter system = new SystemWriter(this);
        list(root, "suctionPoints", s.suctionPoints(), system::suctionPoint);
        list(root, "testHoles", s.testHoles(), system::testHole);
        list(root, "stages", s.stages(), system::stage);
        root.putObject("target")
                .put("vacuum", Quantity.exact(s.target().vacuum(), Unit.PASCAL))
                .put("choice", s.target().choice());
        EquipmentWriter.equipment(root.putObject("equipment"), s.equipment());
        new PlanWriter(this).plan(root.putObject("plan"), s.plan());
        return root;
    }

    private void slab(ObjectNode node, Slab slab) {
        node.put("id", slab.id()).set("outline", points(slab.outline()));
        ArrayNode holes = node.putArray("holes");
        slab.holes().forEach(hole -> holes.add(points(hole)));
        node.put("thickness", metres(slab.thickness())).put("treated", slab.treated());
    }

    private void layer(ObjectNode node, Layer layer) {
        fill(node, layer.fill());
        list(node, "zones", layer.zones(), this::zone);
    }

    private void zone(ObjectNode node, Zone zone) {
        node.put("id", zone.id()).set("outline", points(zone.outline()));
        fill(node, zone.fill());
    }

    private void fill(ObjectNode node, Fill fill) {
        if (fill.word() != FillWord.MEASURED) node.put("fill", fill.word().words());
        if (!fill.assumed() || fill.permeability() != fill.word().permeability(fill.thickness()))
            node.put("permeability", Quantity.exact(fill.permeability(), Unit.SQUARE_METRE_OF_PERMEABILITY));
        node.put("inertial", Quantity.exact(fill.inertial(), Unit.PER_METRE))
                .put("thickness", metres(fill.thickness()));
    }

    private void barrier(ObjectNode node, Barrier barrier) {
        node.put("id", barrier.id()).set("path", points(barrier.path().points()));
        node.put("width", metres(barrier.width()));
        node.put("permeability", Quantity.exact(barrier.permeability(), Unit.SQUARE_METRE_OF_PERMEABILITY));
        node.put("certainty", barrier.known() ? "known" : "suspected");
        list(node, "gaps", barrier.gaps(), this::gap);
    }

    private void gap(ObjectNode node, Gap gap) {
        node.set("at", point(gap.at()));
        node.put("length", metres(gap.length()));
    }

    private void drainTile(ObjectNode node, DrainTile tile) {
        node.put("id", tile.id()).set("path", points(tile.path().points()));
        node.put("diameter", metres(tile.diameter())).put("manning", tile.manning());
        node.put("slots", Quantity.exact(tile.slotArea(), Unit.SQUARE_METRE_PER_METRE));
        list(node, "breaks", tile.breaks(), this::gap);
        list(node, "waterFilled", tile.waterFilled(), this::gap);
        tile.sump().ifPresent(sump -> node.put("sump", sump));
    }

    private void blockWall(ObjectNode node, BlockWall wall) {
        node.put("id", wall.id()).set("path", points(wall.path().points()));
        node.put("height", metres(wall.height()));
        ObjectNode tops = node.putObject("tops");
        seal(tops, wall.tops());
        tops.put("area", Quantity.exact(wall.topArea(), Unit.SQUARE_METRE_PER_METRE));
        node.put("joint", Quantity.exact(wall.joint(), Unit.SQUARE_METRE_PER_SECOND_PASCAL));
        node.put("faceToRoom", Quantity.exact(wall.faceToRoom(), Unit.METRE_PER_SECOND_PASCAL));
        node.put("faceToOutdoors", Quantity.exact(wall.faceToOutdoors(), Unit.METRE_PER_SECOND_PASCAL));
        node.put("along", Quantity.exact(wall.along(), Unit.METRE4_PER_SECOND_PASCAL));
        node.put("joinsAtCorners", wall.joinsAtCorners());
        wall.tile()
                .ifPresent(t -> node.putObject("tile")
                        .put("id", t.tile())
                        .put("conductance", Quantity.exact(t.conductance(), Unit.SQUARE_METRE_PER_SECOND_PASCAL)));
    }

    private void opening(ObjectNode node, Opening opening) {
        node.put("id", opening.id()).put("kind", opening.kind().word());
        if (opening.place() instanceof Opening.Spot spot) {
            node.set("at", point(spot.at()));
            node.put("radius", metres(spot.radius()));
        } else if (opening.place() instanceof Opening.Along along)
            node.set("path", points(along.path().points()));
        else if (opening.place() instanceof Opening.Perimeter edge) node.put("perimeterOf", edge.slab());
        if (opening.passage() instanceof Opening.Orifice hole)
            node.put("area", Quantity.exact(hole.area(), Unit.SQUARE_METRE))
                    .put("dischargeCoefficient", hole.dischargeCoefficient());
        else if (opening.passage() instanceof Opening.Crack crack)
            node.put("width", metres(crack.width())).put("bends", crack.bends());
        else if (opening.passage() instanceof Opening.PowerLaw leak)
            node.putObject("leak")
                    .put("coefficient", Quantity.exact(leak.coefficient(), Unit.CUBIC_METRE_PER_SECOND_PASCAL_N))
                    .put("exponent", leak.exponent());
        seal(node, opening.seal());
    }

    void seal(ObjectNode node, Seal seal) {
        node.put("state", seal.state().word());
        if (!seal.assumed()) node.put("sealedFraction", seal.fraction());
    }

    static String metres(double length) {
        return Quantity.exact(length, Unit.METRE);
    }

    ArrayNode point(Point point) {
        return JsonNodeFactory.instance
                .arrayNode()
                .add(Coordinates.number(point.x(), lengthUnit))
                .add(Coordinates.number(point.y(), lengthUnit));
    }

    ArrayNode points(List<Point> points) {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        points.forEach(p -> list.add(point(p)));
        return list;
    }

    static <T> void list(ObjectNode node, String key, List<T> items, BiConsumer<ObjectNode, T> writer) {
        ArrayNode list = node.putArray(key);
        items.forEach(item -> writer.accept(list.addObject(), item));
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }
}
