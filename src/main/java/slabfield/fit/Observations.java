package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Stage;

/** What all stages of a house tell, as numbers with their errors. */
final class Observations {
    private static final double ROUNDING = Math.sqrt(12);

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
        double step = r.meterStep().orElse(noise.meterStep()) / ROUNDING, unrest = r.spread().orElse(noise.unrest());
        double meter = Math.hypot(step, unrest);
        boolean both = r.fanOn().isPresent() && r.fanOff().isPresent();
        if (both && !outdoorsUnknown)
            add(s, Observation.What.DIFFERENCE, r.hole(), r.fanOn().getAsDouble() - r.fanOff().getAsDouble(),
                    Math.sqrt(2) * meter);
        else {
            r.fanOn().ifPresent(p -> add(s, Observation.What.FAN_ON, r.hole(), p, meter));
            if (outdoorsUnknown) r.fanOff().ifPresent(p -> add(s, Observation.What.FAN_OFF, r.hole(), p, meter));
        }
    }

    private void system(Stage s, Stage.SystemReading r) {
        Source source = house.during(s).suctionPoint(r.suctionPoint()).map(p -> p.source()).orElse(null);
        if (source == null) return;
        if (r.flow().isPresent() && !(source instanceof Source.Flow)) {
            double q = r.flow().getAsDouble();
            double floor = noise.flowShare() * SMALLEST_FLOW;
            add(s, Observation.What.FLOW, r.suctionPoint(), q, Math.max(floor, noise.flowShare() * Math.abs(q)));
        }
        if (r.riser().isPresent() && !(source instanceof Source.Pressure)) {
            double p = r.riser().getAsDouble();
            double meter = Math.hypot(noise.meterStep() / ROUNDING, noise.unrest());
            add(s, Observation.What.RISER, r.suctionPoint(), p, Math.hypot(meter, noise.riserShare() * p));
        }
    }

    /** Flow below which a pitot in a usual pipe shows nothing: 1 m/s in 100 mm, common practice [m3/s]. */
    private static final double SMALLEST_FLOW = 0.008;

    private void add(Stage s, Observation.What what, String place, double measured, double meter) {
        out.add(new Observation(s.id(), what, place, measured, meter, noise.modelShare() * Math.abs(measured), false));
    }
}
