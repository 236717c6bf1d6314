package slabfield.equipment;

import java.util.Optional;
import slabfield.field.Result;

/**
 * The vacuum that a system is judged by: that of the weakest test hole, or of the weakest place where no hole is drawn.
 *
 * @param vacuum NaN where a hole lies in a part that nothing reaches [Pa]
 * @param hole id of the hole; empty for the weakest place
 */
public record Held(double vacuum, Optional<String> hole) {
    static Held of(Result.Solved solved) {
        if (solved.holes().isEmpty()) return new Held(solved.coverage().weakest(), Optional.empty());
        Optional<Result.Hole> unreached =
                solved.holes().stream().filter(h -> h.fanOn().isEmpty()).findFirst();
        if (unreached.isPresent())
            return new Held(Double.NaN, Optional.of(unreached.get().id()));
        Result.Hole weakest = solved.weakestHole().orElseThrow();
        return new Held(-weakest.fanOn().getAsDouble(), Optional.of(weakest.id()));
    }

    /** True where the vacuum is at least the wanted one [Pa]. */
    public boolean meets(double wanted) {
        return vacuum >= wanted;
    }
}
