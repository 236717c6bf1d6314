package slabfield.solve;

/** A square matrix known by what it does to a vector. */
public interface LinearOperator {
    /** Length of its vectors. */
    int size();

    /** y = A x; y is overwritten and is another array than x. */
    void apply(double[] x, double[] y);
}
