package slabfield.diagnosis;

import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.fit.Observation;

/** What would be read in a solved house. */
final class Forecast {
    private Forecast() {}

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
