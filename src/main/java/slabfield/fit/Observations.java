package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
        out.add(new Observation(s.id(), what, place, measured, meter, noise.share(what) * Math.abs(measured), false));
    }
}
