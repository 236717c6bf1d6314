package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.Scenario;

/** What a reader of the answer must know: where it rests on an assumption or leaves the model's range. */
final class Doubts {
    private static final double DEEP_SUCTION = 2000;

    private Doubts() {}

    static List<String> of(Scenario scenario, PressureField field, double[] inertial, List<Result.Suction> suctions) {
        List<String> out = new ArrayList<>();
        if (scenario.layer().fill().assumed())
            out.add("The fill's permeability is assumed from the word \""
                    + scenario.layer().fill().word().words()
                    + "\"; real fills of that name differ by ten times and more.");
        scenario.layer().zones().stream()
                .filter(z -> z.fill().assumed())
                .forEach(z -> out.add("The permeability of zone \"" + z.id() + "\" is assumed from the word \""
                        + z.fill().word().words() + "\"."));
        inertialDoubt(scenario, field, inertial).ifPresent(out::add);
        for (Barrier b : scenario.barriers())
            if (!b.known()) out.add("Barrier \"" + b.id() + "\" is only suspected; it is solved as if it were there.");
        for (BlockWall w : scenario.blockWalls())
            if (w.tops().assumed() && w.tops().fraction() > 0)
                out.add(String.format(
                        Locale.ROOT,
                        "The block tops of \"%s\" are taken as %.0f %% closed, which still leaves %.0f cm2 open per metre of"
                                + " wall; where they are filled solid, give a sealedFraction nearer to 100 %%.",
                        w.id(),
                        100 * w.tops().fraction(),
                        1e4 * w.topArea() * w.tops().remaining()));
        for (Result.Suction s : suctions)
            if (Math.abs(s.pressure()) > DEEP_SUCTION)
                out.add(String.format(
                        Locale.ROOT,
                        "At \"%s\" the air is thinned by %.1f %%, which the model leaves out.",
                        s.id(),
                        100 * Math.abs(s.pressure()) / (2 * 101325)));
        return out;
    }

    private static java.util.Optional<String> inertialDoubt(Scenario scenario, PressureField field, double[] inertial) {
        if (scenario.layer().fill().inertial() > 0) return java.util.Optional.empty();
        double area = 0, all = 0;
        for (int c = 0; c < inertial.length; c++) {
            if (Double.isNaN(inertial[c])) continue;
            all += field.openArea()[c];
            if (inertial[c] > SlabSolver.DARCY_DOUBTFUL) area += field.openArea()[c];
        }
        if (area <= 0) return java.util.Optional.empty();
        return java.util.Optional.of(String.format(
                Locale.ROOT,
                "Over %.1f m2 (%.0f %% of the layer) the air moves so fast that Darcy's law alone is doubtful; give the"
                        + " fill an inertial coefficient.",
                area,
                100 * area / all));
    }
}
