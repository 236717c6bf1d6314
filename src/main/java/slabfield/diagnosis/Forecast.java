package slabfield.diagnosis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.Observation;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/** What would be read in a house, solved stage by stage. */
final class Forecast {
    private Forecast() {}

    /**
     * Numbers for readings that are there already.
     *
     * @return one for each observation; empty where a stage has no solution or a hole no pressure
     */
    static Optional<double[]> of(Scenario house, List<Observation> observations) {
        boolean off = observations.stream()
                .anyMatch(o -> o.what() == Observation.What.FAN_OFF || o.what() == Observation.What.DIFFERENCE);
        SlabSolver.Extent extent = off ? SlabSolver.Extent.FULL : SlabSolver.Extent.FAN_ON_ONLY;
        List<String> stages =
                observations.stream().map(Observation::stage).distinct().toList();
        double[] out = new double[observations.size()];
        for (String id : stages) {
            Scenario then = house.during(house.stage(id).orElseThrow());
            if (!(SlabSolver.solve(then, extent, Progress.NONE) instanceof Result.Solved s)) return Optional.empty();
            for (int i = 0; i < out.length; i++) {
                if (!observations.get(i).stage().equals(id)) continue;
                OptionalDouble value =
                        of(s, observations.get(i).what(), observations.get(i).place());
                if (value.isEmpty()) return Optional.empty();
                out[i] = value.getAsDouble();
            }
        }
        return Optional.of(out);
    }

    /** One number of a solved house. */
    static OptionalDouble of(Result.Solved s, Observation.What what, String place) {
        if (what == Observation.What.FLOW || what == Observation.What.RISER) {
            Optional<Result.Suction> point = s.suction(place);
            if (point.isEmpty()) return OptionalDouble.empty();
            return OptionalDouble.of(
                    what == Observation.What.FLOW
                            ? point.get().flow()
                            : point.get().pressure());
        }
        Optional<Result.Hole> hole = s.hole(place);
        if (hole.isEmpty() || hole.get().fanOn().isEmpty()) return OptionalDouble.empty();
        double on = hole.get().fanOn().getAsDouble(), off = hole.get().fanOff().orElse(0);
        return OptionalDouble.of(
                what == Observation.What.FAN_ON ? on : what == Observation.What.FAN_OFF ? off : on - off);
    }
}
