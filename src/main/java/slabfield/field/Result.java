package slabfield.field;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** What a solve gave: a field only where it converged. */
public sealed interface Result permits Result.Solved, Result.Unsolved {
    Scenario scenario();

    Convergence convergence();

    /**
     * No field, and why.
     *
     * @param reason in the user's words, with what to do
     */
    record Unsolved(Scenario scenario, Convergence convergence, String reason) implements Result {}

    /**
     * A converged field and what follows from it.
     *
     * @param scenario what was solved
     * @param convergence how it ended
     * @param field with the suction on
     * @param fanOff with every suction point shut, or open to its discharge where the scenario says so; empty where a
     *     part of the layer would then have no boundary
     * @param flows by where the air comes from
     * @param holes in the scenario's order
     * @param suctions in the scenario's order
     * @param coverage how much of the slab meets the target
     * @param unreached parts of the layer without any boundary, each with its area
     * @param doubts where the answer rests on more than the model can bear, in plain sentences
     * @param inertialShare at each cell, the pressure gradient's quadratic part over its linear part; where the scenario
     *     gives no inertial coefficient, estimated by Ward (1964), 0.55 / sqrt(k); NaN where there is no layer
     */
    record Solved(
            Scenario scenario,
            Convergence convergence,
            PressureField field,
            Optional<PressureField> fanOff,
            Flows flows,
            List<Hole> holes,
            List<Suction> suctions,
            Coverage coverage,
            List<Unreached> unreached,
            List<String> doubts,
            double[] inertialShare)
            implements Result {

        public Optional<Hole> hole(String id) {
            return holes.stream().filter(h -> h.id().equals(id)).findFirst();
        }

        public Optional<Suction> suction(String id) {
            return suctions.stream().filter(s -> s.id().equals(id)).findFirst();
        }

        /** Strongest vacuum, or pressure where a point blows, at any suction point; 0 where there is none [Pa]. */
        public double strongest() {
            return suctions.stream()
                    .mapToDouble(s -> Math.abs(s.pressure()))
                    .max()
                    .orElse(0);
        }

        /** Test hole with the least vacuum; empty where there is none with a pressure. */
        public Optional<Hole> weakestHole() {
            return holes.stream()
                    .filter(h -> h.fanOn().isPresent())
                    .max(java.util.Comparator.comparingDouble(h -> h.fanOn().getAsDouble()));
        }
    }

    /**
     * Air by where it comes from. All positive into the layer; what leaves elsewhere is counted with its sign, so that
     * fromRoom + fromSoil + fromOutdoors = exhaust.
     *
     * @param exhaust drawn by all suction points together [m3/s]
     * @param fromRoom through openings, block tops and inside faces [m3/s]
     * @param fromSoil through native soil [m3/s]
     * @param fromOutdoors through outside faces of walls [m3/s]
     * @param bySource the same flows, one entry for each opening, wall part and the soil, in the scenario's order [m3/s]
     */
    record Flows(double exhaust, double fromRoom, double fromSoil, double fromOutdoors, Map<String, Double> bySource) {
        /** Part of the exhaust that comes from the room; empty where nothing is drawn. */
        public OptionalDouble roomShare() {
            return exhaust > 0 ? OptionalDouble.of(fromRoom / exhaust) : OptionalDouble.empty();
        }
    }

    /**
     * Prediction at a test hole.
     *
     * @param fanOn with the suction on; empty where the layer has no pressure [Pa]
     * @param fanOff with the suction off; likewise [Pa]
     */
    record Hole(String id, Point at, OptionalDouble fanOn, OptionalDouble fanOff) {}

    /**
     * Prediction at a suction point.
     *
     * @param pressure in the pit, or in the tile where it is teed in [Pa]
     * @param flow drawn [m3/s]
     */
    record Suction(String id, Point at, double pressure, double flow) {}

    /**
     * How much of the slab meets the target.
     *
     * @param target vacuum wanted [Pa]
     * @param meeting part of the open area whose vacuum is at least the target
     * @param weakest least vacuum at any cell that counts; NaN where none does [Pa]
     * @param weakestAt the middle of that cell
     * @param cell larger side of a cell, which is how sharply the place is known [m]
     */
    record Coverage(double target, double meeting, double weakest, Point weakestAt, double cell) {}

    /**
     * A part of the layer that no boundary reaches.
     *
     * @param around a place in it
     * @param area [m2]
     */
    record Unreached(Point around, double area) {}
}
