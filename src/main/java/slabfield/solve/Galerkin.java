package slabfield.solve;

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
    /** Coarse elements that the rows at hand reach. */
    private int first;

    private int end;
    /** Takes what belongs to another worker's rows. */
    private final Row spare;

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
        spare = new Row(length);
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
        reach(below, below, below);
        between(below, under, westBelow, eastBelow);
        for (int j = start; j < to; j++) {
            Row mid = fine.row(2 * j);
            Row above = fine.row(2 * j + 1);
            boolean own = j >= from;
            reach(below, mid, above);
            if (own) {
                points(j, below, under);
                alongRow(j, below, under);
            }
            beside(mid, below);
            between(above, mid, westAbove, eastAbove);
            upright(j, mid, below, own, j + 1 < to);
            cells(j, below, mid, own, j + 1 < to, middle);
            if (own && weights != null) {
                keep(weights, j);
            }
            swap();
            under = mid;
            below = above;
        }
    }

    private void reach(Row a, Row b, Row c) {
        int low = Integer.MAX_VALUE;
        int high = 0;
        for (Row row : new Row[] {a, b, c}) {
            if (row.first < row.end) {
                low = Math.min(low, row.first);
                high = Math.max(high, row.end);
            }
        }
        // An element to spare on each side, as the cells there share a side with those in use.
        first = high == 0 ? 1 : Math.max(1, low / 2 - 1);
        end = high == 0 ? 1 : Math.min(coarse.columns, high / 2 + 2) + 1;
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
        int s = weights.strips.strip(j);
        int at = weights.strips.at(j);
        for (int k = first; k < end; k++) {
            weights.fromWest[s][at + k] = (float) westBelow[k];
            weights.fromEast[s][at + k] = (float) eastBelow[k];
            weights.fromSouth[s][at + k] = (float) south[k];
            weights.fromNorth[s][at + k] = (float) north[k];
        }
    }

    /** Weights of the points between two staying ones in a row that stays. */
    private void between(Row r, Row under, double[] west, double[] east) {
        for (int k = first; k < end; k++) {
            int i = 2 * k;
            double toWest = r.east[i - 1];
            double toEast = r.east[i];
            if (diagonals) {
                toWest += r.northWest[i] + under.northEast[i - 1];
                toEast += r.northEast[i] + under.northWest[i + 1];
            }
            double sum = balance(r.diagonal[i] - r.north[i] - under.north[i], toWest + toEast);
            west[k] = r.diagonal[i - 1] > 0 ? (float) (toWest * sum) : 0;
            east[k] = r.diagonal[i + 1] > 0 ? (float) (toEast * sum) : 0;
        }
    }

    /** Weights of the points below and above staying ones, in a row that goes. */
    private void beside(Row mid, Row below) {
        for (int k = first; k < end; k++) {
            int i = 2 * k - 1;
            double toSouth = below.north[i];
            double toNorth = mid.north[i];
            if (diagonals) {
                toSouth += below.northEast[i - 1] + below.northWest[i + 1];
                toNorth += mid.northEast[i] + mid.northWest[i];
            }
            double sum = balance(mid.diagonal[i] - mid.east[i] - mid.east[i - 1], toSouth + toNorth);
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
        double sum = r.diagonal[i] - r.east[i] - r.east[i - 1] - r.north[i] - under.north[i];
        if (diagonals) {
            sum -= r.northEast[i] + r.northWest[i] + under.northEast[i - 1] + under.northWest[i + 1];
        }
        return sum;
    }

    private void points(int j, Row r, Row under) {
        double[] d = coarse.row[j].diagonal;
        for (int k = first; k < end; k++) {
            d[k] += leak(r, under, 2 * k - 1);
        }
    }

    private void alongRow(int j, Row r, Row under) {
        double[] d = coarse.row[j].diagonal;
        double[] e = coarse.row[j].east;
        for (int k = first; k < end; k++) {
            int i = 2 * k;
            double w = westBelow[k];
            double v = eastBelow[k];
            double g = r.east[i - 1];
            double h = r.east[i];
            double l = r.diagonal[i] > 0 ? leak(r, under, i) : 0;
            d[k] += g * (1 - w) * (1 - w) + h * w * w + l * w * w;
            d[k + 1] += g * v * v + h * (1 - v) * (1 - v) + l * v * v;
            e[k] += g * (1 - w) * v + h * w * (1 - v) - l * w * v;
        }
    }

    private void upright(int j, Row mid, Row below, boolean lower, boolean upper) {
        for (int k = first; k < end; k++) {
            int i = 2 * k - 1;
            double w = south[k];
            double v = north[k];
            double g = below.north[i];
            double h = mid.north[i];
            double l = mid.diagonal[i] > 0 ? leak(mid, below, i) : 0;
            if (lower) {
                coarse.row[j].diagonal[k] += g * (1 - w) * (1 - w) + h * w * w + l * w * w;
                coarse.row[j].north[k] += g * (1 - w) * v + h * w * (1 - v) - l * w * v;
            }
            if (upper) {
                coarse.row[j + 1].diagonal[k] += g * v * v + h * (1 - v) * (1 - v) + l * v * v;
            }
        }
    }

    /**
     * Middle points, and the energy of the links inside each coarse cell. A middle point takes
     * {@code w = sum of g phi / d}, phi being its neighbours' weights, so its links' energy is
     * {@code sum of g phi phi' - d w w'}.
     */
    private void cells(int j, Row below, Row mid, boolean lower, boolean upper, Middle middle) {
        Row to = lower ? coarse.row[j] : spare;
        Row next = upper ? coarse.row[j + 1] : spare;
        for (int k = first; k < end; k++) {
            int i = 2 * k;
            double d = mid.diagonal[i];
            if (diagonals) {
                between(k, below, mid, to, next);
            }
            if (!(d > 0)) {
                if (middle != null && lower) {
                    middle.put(j, k, 0, 0, 0, 0);
                }
                continue;
            }
            double inverse = 1 / d;
            double toSouth = below.north[i];
            double toNorth = mid.north[i];
            double toWest = mid.east[i - 1];
            double toEast = mid.east[i];
            double sws = toSouth * westBelow[k];
            double ses = toSouth * eastBelow[k];
            double nws = toNorth * westAbove[k];
            double nes = toNorth * eastAbove[k];
            double wss = toWest * south[k];
            double wns = toWest * north[k];
            double ess = toEast * south[k + 1];
            double ens = toEast * north[k + 1];
            double a = sws + wss;
            double b = ses + ess;
            double c = nws + wns;
            double e = nes + ens;
            double aa = sws * westBelow[k] + wss * south[k];
            double bb = ses * eastBelow[k] + ess * south[k + 1];
            double cc = nws * westAbove[k] + wns * north[k];
            double ee = nes * eastAbove[k] + ens * north[k + 1];
            if (diagonals) {
                double sw = below.northEast[i - 1];
                double se = below.northWest[i + 1];
                double nw = mid.northWest[i];
                double ne = mid.northEast[i];
                a += sw;
                b += se;
                c += nw;
                e += ne;
                aa += sw;
                bb += se;
                cc += nw;
                ee += ne;
            }
            double wa = a * inverse;
            double wb = b * inverse;
            double wc = c * inverse;
            double we = e * inverse;
            to.diagonal[k] += aa - a * wa;
            to.diagonal[k + 1] += bb - b * wb;
            to.east[k] += a * wb - sws * eastBelow[k];
            to.north[k] += a * wc - wss * north[k];
            to.north[k + 1] += b * we - ess * north[k + 1];
            to.northEast[k] += a * we;
            to.northWest[k + 1] += b * wc;
            next.diagonal[k] += cc - c * wc;
            next.diagonal[k + 1] += ee - e * we;
            next.east[k] += c * we - nws * eastAbove[k];
            if (middle != null && lower) {
                middle.put(j, k, wa, wb, wc, we);
            }
        }
    }

    /** Energy of the four links of a coarse cell that join the middles of its sides. */
    private void between(int k, Row below, Row mid, Row to, Row next) {
        int i = 2 * k;
        double ws = westBelow[k];
        double es = eastBelow[k];
        double wn = westAbove[k];
        double en = eastAbove[k];
        double sw = south[k];
        double nw = north[k];
        double se = south[k + 1];
        double ne = north[k + 1];
        double southWest = below.northWest[i];
        double southEast = below.northEast[i];
        double northWest = mid.northEast[i - 1];
        double northEast = mid.northWest[i + 1];
        double p = ws - sw;
        double q = es - se;
        double r = wn - nw;
        double t = en - ne;
        to.diagonal[k] += southWest * p * p + southEast * ws * ws + northWest * sw * sw;
        to.diagonal[k + 1] += southWest * es * es + southEast * q * q + northEast * se * se;
        next.diagonal[k] += southWest * nw * nw + northWest * r * r + northEast * wn * wn;
        next.diagonal[k + 1] += southEast * ne * ne + northWest * en * en + northEast * t * t;
        to.east[k] -= southWest * p * es + southEast * ws * q;
        next.east[k] -= northWest * r * en + northEast * wn * t;
        to.north[k] += southWest * p * nw + northWest * sw * r;
        to.north[k + 1] += southEast * q * ne + northEast * se * t;
        to.northEast[k] += southEast * ws * ne + northWest * sw * en;
        to.northWest[k + 1] += southWest * es * nw + northEast * se * wn;
    }
}
