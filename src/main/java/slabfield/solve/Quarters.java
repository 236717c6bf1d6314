package slabfield.solve;

/** A field on a {@link CoarseGrid} by its four colours, each in {@link Strips}: even or odd columns of even or odd rows. */
final class Quarters {
    final Strips strips;
    /** Even columns of even rows, and odd columns of them. */
    final float[][] ee;

    final float[][] oe;
    /** Even columns of odd rows, and odd columns of them. */
    final float[][] eo;

    final float[][] oo;

    Quarters(Strips strips) {
        this.strips = strips;
        ee = strips.field();
        oe = strips.field();
        eo = strips.field();
        oo = strips.field();
    }

    /** Even columns of a padded row's strip. */
    float[] even(int j) {
        return ((j & 1) != 0 ? ee : eo)[strips.strip(Strips.pair(j))];
    }

    /** Odd columns of a padded row's strip. */
    float[] odd(int j) {
        return ((j & 1) != 0 ? oe : oo)[strips.strip(Strips.pair(j))];
    }

    /** Sets elements first .. end - 1 of padded row j from a row in natural order that begins at element {@code from} of an array. */
    void put(int j, float[] natural, int from, int first, int end) {
        if (first >= end) {
            return;
        }
        int at = strips.at(Strips.pair(j));
        float[] e = even(j);
        float[] o = odd(j);
        for (int k = first; k < end; k++) {
            e[at + k] = natural[from + 2 * k - 1];
            o[at + k] = natural[from + 2 * k];
        }
    }

    /** The reverse of {@link #put}. */
    void take(int j, float[] natural, int from, int first, int end) {
        if (first >= end) {
            return;
        }
        int at = strips.at(Strips.pair(j));
        float[] e = even(j);
        float[] o = odd(j);
        for (int k = first; k < end; k++) {
            natural[from + 2 * k - 1] = e[at + k];
            natural[from + 2 * k] = o[at + k];
        }
    }

    /** Value at a padded row's element in natural order; 0 beyond the rows. */
    float get(int j, int element) {
        int pair = Strips.pair(j);
        if (pair < 1 || strips.strip(pair) == strips.count) {
            return 0;
        }
        int at = strips.at(pair);
        return (element & 1) != 0 ? even(j)[at + (element + 1) / 2] : odd(j)[at + element / 2];
    }

    void set(int j, int element, float value) {
        int at = strips.at(Strips.pair(j));
        if ((element & 1) != 0) {
            even(j)[at + (element + 1) / 2] = value;
        } else {
            odd(j)[at + element / 2] = value;
        }
    }
}
