package slabfield.solve;

import java.util.Arrays;
import slabfield.solve.NinePoint.Row;

/**
 * Builds the next coarser operator P' A P of a grid, and the weights P, row by row: black-box multigrid (Dendy 1982, "Black box
 * multigrid", J. Comput. Phys. 48). Every second point of every second row stays. A point between two that stay, in
 * one direction, takes the value that balances it when the operator is summed across that direction; a point in the
 * middle of four takes the value that balances it as it is. So thin barriers and jumps of conductance shape the weights.
 *
 * <p>The product is summed as energy, link by link, {@code g (x_a - x_b)^2}, which keeps small leaks exact.
 */
final class Galerkin {
    private final NinePoint.Source fine;
    private final boolean diagonals;
    private final NinePoint coarse;
    /** Weights of the points between two in the row below, in the middle row, and in the row above. */
    private double[] westBelow;

    private double[] eastBelow;
    private double[] westAbove;
    private double[] eastAbove;
    private final double[] south;
    private final double[] north;
    /** Energy of one cell of the coarse grid by corner: south-west, south-east, north-west, north-east; upper triangle. */
    private final double[] energy = new double[10];

    private final double[] centre = new double[4];

    Galerkin(NinePoint.Source fine, boolean diagonals, NinePoint coarse) {
        this.fine = fine;
        this.diagonals = diagonals;
        this.coarse = coarse;
        int length = coarse.columns + 3;
        westBelow = new double[length];
        eastBelow = new double[length];
        westAbove = new double[length];
        eastAbove = new double[length];
        south = new double[length];
        north = new double[length];
    }

    /** Where the four weights of a middle point go. */
    interface Middle {
        void put(int coarseRow, int k, double southWest, double southEast, double northWest, double northEast);
    }

    /** Builds padded coarse rows from .. to - 1. */
    void build(int from, int to, CoarseGrid weights, Middle middle) {
        for (int j = from; j < to; j++) {
            coarse.row[j].clear();
        }
        int start = Math.max(1, from - 1);
        Row under = fine.row(2 * start - 2);
        Row below = fine.row(2 * start - 1);
        between(below, under, westBelow, eastBelow);
        for (int j = start; j < to; j++) {
            Row mid = fine.row(2 * j);
            Row above = fine.row(2 * j + 1);
            boolean own = j >= from;
            if (own) {
                points(j, below, under);
                alongRow(j, below, under);
            }
            beside(mid, below);
            between(above, mid, westAbove, eastAbove);
            upright(j, mid, below, own, j + 1 < to);
            cells(j, below, mid, above, own, j + 1 < to, middle);
            if (own && weights != null) {
                keep(weights, j);
            }
            swap();
            under = mid;
            below = above;
        }
    }

    private void swap() {
        double[] w = westBelow;
        westBelow = westAbove;
        westAbove = w;
        double[] e = eastBelow;
        eastBelow = eastAbove;
        eastAbove = e;
    }

    private void keep(CoarseGrid weights, int j) {
        for (int k = 1; k <= coarse.columns; k++) {
            weights.fromWest[j][k] = (float) westBelow[k];
            weights.fromEast[j][k] = (float) eastBelow[k];
            weights.fromSouth[j][k] = (float) south[k];
            weights.fromNorth[j][k] = (float) north[k];
        }
    }

    /** Weights of the points between two staying ones in a row that stays. */
    private void between(Row r, Row under, double[] west, double[] east) {
        for (int k = 1; k <= coarse.columns; k++) {
            int i = 2 * k;
            double toWest = r.east()[i - 1];
            double toEast = r.east()[i];
            if (diagonals) {
                toWest += r.northWest()[i] + under.northEast()[i - 1];
                toEast += r.northEast()[i] + under.northWest()[i + 1];
            }
            double sum = balance(r.diagonal()[i] - r.north()[i] - under.north()[i], toWest + toEast);
            west[k] = r.diagonal()[i - 1] > 0 ? (float) (toWest * sum) : 0;
            east[k] = r.diagonal()[i + 1] > 0 ? (float) (toEast * sum) : 0;
        }
    }

    /** Weights of the points below and above staying ones, in a row that goes. */
    private void beside(Row mid, Row below) {
        for (int k = 1; k <= coarse.columns; k++) {
            int i = 2 * k - 1;
            double toSouth = below.north()[i];
            double toNorth = mid.north()[i];
            if (diagonals) {
                toSouth += below.northEast()[i - 1] + below.northWest()[i + 1];
                toNorth += mid.northEast()[i] + mid.northWest()[i];
            }
            double sum = balance(mid.diagonal()[i] - mid.east()[i] - mid.east()[i - 1], toSouth + toNorth);
            south[k] = (float) (toSouth * sum);
            north[k] = (float) (toNorth * sum);
        }
    }

    /** Reciprocal of what a point's couplings to its staying neighbours are weighed against; 0 where it has none. */
    private static double balance(double remaining, double couplings) {
        double sum = remaining < couplings * 0.999999 ? couplings : remaining;
        return sum > 0 ? 1 / sum : 0;
    }

    private double leak(Row r, Row under, int i) {
        double sum = r.diagonal()[i] - r.east()[i] - r.east()[i - 1] - r.north()[i] - under.north()[i];
        if (diagonals) {
            sum -= r.northEast()[i] + r.northWest()[i] + under.northEast()[i - 1] + under.northWest()[i + 1];
        }
        return sum;
    }

