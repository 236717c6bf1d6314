package slabfield.readings;

/**
 * Something odd about readings.
 *
 * @param kind what
 * @param where id of the hole or suction point; empty for the stage as a whole
 * @param sentence what is odd and what to do
 */
public record Finding(Kind kind, String where, String sentence) {
    /** What can be odd, in the order in which it is said. */
    public enum Kind {
        /** More vacuum than at any suction point, which no hole can have. */
        STRONGER_THAN_SOURCE,
        /** A value of inches of water taken for pascals, or the other way round. */
        UNIT_SLIP,
        /** The size fits, the sign does not. */
        SIGN_SLIP,
        /** More pressure with the fan on than off. */
        RISES_WITH_FAN,
        /** No difference between fan on and off where one is expected. */
        ON_EQUALS_OFF,
        /** A hole far from the suction has much more vacuum than one near it. */
        FAR_STRONGER_THAN_NEAR,
        /** More flow and less vacuum everywhere than at the stage before. */
        MORE_FLOW_LESS_VACUUM,
        /** Read before the layer can have settled. */
        NOT_SETTLED,
        /** The flow is too small for the meter. */
        FLOW_BELOW_METER,
        /** No flow was read. */
        NO_FLOW
    }
}
