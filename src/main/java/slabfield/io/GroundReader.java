package slabfield.io;

import java.util.List;
import java.util.Optional;
import slabfield.model.Barrier;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Slab;
import slabfield.model.Zone;
import slabfield.quantity.Dimension;

/** Reads slabs and what lies under them. */
final class GroundReader {
    private GroundReader() {}

    static Optional<Slab> slab(Entry e) {
        String id = e.text("id");
        List<Point> outline = e.points("outline");
        List<List<Point>> holes = e.outlines("holes");
        double thickness = e.quantity("thickness", Dimension.LENGTH, Slab.USUAL_THICKNESS);
        boolean treated = e.truth("treated", true);
        return e.make(() -> new Slab(id, outline, holes, thickness, treated));
    }

    static Optional<Layer> layer(Entry e) {
        double thickness = e.quantity("thickness", Dimension.LENGTH, Fill.USUAL_THICKNESS);
        Optional<Fill> fill = fill(e, thickness);
        double usual = fill.map(Fill::thickness).orElse(Fill.USUAL_THICKNESS);
        List<Zone> zones = e.list("zones", FileObject.ZONE, z -> zone(z, usual));
        return e.make(() -> new Layer(fill.orElseThrow(), zones));
    }

    private static Optional<Zone> zone(Entry e, double usualThickness) {
        String id = e.text("id");
        List<Point> outline = e.points("outline");
        Optional<Fill> fill = fill(e, e.quantity("thickness", Dimension.LENGTH, usualThickness));
        return e.make(() -> new Zone(id, outline, fill.orElseThrow()));
    }

    /** A fill by its word, by its permeability, or by its word with a measured permeability in place of the assumed. */
    private static Optional<Fill> fill(Entry e, double thickness) {
        if (!e.has("fill") && !e.has("permeability")) e.problemHere(e.title() + " needs \"fill\" or \"permeability\"");
        FillWord word = e.word("fill", Words.FILLS, FillWord.MEASURED);
        boolean assumed = !e.has("permeability");
        double usual = word.permeability(thickness);
        double permeability = e.quantity("permeability", Dimension.PERMEABILITY, usual);
        double inertial = e.quantity("inertial", Dimension.PER_LENGTH, word.inertial());
        return e.make(() -> new Fill(word, thickness, permeability, inertial, assumed));
    }

    static Optional<Barrier> barrier(Entry e) {
        String id = e.text("id");
        List<Point> path = e.points("path");
        double width = e.quantity("width", Dimension.LENGTH);
        double permeability = e.quantity("permeability", Dimension.PERMEABILITY, 0);
        boolean known = e.word("certainty", Words.CERTAINTIES, true);
        List<Gap> gaps = e.list("gaps", FileObject.GAP, GroundReader::gap);
        return e.make(() -> new Barrier(id, new Path(path), width, permeability, known, gaps));
    }

    static Optional<Gap> gap(Entry e) {
        Point at = e.point("at");
        double length = e.quantity("length", Dimension.LENGTH, 0);
        return e.make(() -> new Gap(at, length));
    }
}
