package slabfield.readings;

import java.util.List;

/**
 * Places across a round pipe whose velocities average to the mean velocity, by the log-linear rule. Positions are handbook
 * values from memory; the test holds them against a logarithmic profile.
 *
 * @see "LogLinearTraverseTest"
 */
public enum LogLinearTraverse {
    FOUR_PLACES(0.043, 0.290, 0.710, 0.957),
    SIX_PLACES(0.032, 0.135, 0.321, 0.679, 0.865, 0.968),
    TEN_PLACES(0.019, 0.077, 0.153, 0.217, 0.361, 0.639, 0.783, 0.847, 0.923, 0.981);

    private final List<Double> fractions;

    LogLinearTraverse(Double... fractions) {
        this.fractions = List.of(fractions);
    }

    /** Distance of each place from the wall on one side, in diameters, along one diameter; take two at right angles. */
    public List<Double> fractions() {
        return fractions;
    }

    /** Distance of each place from the wall [m]. */
    public List<Double> places(double diameter) {
        return fractions.stream().map(f -> f * diameter).toList();
    }
}
