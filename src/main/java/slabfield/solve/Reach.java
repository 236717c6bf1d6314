package slabfield.solve;

/** Coarse elements that some rows reach, first .. end - 1, with one to spare on each side, as the cells there share a side with those in use. */
record Reach(int first, int end) {
    /** @param columns number of coarse points in a row */
    static Reach of(int columns, SplitRow... rows) {
        int low = Integer.MAX_VALUE;
        int high = 0;
        for (SplitRow row : rows) {
            if (row.first < row.end) {
                low = Math.min(low, row.first);
                high = Math.max(high, row.end);
            }
        }
        return high == 0 ? new Reach(1, 1) : new Reach(Math.max(1, low - 1), Math.min(columns, high) + 1);
    }
}
