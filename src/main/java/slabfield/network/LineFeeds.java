package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.law.FlowLaw;
import slabfield.law.InSeries;
import slabfield.law.QuadraticResistance;
import slabfield.model.Point;

/**
 * Where the pieces of a line draw their air from.
 *
 * <p>A piece draws from the cell middles around it with the weights of bilinear interpolation, through the layer's
 * resistance between the line and those middles: t (1-t) of a cell where both sides feed it, t being its place between
 * two middles, and the whole distance where only one side does, as at the slab's edge.
 */
final class LineFeeds {
    private static final double FAR = 1.6;

    private final LayerGrid layer;
    private final Grid grid;
    private final int[] discNode;

    /** @param discNode node of each of the layer's discs */
    LineFeeds(LayerGrid layer, int[] discNode) {
        this.layer = layer;
        this.grid = layer.grid;
        this.discNode = discNode;
    }

    /**
     * Where a piece of a line draws from, and what the layer in between resists.
     *
     * @param node that it draws from
     * @param share of the piece's length
     * @param resistance linear part [Pa s/m3]
     * @param inertial quadratic part [Pa s2/m6]
     * @param cell that the air goes through, -1 for none
     */
    record Feed(int node, double share, double resistance, double inertial, int cell) {
        /** A law that stands behind the layer's part. */
        FlowLaw before(FlowLaw law) {
            if (resistance == 0 && inertial == 0) return law;
            return new InSeries(new QuadraticResistance(resistance, inertial), law);
        }
    }

    /** Feeds of a piece; none where no layer is near. */
    List<Feed> of(Pieces.Piece piece) {
        double fx = (piece.x() - grid.left()) / grid.width() - 0.5,
                fy = (piece.y() - grid.bottom()) / grid.height() - 0.5;
        int i = (int) Math.floor(fx + 1e-9), j = (int) Math.floor(fy + 1e-9);
        double tx = Math.max(0, fx - i), ty = Math.max(0, fy - j);
        int[] cells = new int[4];
        double[] weight = new double[4];
        double sum = 0;
        for (int k = 0; k < 4; k++) {
            int a = k & 1, b = k >> 1;
            cells[k] = layer.cellAt(i + a, j + b);
            weight[k] = (a == 0 ? 1 - tx : tx) * (b == 0 ? 1 - ty : ty);
            if (weight[k] < 1e-9 || !usable(cells[k], piece)) weight[k] = 0;
            sum += weight[k];
        }
        if (sum <= 0) return nearestFeed(piece);
        double both = piece.normalX() * piece.normalX() * tx * (1 - tx) * grid.width()
                + piece.normalY() * piece.normalY() * ty * (1 - ty) * grid.height();
        List<Feed> out = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            if (weight[k] == 0) continue;
            double share = weight[k] / sum;
            out.add(feed(piece, cells[k], share, sum > 1 - 1e-6 ? both : across(piece, cells[k])));
        }
        return out;
    }

    private Feed feed(Pieces.Piece piece, int cell, double share, double distance) {
        if (layer.kind[cell] == CellKind.DISC) return new Feed(discNode[layer.disc[cell]], share, 0, 0, -1);
        double width = share * piece.length(), area = width * layer.thickness[cell];
        double linear = distance / (layer.transmissivity[cell] * width);
        return new Feed(cell, share, linear, layer.drag[cell] * distance / (area * area), cell);
    }

    private double across(Pieces.Piece piece, int cell) {
        double dx = grid.x(cell % grid.columns()) - piece.x(), dy = grid.y(cell / grid.columns()) - piece.y();
        return Math.abs(dx * piece.normalX() + dy * piece.normalY());
    }

    private boolean usable(int cell, Pieces.Piece piece) {
        return cell >= 0
                && (layer.kind[cell] == CellKind.LAYER || layer.kind[cell] == CellKind.DISC)
                && !separated(new Point(piece.x(), piece.y()), cell);
    }

    private List<Feed> nearestFeed(Pieces.Piece piece) {
        int ci = grid.column(piece.x()), cj = grid.row(piece.y()), best = -1;
        double distance = FAR * Math.max(grid.width(), grid.height());
        for (int j = cj - 2; j <= cj + 2; j++)
            for (int i = ci - 2; i <= ci + 2; i++) {
                int cell = layer.cellAt(i, j);
                if (!usable(cell, piece)) continue;
                double d = Math.hypot(grid.x(i) - piece.x(), grid.y(j) - piece.y());
                if (d < distance) {
                    distance = d;
                    best = cell;
                }
            }
        return best < 0 ? List.of() : List.of(feed(piece, best, 1, distance));
    }

    /** True where a barrier stands between a place and a cell's middle. */
    boolean separated(Point at, int cell) {
        return layer.cut(at.x(), at.y(), grid.x(cell % grid.columns()), grid.y(cell / grid.columns()));
    }
}
