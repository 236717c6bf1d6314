package slabfield.model;

import java.util.List;
import java.util.Optional;

/**
 * What draws the air, and what it could be replaced by.
 *
 * @param risers common pipes of several suction points
 * @param fans to choose from
 * @param plannedRun stretches of pipe for suction points that have none yet
 */
public record Equipment(List<Riser> risers, List<FanOffer> fans, List<Source.Pipe> plannedRun) {
    public static final Equipment NONE = new Equipment(List.of(), List.of(), List.of());

    public Equipment {
        risers = Check.list("risers", risers);
        fans = Check.list("fans", fans);
        plannedRun = Check.list("plannedPipes", plannedRun);
    }

    public Optional<Riser> riser(String id) {
        return risers.stream().filter(r -> r.id().equals(id)).findFirst();
    }

    public Equipment withRisers(List<Riser> other) {
        return new Equipment(other, fans, plannedRun);
    }

    public Equipment withFans(List<FanOffer> other) {
        return new Equipment(risers, other, plannedRun);
    }
}
