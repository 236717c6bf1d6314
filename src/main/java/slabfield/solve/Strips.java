package slabfield.solve;

/**
 * How the points of a coarse level are laid out. Rows go in pairs, an even one and the odd one above it, and even and odd columns
 * apart, so that each point of four stands for one colour; a colour's points of some pairs of rows follow one another in one array, a
 * strip. Loops over a strip are long even where rows are short, which is what compiled loops need to use whole vectors.
 *
 * <p>Pairs count from 1. Within a pair column 2 k - 2 and 2 k - 1 are element k; element 0 stays 0 and parts the pairs, and one more
 * such element ends the strip.
 */
final class Strips {
    /** Elements that a strip has, about. */
    private static final int LENGTH = 2048;

    /** Elements from one pair to the next. */
    final int stride;

    final int count;
    /** First pair of each strip, and one past the last. */
    private final int[] first;

    private final int[] stripOf;

    /** @param shares where each worker's pairs begin, and one past the last; a strip is one worker's */
    Strips(int columns, int[] shares) {
        stride = (columns + 1) / 2 + 1;
        int pairs = shares[shares.length - 1] - 1;
        int most = Math.max(1, LENGTH / stride);
        int[] begins = new int[pairs + 1];
        stripOf = new int[pairs + 2];
        int strips = 0;
        for (int w = 0; w + 1 < shares.length; w++) {
            for (int pair = shares[w]; pair < shares[w + 1]; pair++) {
                if ((pair - shares[w]) % most == 0) {
                    begins[strips++] = pair;
                }
                stripOf[pair] = strips - 1;
            }
        }
        begins[strips] = pairs + 1;
        stripOf[pairs + 1] = strips;
        count = strips;
        first = java.util.Arrays.copyOf(begins, strips + 1);
    }

    /** Zeros for one colour. */
    float[][] field() {
        float[][] made = new float[count][];
        for (int s = 0; s < count; s++) {
            made[s] = new float[length(s) + 1];
        }
        return made;
    }

    /** Elements of a strip, but for the one that ends it. */
    int length(int strip) {
        return (first[strip + 1] - first[strip]) * stride;
    }

    /** Of the longest. */
    int longest() {
        int most = 0;
        for (int s = 0; s < count; s++) {
            most = Math.max(most, length(s));
        }
        return most;
    }

    /** First pair of a strip; of one past the last strip, one past the last pair. */
    int begin(int strip) {
        return first[strip];
    }

    /** Strip of a pair; of one past the last pair, one past the last strip. */
    int strip(int pair) {
        return stripOf[pair];
    }

    /** Where a pair's element 0 is in its strip. */
    int at(int pair) {
        return (pair - first[stripOf[pair]]) * stride;
    }

    /** Pair of a padded row. */
    static int pair(int j) {
        return (j + 1) / 2;
    }
}
