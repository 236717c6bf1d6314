package slabfield.fit;

import slabfield.model.Scenario;

/**
 * One unknown of a house.
 *
 * @param id unique among the unknowns of a fit
 * @param kind what it is, which also says its unit
 * @param words what it is, for a person, as the beginning of a sentence: "the permeability of the fill"
 * @param prior what is believed of it before any reading
 * @param change how a value of it changes what is drawn
 */
public record Parameter(String id, Kind kind, String words, Prior prior, Change change) {
    /** What an unknown is. */
    public enum Kind {
        /** k of the layer or of a zone [m2]. */
        PERMEABILITY(true),
        /** beta of the layer [1/m]. */
        INERTIAL(false),
        /** beta of coarse fill that is drawn without one, as a multiple of Ward's for its permeability. */
        INERTIAL_NOT_DRAWN(false),
        /** k of the fill around an opening, as a multiple of what the house has there. */
        FILL_BESIDE(false),
        /** Leak of an opening, a joint or a part of a wall, as a multiple of what is drawn. */
        LEAK(true),
        /** Part of an opening that is left open where a stage calls it sealed, covered or loose. */
        LEFT_BY_SEAL(true),
        /** Conductance of native soil to outdoors, per area [m/(s Pa)]. */
        SOIL(true),
        /** k of what a barrier is made of [m2]. */
        BARRIER(true),
        /** Length of a gap in a barrier [m]. */
        GAP(true),
        /** Open area of a tile's slots, as a multiple of what is drawn. */
        TILE(true),
        /** Radius of a pit [m]. */
        PIT(false),
        /** Exponent of an opening's flow against its pressure difference, at the leak it has at 10 Pa. */
        EXPONENT(false),
        /** Outdoors at floor level, relative to the room [Pa]. */
        OUTDOORS(false);

        private final boolean conducts;

        Kind(boolean conducts) {
            this.conducts = conducts;
        }

        /** False for what is unknown but of no interest in itself: it only widens the ranges of what is sought. */
        public boolean sought() {
            return this != EXPONENT && this != INERTIAL_NOT_DRAWN && this != FILL_BESIDE;
        }

        /** True for what lets air through in proportion: the flow of a house grows with all of these together. */
        public boolean conducts() {
            return conducts;
        }
    }

    /** How a value changes what is drawn; a pure function. */
    @FunctionalInterface
    public interface Change {
        Scenario to(Scenario drawn, double value);
    }

    /** The house with this value. */
    public Scenario with(Scenario drawn, double value) {
        return change.to(drawn, value);
    }
}
