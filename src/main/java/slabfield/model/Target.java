package slabfield.model;

/**
 * The vacuum wanted everywhere under the slab.
 *
 * @param vacuum positive below the room's pressure [Pa]
 * @param choice where the number comes from, for instance "common practice"
 */
public record Target(double vacuum, String choice) {
    /** About 5 Pa at the furthest, weakest hole: common practice. */
    public static final Target COMMON_PRACTICE = new Target(5, "common practice");

    public Target {
        Check.positive("vacuum", vacuum);
        Check.words("choice", choice);
    }
}
