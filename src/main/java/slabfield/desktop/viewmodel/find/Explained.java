package slabfield.desktop.viewmodel.find;

import java.util.Optional;
import slabfield.advice.Houses;
import slabfield.field.Progress;
import slabfield.fit.Ensemble;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.NotFitted;
import slabfield.model.Scenario;

/** The house that explains the readings, and houses around it, found once for each state of the drawing. */
final class Explained {
    /** The same question gets the same answer. */
    private static final long SEED = 1;

    private static final double FIT = 0.3;

    private Optional<Fitted> fitted = Optional.empty();
    private Optional<Ensemble> ensemble = Optional.empty();

    /** True where a stage holds readings. */
    static boolean hasReadings(Scenario scenario) {
        return scenario.stages().stream()
                .anyMatch(s -> !s.holes().isEmpty() || !s.systems().isEmpty());
    }

    /** The house fitted to its readings. */
    synchronized Fitted fit(Scenario house, Progress progress) throws NotFitted {
        if (fitted.filter(f -> f.drawn().equals(house)).isEmpty()) {
            ensemble = Optional.empty();
            fitted = Optional.of(HouseFit.fit(house, progress));
        }
        return fitted.orElseThrow();
    }

    /** Houses that explain the readings, at least so many. */
    synchronized Ensemble ensemble(Scenario house, int least, Progress progress) throws NotFitted {
        Fitted fit = fit(house, Phases.part(progress, 0, FIT));
        if (ensemble.filter(e -> e.members().size() >= least).isEmpty())
            ensemble = Optional.of(Ensemble.of(fit, least, SEED, Phases.part(progress, FIT, 1)));
        return ensemble.orElseThrow();
    }

    /** Plausible houses: those that explain the readings where there are any, else those that the usual ranges allow. */
    Houses houses(Scenario house, int count, Progress progress) throws NotFitted {
        if (!hasReadings(house)) return Houses.assumed(house, count, SEED);
        Houses all = Houses.of(ensemble(house, count, progress));
        return new Houses(all.best(), all.members().subList(0, count), all.basis());
    }
}
