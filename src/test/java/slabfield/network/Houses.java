package slabfield.network;

import java.util.List;
import java.util.Optional;
import slabfield.model.*;

/** Simple houses for tests, in metres. */
final class Houses {
    private Houses() {}

    static Slab rectangle(String id, double x0, double y0, double x1, double y1) {
        return new Slab(
                id,
                List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1)),
                List.of(),
                0.1,
                true);
    }

    static Slab ring(String id, double radius, int corners) {
        // corners chosen so that the polygon has the disc's area
        double r = radius * Math.sqrt(2 * Math.PI / corners / Math.sin(2 * Math.PI / corners));
        List<Point> points = new java.util.ArrayList<>();
        for (int k = 0; k < corners; k++) {
            double a = 2 * Math.PI * (k + 0.5) / corners;
            points.add(new Point(r * Math.cos(a), r * Math.sin(a)));
        }
        return new Slab(id, points, List.of(), 0.1, true);
    }

    static Scenario house(List<Slab> slabs, Fill fill, double leakance, List<SuctionPoint> suction, double cell) {
        return new Scenario(
                "house", "", "", Display.SI, slabs, new Layer(fill, List.of()), List.of(), List.of(), List.of(),
                List.of(), leakance, 0, Air.STANDARD, suction, List.of(), List.of(), Target.COMMON_PRACTICE, cell);
    }

    static SuctionPoint pressure(String id, double x, double y, double radius, double pressure) {
        return new SuctionPoint(
                id, new Point(x, y), Optional.empty(), new SuctionPoint.Pit(radius), new Source.Pressure(pressure), false);
    }

    static SuctionPoint flow(String id, double x, double y, double radius, double flow) {
        return new SuctionPoint(
                id, new Point(x, y), Optional.empty(), new SuctionPoint.Pit(radius), new Source.Flow(flow), false);
    }
}
