package slabfield.solve;

/** The first and the last row of a grid that are no longer what was taken over, looked for by a team. */
final class ChangedRows {
    private final int[] low;
    private final int[] high;

    ChangedRows(int workers) {
        low = new int[workers];
        high = new int[workers];
    }

    /** A worker's padded rows from .. to - 1. */
    void look(int me, FineRows rows, int from, int to) {
        int first = from;
        while (first < to && !rows.differs(first)) {
            first++;
        }
        int last = to - 1;
        while (last > first && !rows.differs(last)) {
            last--;
        }
        low[me] = first < to ? first : Integer.MAX_VALUE;
        high[me] = first < to ? last : 0;
    }

    int low() {
        int least = Integer.MAX_VALUE;
        for (int j : low) {
            least = Math.min(least, j);
        }
        return least;
    }

    int high() {
        int most = 0;
        for (int j : high) {
            most = Math.max(most, j);
        }
        return most;
    }

    /** Rows from the first to the last; 0 where none has changed. */
    int count() {
        return high() == 0 ? 0 : high() - low() + 1;
    }
}
