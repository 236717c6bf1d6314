package slabfield.desktop.viewmodel;

import java.util.OptionalDouble;
import slabfield.model.Point;

/**
 * A test hole as it is listed: prediction beside measurement.
 *
 * @param hole its id
 * @param at place on the plan
 * @param found what was met below, or empty
 * @param predicted with the suction on [Pa]
 * @param predictedOff with the suction off [Pa]
 * @param measured with the suction on [Pa]
 * @param measuredOff with the suction off [Pa]
 * @param difference measured minus predicted, suction on [Pa]
 * @param band half-width within which the two count as equal; empty where nothing is compared [Pa]
 * @param verdict in words
 * @param off true where the reading lies outside the band
 */
public record HoleRow(
        String hole,
        Point at,
        String found,
        OptionalDouble predicted,
        OptionalDouble predictedOff,
        OptionalDouble measured,
        OptionalDouble measuredOff,
        OptionalDouble difference,
        OptionalDouble band,
        String verdict,
        boolean off) {}
