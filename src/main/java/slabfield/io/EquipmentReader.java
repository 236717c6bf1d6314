package slabfield.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Equipment;
import slabfield.model.FanOffer;
import slabfield.model.NominalPipe;
import slabfield.model.Riser;
import slabfield.model.Source;
import slabfield.quantity.Dimension;

/** Reads pipes, fans and risers. */
final class EquipmentReader {
    private EquipmentReader() {}

    static Optional<Equipment> equipment(Entry e) {
        List<Riser> risers = e.list("risers", FileObject.RISER, EquipmentReader::riser);
        List<FanOffer> fans = e.list("fans", FileObject.FAN, EquipmentReader::offer);
        List<Source.Pipe> planned = e.list("plannedPipes", FileObject.PIPE, EquipmentReader::pipe);
        return e.make(() -> new Equipment(risers, fans, planned));
    }

    static Optional<Source> fanSource(Entry e) {
        List<double[]> points = e.pairs("fan", Dimension.FLOW, Dimension.PRESSURE);
        List<Source.Pipe> run = run(e);
        double discharge = e.quantity("discharge", Dimension.PRESSURE, 0);
        return e.make(() -> new Source.Fan(curve(points), run, discharge));
    }

    static Optional<Source> branch(Entry e) {
        String riser = e.text("riser");
        List<Source.Pipe> run = run(e);
        return e.make(() -> new Source.Branch(riser, run));
    }

    private static Optional<Riser> riser(Entry e) {
        String id = e.text("id");
        List<double[]> points = e.pairs("fan", Dimension.FLOW, Dimension.PRESSURE);
        List<Source.Pipe> run = run(e);
        double discharge = e.quantity("discharge", Dimension.PRESSURE, 0);
        return e.make(() -> new Riser(id, curve(points), run, discharge));
    }

    private static Optional<FanOffer> offer(Entry e) {
        String id = e.text("id");
        List<double[]> points = e.pairs("curve", Dimension.FLOW, Dimension.PRESSURE);
        List<Double> power = e.quantities("power", Dimension.POWER);
        double density = e.quantity("density", Dimension.DENSITY, FanOffer.STANDARD_DENSITY);
        OptionalDouble steadyFrom = e.optional("steadyFrom", Dimension.FLOW);
        FanOffer.Arrangement arrangement = e.word("arrangement", Words.ARRANGEMENTS, FanOffer.Arrangement.SINGLE);
        boolean invented = e.truth("invented", false);
        return e.make(() -> new FanOffer(id, curve(points), power, density, steadyFrom, arrangement, invented));
    }

    private static Source.FanCurve curve(List<double[]> points) {
        return new Source.FanCurve(
                points.stream().map(p -> p[0]).toList(),
                points.stream().map(p -> p[1]).toList());
    }

    /** One stretch under "pipe", several under "pipes", or none. */
    private static List<Source.Pipe> run(Entry e) {
        if (e.has("pipe")) e.onlyIf(false, "pipes", "without \"pipe\"");
        if (e.has("pipe"))
            return pipe(e.entry("pipe", FileObject.PIPE)).map(List::of).orElse(List.of());
        return e.list("pipes", FileObject.PIPE, EquipmentReader::pipe);
    }

    private static Optional<Source.Pipe> pipe(Entry e) {
        e.oneOf("diameter", "nominal");
        NominalPipe nominal = e.word("nominal", Words.PIPES, NominalPipe.FOUR_INCH);
        double diameter = e.has("diameter") ? e.quantity("diameter", Dimension.LENGTH) : nominal.insideDiameter();
        double length = e.quantity("length", Dimension.LENGTH);
        int ells = e.whole("ells", 0);
        double fittings = e.number("fittings", Source.Pipe.ENTRANCE_AND_EXIT), valve = e.number("valve", 0);
        double roughness = e.quantity("roughness", Dimension.LENGTH, Source.Pipe.USUAL_ROUGHNESS);
        double rise = e.quantity("rise", Dimension.LENGTH, 0);
        int halfElls = e.whole("halfElls", 0), through = e.whole("teesThrough", 0), branch = e.whole("teesByBranch", 0);
        return e.make(() -> new Source.Pipe(
                diameter, length, ells, fittings, roughness, new Source.Turns(halfElls, through, branch), valve, rise));
    }
}
