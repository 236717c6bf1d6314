package slabfield.readings;

import java.util.List;
import java.util.Optional;
import slabfield.law.AirState;
import slabfield.law.Pitot;
import slabfield.model.FlowReading;
import slabfield.model.Stage;

/**
 * Flow of a suction point as it follows from what was read, with its standard error. A range without more to be said
 * counts as even, so its standard error is its width over sqrt 12.
 *
 * @param flow best value; half the bound where it is only known to be below one [m3/s]
 * @param standardError [m3/s]
 * @param belowMeter true where the meter could not tell; the flow then lies between 0 and {@code 2 flow}
 */
public record MeasuredFlow(double flow, double standardError, boolean belowMeter) {
    /** Standard error of a flow that was stated without one, as a share of it; an assumption. */
    public static final double ASSUMED_SHARE = 0.1;

    /** Standard error from place and direction of the tube, and from bends nearby, as a share; an assumption. */
    public static final double ASSUMED_PLACEMENT = 0.04;

    /** Display steps of velocity pressure where none was noted [Pa]. */
    public static final double ASSUMED_PRESSURE_STEP = 0.1;

    /** Display steps of velocity where none was noted [m/s]. */
    public static final double ASSUMED_VELOCITY_STEP = 0.1;

    /** Half a step in this many steps of velocity is 5 %, the same as five steps of velocity pressure. */
    private static final double READABLE_VELOCITY_STEPS = 2 * PipeFlow.READABLE_STEPS;

    /**
     * Works it out.
     *
     * @param air of the house, where the reading gives no density
     * @return empty where no flow was read
     */
    public static Optional<MeasuredFlow> of(Stage.SystemReading reading, AirState air) {
        return reading.flowReading().map(read -> of(read, air));
    }

    /** Works it out from what was read. */
    public static MeasuredFlow of(FlowReading read, AirState air) {
        if (read instanceof FlowReading.Stated stated)
            return new MeasuredFlow(
                    stated.flow(), stated.uncertainty().orElse(ASSUMED_SHARE * Math.abs(stated.flow())), false);
        if (read instanceof FlowReading.Below below) return below(below.bound());
        return inPipe((FlowReading.InPipe) read, air);
    }

    private static MeasuredFlow below(double bound) {
        return new MeasuredFlow(bound / 2, bound / Math.sqrt(12), true);
    }

    private static MeasuredFlow inPipe(FlowReading.InPipe read, AirState house) {
        AirState air = new AirState(house.viscosity(), read.density().orElse(house.density()));
        double area = Math.PI / 4 * read.diameter() * read.diameter();
        double step = read.meterStep().orElse(read.velocity() ? ASSUMED_VELOCITY_STEP : ASSUMED_PRESSURE_STEP);
        double least = read.velocity()
                ? area * READABLE_VELOCITY_STEPS * step
                : PipeFlow.leastReadable(step, read.diameter(), air);
        double mean = meanVelocity(read, 0, air),
                low = meanVelocity(read, -step / 2, air),
                high = meanVelocity(read, step / 2, air);
        PipeFlow flow = read.traverse() || mean <= 0
                ? new PipeFlow(area * mean, area * low, area * high)
                : onAxis(mean, low, high, read.diameter(), air);
        if (flow.flow() < least) return below(least);
        double range = (flow.most() - flow.least()) / Math.sqrt(12);
        return new MeasuredFlow(flow.flow(), Math.hypot(range, ASSUMED_PLACEMENT * flow.flow()), false);
    }

    private static PipeFlow onAxis(double velocity, double low, double high, double diameter, AirState air) {
        PipeFlow at = PipeFlow.fromCentre(velocity, diameter, air);
        return new PipeFlow(at.flow(), at.least() * low / velocity, at.most() * high / velocity);
    }

    /** Mean of the velocities at all places, each reading moved by a part of the display's step [m/s]. */
    private static double meanVelocity(FlowReading.InPipe read, double moved, AirState air) {
        List<Double> shown = read.shown();
        return shown.stream()
                .mapToDouble(v -> Math.max(0, v + moved))
                .map(v -> read.velocity() ? v : Pitot.velocity(v, air.density()))
                .average()
                .orElseThrow();
    }
}
