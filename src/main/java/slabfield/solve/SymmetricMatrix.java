package slabfield.solve;

import java.util.Arrays;

/**
 * Sparse symmetric matrix whose pattern is fixed once built; only its values change.
 *
 * <p>Each entry is stored once. Slots 0 to {@code size()-1} of {@link #values()} are the diagonal; then come the
 * entries above the diagonal, row by row, columns rising. Every diagonal entry belongs to the pattern.
 */
public final class SymmetricMatrix implements LinearOperator {
    private final int size;
    /** Where each row's entries above the diagonal begin in {@code column}; length size + 1. */
    private final int[] start;

    private final int[] column;
    private final double[] values;

    private SymmetricMatrix(int size, int[] start, int[] column) {
        this.size = size;
        this.start = start;
        this.column = column;
        this.values = new double[size + column.length];
    }

    /** Number of rows. */
    @Override
    public int size() {
        return size;
    }

    /** Number of stored entries, each symmetric pair counted once. */
    public int entries() {
        return values.length;
    }

    /** The live values by slot; write here. Length {@link #entries()}. */
    public double[] values() {
        return values;
    }

    /** Slot of a diagonal entry. */
    public int slot(int i) {
        if (i < 0 || i >= size) {
            throw new IllegalArgumentException("node " + i + " is not one of the matrix's " + size);
        }
        return i;
    }

    /**
     * Slot of entry (i, j), which is also that of (j, i).
     *
     * @throws IllegalArgumentException where the pattern has no such entry
     */
    public int slot(int i, int j) {
        int k = i == j ? slot(i) : Math.min(i, j) < 0 ? -1 : find(i, j);
        if (k < 0) {
            throw new IllegalArgumentException("nodes " + i + " and " + j + " are not coupled in this pattern");
        }
        return k;
    }

    /** Slot of the entry of two different nodes, or -1 where the pattern has none. */
    int find(int i, int j) {
        int row = Math.min(i, j);
        int k = Arrays.binarySearch(column, start[row], start[row + 1], Math.max(i, j));
        return k < 0 ? -1 : size + k;
    }

    /** Sets every value to 0. */
    public void clear() {
        Arrays.fill(values, 0);
    }

    /**
     * y = A x.
     *
     * @param x length {@link #size()}, not modified
     * @param y length {@link #size()}, overwritten; another array than x
     */
    public void multiply(double[] x, double[] y) {
        for (int i = 0; i < size; i++) {
            y[i] = values[i] * x[i];
        }
        for (int i = 0; i < size; i++) {
            double sum = y[i];
            double own = x[i];
            for (int k = start[i]; k < start[i + 1]; k++) {
                int j = column[k];
                double a = values[size + k];
                sum += a * x[j];
                y[j] += a * own;
            }
            y[i] = sum;
        }
    }

    /** {@inheritDoc} The same as {@link #multiply}. */
    @Override
    public void apply(double[] x, double[] y) {
        multiply(x, y);
    }

    /** First position in {@link #column(int)} of a row's entries above the diagonal; {@code first(size())} is the end. */
    int first(int row) {
        return start[row];
    }

    /** Column of the entry whose slot is {@code size() + k}. */
    int column(int k) {
        return column[k];
    }

    /** All neighbours of every node, both ways. */
    Neighbours neighbours() {
        int[] from = new int[size + 1];
        for (int i = 0; i < size; i++) {
            from[i + 1] += start[i + 1] - start[i];
        }
        for (int j : column) {
            from[j + 1]++;
        }
        for (int i = 0; i < size; i++) {
            from[i + 1] += from[i];
        }
        int[] next = Arrays.copyOf(from, size);
        int[] node = new int[2 * column.length];
        for (int i = 0; i < size; i++) {
            for (int k = start[i]; k < start[i + 1]; k++) {
                node[next[i]++] = column[k];
                node[next[column[k]]++] = i;
            }
        }
        return new Neighbours(from, node);
    }

    /** Node i's neighbours are {@code node[from[i]]} to {@code node[from[i + 1] - 1]}. */
    record Neighbours(int[] from, int[] node) {}

    /** Collects which nodes are coupled. */
    public static final class Builder {
        private final int size;
        private int count;
        private int[] low = new int[256];
        private int[] high = new int[256];

        /** @param size number of nodes, at least 1 */
        public Builder(int size) {
            if (size < 1) {
                throw new IllegalArgumentException("a matrix needs at least 1 node, not " + size);
            }
            this.size = size;
        }

        /** Says that i and j are coupled; saying it again, or the other way round, or of a node with itself, adds nothing. */
        public Builder couple(int i, int j) {
            if (i < 0 || j < 0 || i >= size || j >= size) {
                throw new IllegalArgumentException("nodes " + i + " and " + j + " do not both lie in 0.." + (size - 1));
            }
            if (i == j) {
                return this;
            }
            if (count == low.length) {
                low = Arrays.copyOf(low, 2 * count);
                high = Arrays.copyOf(high, 2 * count);
            }
            low[count] = Math.min(i, j);
            high[count++] = Math.max(i, j);
            return this;
        }

        /** The pattern so far, with every value 0. */
        public SymmetricMatrix build() {
            // Sorting by column and then, keeping that order, by row leaves each row's columns rising.
            int[] order = sorted(low, sorted(high, null));
            int[] start = new int[size + 1];
            int[] column = new int[count];
            int kept = 0;
            int lastRow = -1;
            for (int k : order) {
                if (low[k] != lastRow || high[k] != column[kept - 1]) {
                    lastRow = low[k];
                    column[kept++] = high[k];
                    start[lastRow + 1]++;
                }
            }
            for (int i = 0; i < size; i++) {
                start[i + 1] += start[i];
            }
            return new SymmetricMatrix(size, start, Arrays.copyOf(column, kept));
        }

        /** Pairs in rising order of key, those of one key in the order given (null: as they came). */
        private int[] sorted(int[] key, int[] before) {
            int[] next = new int[size + 1];
            for (int k = 0; k < count; k++) {
                next[key[k] + 1]++;
            }
            for (int i = 0; i < size; i++) {
                next[i + 1] += next[i];
            }
            int[] order = new int[count];
            for (int n = 0; n < count; n++) {
                int k = before == null ? n : before[n];
                order[next[key[k]]++] = k;
            }
            return order;
        }
    }
}
