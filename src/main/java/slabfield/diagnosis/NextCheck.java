package slabfield.diagnosis;

/**
 * A check that would tell two explanations apart.
 *
 * @param effort what kind of work it is
 * @param words what to do, as an order
 * @param reading what is then read: where, and of what
 * @param first expected there if the first explanation holds, in SI
 * @param second expected there if the second holds
 * @param flow true where these are flows [m3/s]; else pressures [Pa]
 * @param separation difference of both over the noise of that reading
 */
public record NextCheck(
        Effort effort, String words, String reading, double first, double second, boolean flow, double separation) {
    /** Separation from which a check is taken to tell two explanations apart. */
    public static final double CLEAR = 3;
    /** Separation below which a check would say nothing; common practice. */
    private static final double WORTH_DOING = 0.5;

    /** Kinds of work, the cheapest first; the order is common practice. */
    public enum Effort {
        READ_FAN_OFF,
        CHANGE_THE_HOUSE,
        READ_OUTDOORS,
        READ_SUCTION,
        READ_FLOW,
        READ_UNREAD_HOLE,
        COVER_FOR_A_WHILE,
        SECOND_SUCTION_LEVEL,
        DRILL_HOLE
    }

    public boolean clear() {
        return separation >= CLEAR;
    }

    /** False where the readings to be expected hardly differ. */
    public boolean worthDoing() {
        return separation >= WORTH_DOING;
    }
}
