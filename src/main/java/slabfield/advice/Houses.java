package slabfield.advice;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import slabfield.fit.Parameter;
import slabfield.fit.Unknowns;
import slabfield.model.Scenario;

/**
 * Houses that could all be the one on site: they differ in what nobody knows, and a measure is tried in each of them.
 *
 * @param best the one to reckon with where one number is wanted: the fitted house, or the house as drawn
 * @param members equally plausible ones
 * @param basis what makes them plausible
 */
public record Houses(Scenario best, List<Scenario> members, Basis basis) {
    /** What makes a house plausible. */
    public enum Basis {
        /** It agrees with what was read. */
        READINGS("from the readings"),
        /** It agrees with what was drawn and with the range of each word, and nothing was read. */
        ASSUMPTIONS("from assumed ranges, not from readings");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Houses {
        members = List.copyOf(members);
        if (members.isEmpty()) throw new IllegalArgumentException("there must be at least one plausible house");
    }

    /**
     * Houses drawn from what is believed before any reading: the range of each fill's word, and common practice for leaks,
     * seals, soil and suspected footings ({@link Unknowns}).
     *
     * @param scenario as drawn; it is the best house
     * @param count of members, from 1
     * @param seed of the draw: the same seed gives the same houses
     */
    public static Houses assumed(Scenario scenario, int count, long seed) {
        List<Parameter> unknowns = Unknowns.of(scenario);
        Random random = new Random(seed);
        return new Houses(
                scenario,
                Stream.generate(() -> drawn(scenario, unknowns, random)).limit(count).toList(),
                Basis.ASSUMPTIONS);
    }

    private static Scenario drawn(Scenario scenario, List<Parameter> unknowns, Random random) {
        Scenario house = scenario;
        for (Parameter p : unknowns) house = p.with(house, p.prior().value(random.nextGaussian()));
        return house;
    }

    /** The same houses on cells of another side [m]. */
    public Houses withCellSize(double cell) {
        return new Houses(
                best.withCellSize(cell),
                members.stream().map(m -> m.withCellSize(cell)).toList(),
                basis);
    }
}
