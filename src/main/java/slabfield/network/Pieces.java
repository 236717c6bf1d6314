package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import slabfield.field.Grid;
import slabfield.model.Point;

/** Lines cut at the lines of the grid. */
final class Pieces {
    private static final double SHORTEST = 1e-7;

    private Pieces() {}

    /**
     * One piece within a cell or along a grid line.
     *
     * @param x middle [m]
     * @param y middle [m]
     * @param length [m]
     * @param normalX unit vector across the piece
     * @param normalY unit vector across the piece
     * @param along distance of its middle from the start of the line [m]
     */
    record Piece(double x, double y, double length, double normalX, double normalY, double along) {}

    static List<Piece> cut(List<Point> line, Grid grid) {
        List<Piece> out = new ArrayList<>();
        double start = 0;
        for (int k = 1; k < line.size(); k++) {
            Point a = line.get(k - 1), b = line.get(k);
            double length = a.distanceTo(b), ux = (b.x() - a.x()) / length, uy = (b.y() - a.y()) / length;
            if (length < SHORTEST) continue;
            double[] cuts = cuts(a, ux, uy, length, grid);
            for (int i = 1; i < cuts.length; i++) {
                double piece = cuts[i] - cuts[i - 1], middle = (cuts[i] + cuts[i - 1]) / 2;
                if (piece < SHORTEST) continue;
                out.add(new Piece(a.x() + middle * ux, a.y() + middle * uy, piece, -uy, ux, start + middle));
            }
            start += length;
        }
        return out;
    }

    private static double[] cuts(Point a, double ux, double uy, double length, Grid grid) {
        double[] at = new double[grid.columns() + grid.rows() + 4];
        int n = 0;
        at[n++] = 0;
        at[n++] = length;
        if (Math.abs(ux) > 1e-9)
            for (int i = 0; i <= grid.columns(); i++) {
                double s = (grid.left() + i * grid.width() - a.x()) / ux;
                if (s > 0 && s < length) at[n++] = s;
            }
        if (Math.abs(uy) > 1e-9)
            for (int j = 0; j <= grid.rows(); j++) {
                double s = (grid.bottom() + j * grid.height() - a.y()) / uy;
                if (s > 0 && s < length) at[n++] = s;
            }
        double[] sorted = Arrays.copyOf(at, n);
        Arrays.sort(sorted);
        return sorted;
    }
}
