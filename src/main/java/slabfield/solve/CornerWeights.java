package slabfield.solve;

/** Weights of the red cells in odd rows, each in the middle of four that stay, by the row pair they are in. */
final class CornerWeights {
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

    /** Takes over those of a row pair. */
    void take(int pair, CellEnergy cells, int first, int end) {
        Loops.round(southWest[pair], cells.southWest, first, end);
        Loops.round(southEast[pair], cells.southEast, first, end);
        Loops.round(northWest[pair], cells.northWest, first, end);
        Loops.round(northEast[pair], cells.northEast, first, end);
    }
}
