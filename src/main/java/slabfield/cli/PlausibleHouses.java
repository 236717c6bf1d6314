package slabfield.cli;

import slabfield.advice.Houses;
import slabfield.field.Progress;
import slabfield.fit.Ensemble;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.NotFitted;
import slabfield.model.Scenario;

/** Makes the plausible houses that a verb asks. */
final class PlausibleHouses {
    /** The same question gets the same answer. */
    private static final long SEED = 1;

    private PlausibleHouses() {}

    /** Houses that agree with the readings. */
    static Houses fromReadings(Scenario scenario, int count, Progress progress) throws Refusal {
        return Houses.of(Ensemble.of(fitted(scenario, progress), count, SEED, progress));
    }

    /** Houses that agree with what is drawn. */
    static Houses assumed(Scenario scenario, int count) {
        return Houses.assumed(scenario, count, SEED);
    }

    /** The house fitted to its readings. */
    static Fitted fitted(Scenario scenario, Progress progress) throws Refusal {
        try {
            return HouseFit.fit(scenario, progress);
        } catch (NotFitted e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        }
    }

    /** True where a stage holds readings. */
    static boolean hasReadings(Scenario scenario) {
        return scenario.stages().stream()
                .anyMatch(s -> !s.holes().isEmpty() || !s.systems().isEmpty());
    }
}
