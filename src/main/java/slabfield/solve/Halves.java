package slabfield.solve;

/**
 * A field on a {@link CoarseGrid}, its even and its odd columns apart: columns 2 k - 2 and 2 k - 1 of padded row j are
 * element k of {@code even[j]} and {@code odd[j]}, with zeros all round. A point's neighbours beside it in every row then
 * have the same element number or, on its outer side, the next one, which suits compiled loops; see {@link RedBlackGrid}.
 */
final class Halves {
    final float[][] even;
    final float[][] odd;

    Halves(int columns, int rows) {
        even = new float[rows + 2][length(columns)];
        odd = new float[rows + 2][length(columns)];
    }

    /** Length of a row's arrays. */
    static int length(int columns) {
        return (columns + 1) / 2 + 3;
    }

    /** Sets columns 2 k - 2 and 2 k - 1 of padded row j, k from {@code first} to {@code end - 1}, from a row in natural order. */
    void put(int j, float[] natural, int first, int end) {
        float[] e = even[j];
        float[] o = odd[j];
        for (int k = first; k < end; k++) {
            e[k] = natural[2 * k - 1];
            o[k] = natural[2 * k];
        }
    }

    /** The reverse of {@link #put}. */
    void take(int j, float[] natural, int first, int end) {
        float[] e = even[j];
        float[] o = odd[j];
        for (int k = first; k < end; k++) {
            natural[2 * k - 1] = e[k];
            natural[2 * k] = o[k];
        }
    }

    float get(int j, int element) {
        return (element & 1) != 0 ? even[j][(element + 1) / 2] : odd[j][element / 2];
    }

    void set(int j, int element, float value) {
        if ((element & 1) != 0) {
            even[j][(element + 1) / 2] = value;
        } else {
            odd[j][element / 2] = value;
        }
    }
}
