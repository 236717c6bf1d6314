package slabfield.solve;

/**
 * One worker's passes over its rows for conjugate gradients on the reduced system of a {@link RedBlackGrid}. All but the
 * answer is scaled, so that the right-hand side has length 1.
 */
interface StepRows {
    /** p = z + factor p, in padded rows from .. to - 1. */
    void direction(float[][] z, double factor, int from, int to);

    /** Works out S p; returns this worker's part of p' S p. */
    double multiply(int from, int to);

    /** This worker's part of p' r, for the direction made from what {@code cycle} has just done. */
    double slope(CycleRows cycle, int from, int to);

    /** x += length p times scale, r -= length S p, with r also in single precision; returns this worker's part of |r|^2. */
    double step(double length, double scale, double[][] x, float[][] r, int from, int to);

    /** This worker's part of z' S p, for the z that the cycle has just made. */
    double along(CycleRows cycle, float[][] z, int from, int to);
}
