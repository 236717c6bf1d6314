package slabfield.solve;

/** A level's rows, and for each the points between two that stay, weighed: along a row that stays, across one that goes. */
interface BetweenRows {
    /** Padded row j; those beyond the edges are empty. */
    SplitRow row(int j);

    PointsBetween points(int j);

    /** True for a row that stays: those that are odd by their padded number. */
    static boolean stays(int j) {
        return (j & 1) != 0;
    }
}
