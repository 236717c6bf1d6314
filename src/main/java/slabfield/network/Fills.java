package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import slabfield.model.Barrier;
import slabfield.model.Fill;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Zone;

/** Which fill lies where: the base, over it the zones, over these the barriers that let some air pass. */
final class Fills {
    /** Strips into which a link is cut where fills differ, besides those that end at the edges of fills. */
    private static final int STRIPS = 4;

    private final Fill base;
    private final List<Fill> fills = new ArrayList<>();
    private final List<Region> regions = new ArrayList<>();
    private final List<double[][]> boxes = new ArrayList<>();

    Fills(Scenario scenario) {
        base = scenario.layer().fill();
        for (Zone z : scenario.layer().zones()) add(Shapes.area(z.outline()), z.fill());
        for (Barrier b : scenario.barriers())
            if (b.permeability() > 0) add(Shapes.strip(b), Fill.of(base.thickness(), b.permeability(), 0));
    }

    private void add(Geometry g, Fill fill) {
        if (g.isEmpty()) return;
        fills.add(fill);
        regions.add(new Region(g));
        var e = g.getEnvelopeInternal();
        boxes.add(new double[][] {{e.getMinX(), e.getMaxX()}, {e.getMinY(), e.getMaxY()}});
    }

    Fill at(double x, double y) {
        for (int k = fills.size() - 1; k >= 0; k--) {
            double[][] box = boxes.get(k);
            if (x < box[0][0] || x > box[0][1] || y < box[1][0] || y > box[1][1]) continue;
            if (regions.get(k).contains(x, y)) return fills.get(k);
        }
        return base;
    }

    /**
     * Cuts a link from cell to cell into strips side by side, such that along each the fills follow one another evenly: the
     * edges of fills that pass through it are edges of strips, so that its conductance goes evenly with the place of any.
     *
     * @param from start along x or y [m]
     * @param to end along it [m]
     * @param middle of the link, across [m]
     * @param side how broad it is [m]
     * @return edges of the strips across, from one side to the other, counted from the middle [m]
     */
    double[] edges(double from, double to, double middle, double side, boolean alongX) {
        if (fills.isEmpty()) return new double[] {-side / 2, side / 2};
        int main = alongX ? 0 : 1;
        double low = middle - side / 2, high = middle + side / 2;
        double[] all = new double[STRIPS + 1];
        for (int k = 0; k <= STRIPS; k++) all[k] = ((double) k / STRIPS - 0.5) * side;
        for (int k = 0; k < fills.size(); k++) {
            double[][] box = boxes.get(k);
            if (box[main][1] <= from || box[main][0] >= to || box[1 - main][1] <= low || box[1 - main][0] >= high)
                continue;
            double[] more = regions.get(k).ends(from, to, low, high, alongX);
            int n = all.length;
            all = Arrays.copyOf(all, n + more.length);
            for (int e = 0; e < more.length; e++) all[n + e] = more[e] - middle;
        }
        Arrays.sort(all);
        return all;
    }

    /** Resistance per length of face of the stretch from a place on, along x or y [Pa s m/m3]. */
    double resistance(double x, double y, boolean alongX, double length, double viscosity) {
        if (fills.isEmpty()) return length * viscosity / (base.permeability() * base.thickness());
        double from = alongX ? x : y, to = from + length, across = alongX ? y : x;
        double[] cuts = {from, to};
        for (int k = 0; k < fills.size(); k++) {
            double[][] box = boxes.get(k);
            int main = alongX ? 0 : 1;
            if (across < box[1 - main][0] || across > box[1 - main][1]) continue;
            if (to < box[main][0] || from > box[main][1]) continue;
            double[] all =
                    alongX ? regions.get(k).alongY(across) : regions.get(k).alongX(across);
            for (double v : all)
                if (v > from && v < to) {
                    cuts = Arrays.copyOf(cuts, cuts.length + 1);
                    cuts[cuts.length - 1] = v;
                }
        }
        Arrays.sort(cuts);
        double sum = 0;
        for (int i = 1; i < cuts.length; i++) {
            double middle = (cuts[i] + cuts[i - 1]) / 2;
            Fill f = alongX ? at(middle, across) : at(across, middle);
            sum += (cuts[i] - cuts[i - 1]) * viscosity / (f.permeability() * f.thickness());
        }
        return sum;
    }
}