    private void points(int j, Row r, Row under) {
        double[] d = coarse.row[j].diagonal();
        for (int k = 1; k <= coarse.columns; k++) {
            d[k] += leak(r, under, 2 * k - 1);
        }
    }

    private void alongRow(int j, Row r, Row under) {
        double[] d = coarse.row[j].diagonal();
        double[] e = coarse.row[j].east();
        for (int k = 1; k <= coarse.columns; k++) {
            int i = 2 * k;
            double w = westBelow[k];
            double v = eastBelow[k];
            double g = r.east()[i - 1];
            double h = r.east()[i];
            double l = r.diagonal()[i] > 0 ? leak(r, under, i) : 0;
            d[k] += g * (1 - w) * (1 - w) + h * w * w + l * w * w;
            d[k + 1] += g * v * v + h * (1 - v) * (1 - v) + l * v * v;
            e[k] += g * (1 - w) * v + h * w * (1 - v) - l * w * v;
        }
    }

    private void upright(int j, Row mid, Row below, boolean lower, boolean upper) {
        for (int k = 1; k <= coarse.columns; k++) {
            int i = 2 * k - 1;
            double w = south[k];
            double v = north[k];
            double g = below.north()[i];
            double h = mid.north()[i];
            double l = mid.diagonal()[i] > 0 ? leak(mid, below, i) : 0;
            if (lower) {
                coarse.row[j].diagonal()[k] += g * (1 - w) * (1 - w) + h * w * w + l * w * w;
                coarse.row[j].north()[k] += g * (1 - w) * v + h * w * (1 - v) - l * w * v;
            }
            if (upper) {
                coarse.row[j + 1].diagonal()[k] += g * v * v + h * (1 - v) * (1 - v) + l * v * v;
            }
        }
    }

    /** Middle points: their weights, and the energy of the links inside each coarse cell. */
    private void cells(int j, Row below, Row mid, Row above, boolean lower, boolean upper, Middle middle) {
        double[] w = centre;
        double[] q = energy;
        for (int k = 1; k <= coarse.columns; k++) {
            int i = 2 * k;
            double diagonal = mid.diagonal()[i];
            Arrays.fill(q, 0);
            Arrays.fill(w, 0);
            double ws = westBelow[k];
            double es = eastBelow[k];
            double wn = westAbove[k];
            double en = eastAbove[k];
            double sw = south[k];
            double nw = north[k];
            double se = south[k + 1];
            double ne = north[k + 1];
            if (diagonal > 0) {
                double toSouth = below.north()[i];
                double toNorth = mid.north()[i];
                double toWest = mid.east()[i - 1];
                double toEast = mid.east()[i];
                double a = toSouth * ws + toWest * sw;
                double b = toSouth * es + toEast * se;
                double c = toNorth * wn + toWest * nw;
                double d = toNorth * en + toEast * ne;
                if (diagonals) {
                    a += below.northEast()[i - 1];
                    b += below.northWest()[i + 1];
                    c += mid.northWest()[i];
                    d += mid.northEast()[i];
                }
                double inverse = 1 / diagonal;
                a *= inverse;
                b *= inverse;
                c *= inverse;
                d *= inverse;
                w[0] = a;
                w[1] = b;
                w[2] = c;
                w[3] = d;
                link(q, toSouth, a - ws, b - es, c, d);
                link(q, toNorth, a, b, c - wn, d - en);
                link(q, toWest, a - sw, b, c - nw, d);
                link(q, toEast, a, b - se, c, d - ne);
                link(q, leak(mid, below, i), a, b, c, d);
                if (diagonals) {
                    link(q, below.northEast()[i - 1], a - 1, b, c, d);
                    link(q, below.northWest()[i + 1], a, b - 1, c, d);
                    link(q, mid.northWest()[i], a, b, c - 1, d);
                    link(q, mid.northEast()[i], a, b, c, d - 1);
                }
            }
            if (diagonals) {
                link(q, below.northWest()[i], ws - sw, es, -nw, 0);
                link(q, below.northEast()[i], ws, es - se, 0, -ne);
                link(q, mid.northEast()[i - 1], -sw, 0, wn - nw, en);
                link(q, mid.northWest()[i + 1], 0, -se, wn, en - ne);
            }
            if (lower) {
                addLower(coarse.row[j], k, q);
                if (middle != null) {
                    middle.put(j, k, w[0], w[1], w[2], w[3]);
                }
            }
            if (upper) {
                Row r = coarse.row[j + 1];
                r.diagonal()[k] += q[7];
                r.diagonal()[k + 1] += q[9];
                r.east()[k] -= q[8];
            }
        }
    }

    private static void addLower(Row r, int k, double[] q) {
        r.diagonal()[k] += q[0];
        r.east()[k] -= q[1];
        r.north()[k] -= q[2];
        r.northEast()[k] -= q[3];
        r.diagonal()[k + 1] += q[4];
        r.northWest()[k + 1] -= q[5];
        r.north()[k + 1] -= q[6];
    }

    private static void link(double[] q, double g, double a, double b, double c, double d) {
        double ga = g * a;
        double gb = g * b;
        double gc = g * c;
        q[0] += ga * a;
        q[1] += ga * b;
        q[2] += ga * c;
        q[3] += ga * d;
        q[4] += gb * b;
        q[5] += gb * c;
        q[6] += gb * d;
        q[7] += gc * c;
        q[8] += gc * d;
        q[9] += g * d * d;
    }
}
