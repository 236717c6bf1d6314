package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.network.SlabSolver;
import slabfield.readings.MeasuredFlow;
import slabfield.readings.Noise;

/** What all stages of a house tell, as numbers with their errors. */
final class Observations {
    /** Standard deviation of the flow up to which a meter shows nothing, as a part of it; an assumption. */
    private static final double SOFT = 0.1;

    private final Scenario house;
    private final NoiseModel noise;
    private final boolean outdoorsUnknown;
    private final List<Observation> out = new ArrayList<>();
    /** Strongest vacuum at a suction point in the stage at hand [Pa]. */
    private double strongest;

    private Observations(Scenario house, NoiseModel noise, boolean outdoorsUnknown) {
        this.house = house;
        this.noise = noise;
        this.outdoorsUnknown = outdoorsUnknown;
    }

    /**
     * Where a hole was read with the fan on and off and the pressure outdoors is unknown, both count; where it is not
     * unknown, only their difference, which in a linear house does not depend on it. A flow or a riser's pressure that a
     * source holds by itself tells nothing and is left out.
     */
    static List<Observation> of(Scenario house, NoiseModel noise, boolean outdoorsUnknown) {
        Observations all = new Observations(house, noise, outdoorsUnknown);
        for (Stage s : house.stages()) {
            all.strongest = all.strongest(s);
            for (Stage.HoleReading r : s.holes()) if (house.testHole(r.hole()).isPresent()) all.hole(s, r);
            for (Stage.SystemReading r : s.systems()) all.system(s, r);
        }
        return all.out;
    }

    private void hole(Stage s, Stage.HoleReading r) {
        boolean both = r.fanOn().isPresent() && r.fanOff().isPresent();
        if (both && !outdoorsUnknown)
            add(
                    s,
                    Observation.What.DIFFERENCE,
                    r.hole(),
                    r.fanOn().getAsDouble() - r.fanOff().getAsDouble(),
                    Noise.ofChange(r));
        else {
            r.fanOn().ifPresent(p -> add(s, Observation.What.FAN_ON, r.hole(), p, Noise.of(r)));
            if (outdoorsUnknown) r.fanOff().ifPresent(p -> add(s, Observation.What.FAN_OFF, r.hole(), p, Noise.of(r)));
        }
    }

    private void system(Stage s, Stage.SystemReading r) {
        Optional<Source> source = house.during(s).suctionPoint(r.suctionPoint()).map(SuctionPoint::source);
        if (source.isEmpty()) return;
        if (!(source.get() instanceof Source.Flow))
            MeasuredFlow.of(r, SlabSolver.airOf(house)).ifPresent(q -> flow(s, r.suctionPoint(), q));
        if (!(source.get() instanceof Source.Pressure))
            r.suction().ifPresent(p -> add(s, Observation.What.RISER, r.suctionPoint(), p, Noise.ofSuction(r)));
    }

    private void flow(Stage s, String point, MeasuredFlow q) {
        if (!q.belowMeter()) {
            add(s, Observation.What.FLOW, point, q.flow(), q.standardError());
            return;
        }
        double bound = 2 * q.flow();
        out.add(new Observation(s.id(), Observation.What.FLOW, point, bound, SOFT * bound, 0, true));
    }

    private void add(Stage s, Observation.What what, String place, double measured, double meter) {
        double size = Math.abs(measured);
        boolean byFan = what == Observation.What.FAN_ON || what == Observation.What.DIFFERENCE;
        double share = byFan ? noise.shareAt(Math.max(size, meter), strongest) : noise.share(what);
        out.add(new Observation(s.id(), what, place, measured, meter, share * size, false));
    }

    /** As read in pit or riser or as held there; where neither is known, as the house as drawn has it; never below what a hole has. */
    private double strongest(Stage s) {
        Scenario then = house.during(s);
        double known = 0;
        for (Stage.SystemReading r : s.systems())
            known = Math.max(known, Math.abs(r.suction().orElse(0)));
        for (SuctionPoint p : then.suctionPoints())
            if (p.source() instanceof Source.Pressure held) known = Math.max(known, Math.abs(held.pressure()));
        if (known == 0 && !then.suctionPoints().isEmpty() && noise.fallShare() > 0) {
            Result drawn = SlabSolver.solve(
                    then.withCellSize(HouseFit.coarseCell(house)), SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
            if (drawn instanceof Result.Solved solved) known = solved.strongest();
        }
        for (Stage.HoleReading r : s.holes())
            known = Math.max(known, Math.abs(r.fanOn().orElse(0)));
        return known;
    }
}
