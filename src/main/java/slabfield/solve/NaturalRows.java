package slabfield.solve;

import java.util.Arrays;

/** The rows of a coarse level's answer in natural order, put together as they are asked for; a few are kept. */
final class NaturalRows {
    private static final int KEPT = 4;

    private final float[][] ring;
    private final int[] held = new int[KEPT];
    private CoarseGrid grid;

    /** @param length of a row, padding included */
    NaturalRows(int length) {
        ring = new float[KEPT][length];
    }

    /** Starts a pass over a level whose answer is ready. */
    void begin(CoarseGrid level) {
        grid = level;
        Arrays.fill(held, -1);
    }

    /** Padded row j; it stays until a row {@value #KEPT} further is asked for. */
    float[] row(int j) {
        float[] r = ring[j & (KEPT - 1)];
        if (held[j & (KEPT - 1)] != j) {
            held[j & (KEPT - 1)] = j;
            Arrays.fill(r, 0);
            grid.x.take(j, r, 0, grid.first[j], grid.end[j]);
        }
        return r;
    }
}
