package slabfield.solve;

/** Weights of the red cells in odd rows, each in the middle of four that stay, by the row pair they are in. */
final class CornerWeights implements Galerkin.Middle {
    final float[][] southWest;
    final float[][] southEast;
    final float[][] northWest;
    final float[][] northEast;

    CornerWeights(int pairs, int length) {
        southWest = new float[pairs + 2][length];
        southEast = new float[pairs + 2][length];
        northWest = new float[pairs + 2][length];
        northEast = new float[pairs + 2][length];
    }

    @Override
    public void put(int pair, int k, double sw, double se, double nw, double ne) {
        southWest[pair][k] = (float) sw;
        southEast[pair][k] = (float) se;
        northWest[pair][k] = (float) nw;
        northEast[pair][k] = (float) ne;
    }
}
