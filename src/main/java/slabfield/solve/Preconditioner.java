package slabfield.solve;

/** Something like the inverse of a symmetric positive-definite matrix, and symmetric positive definite itself. */
public interface Preconditioner {
    /** z = M^-1 r; z is overwritten and is another array than r, which is not modified. */
    void apply(double[] r, double[] z);
}
