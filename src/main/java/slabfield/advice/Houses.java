package slabfield.advice;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import slabfield.fit.Ensemble;
import slabfield.fit.ModelError;
import slabfield.fit.NoiseModel;
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
public record Houses(Scenario best, List<Member> members, Basis basis) {
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

    /**
     * One house.
     *
     * @param house as drawn, with its own values of what nobody knows
     * @param error by which the truth may differ from it
     */
    public record Member(Scenario house, ModelError error) {
        Member withCellSize(double cell) {
            return new Member(house.withCellSize(cell), error);
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
        Random random = new Random(seed), flows = new Random(~seed);
        return new Houses(
                scenario,
                Stream.generate(() -> drawn(scenario, unknowns, random, flows))
                        .limit(count)
                        .toList(),
                Basis.ASSUMPTIONS);
    }

    private static Member drawn(Scenario scenario, List<Parameter> unknowns, Random random, Random flows) {
        Scenario house = scenario;
        for (Parameter p : unknowns) house = p.with(house, p.prior().value(random.nextGaussian()));
        return new Member(house, new ModelError(NoiseModel.USUAL, random.nextGaussian(), flows.nextGaussian()));
    }

    /** The houses of an ensemble that explains the readings; the fitted house is the best. */
    public static Houses of(Ensemble ensemble) {
        return new Houses(
                ensemble.fit().house(),
                ensemble.members().stream()
                        .map(m -> new Member(m.house(), m.error()))
                        .toList(),
                Basis.READINGS);
    }

    /** The same houses on cells of another side [m]. */
    public Houses withCellSize(double cell) {
        return new Houses(
                best.withCellSize(cell),
                members.stream().map(m -> m.withCellSize(cell)).toList(),
                basis);
    }
}
