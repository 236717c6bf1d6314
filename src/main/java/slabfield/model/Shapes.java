package slabfield.model;

import java.util.List;
import org.locationtech.jts.geom.*;
import org.locationtech.jts.operation.buffer.*;

public final class Shapes {
    private static final GeometryFactory F = new GeometryFactory();
    private Shapes() {}
    public static Polygon polygon(List<slabfield.model.Point> pts) {
        Coordinate[] c = new Coordinate[pts.size() + 1];
        for (int i = 0; i < pts.size(); i++) c[i] = new Coordinate(pts.get(i).x(), pts.get(i).y());
        c[pts.size()] = new Coordinate(c[0]);
        return F.createPolygon(c);
    }
    public static Geometry place(slabfield.model.Point p) { return F.createPoint(new Coordinate(p.x(), p.y())); }
    public static Geometry slabs(Scenario s) {
        Geometry g = null;
        for (Slab slab : s.slabs()) {
            Geometry q = polygon(slab.outline());
            for (var h : slab.holes()) q = q.difference(polygon(h));
            g = g == null ? q : g.union(q);
        }
        return g;
    }
    private static LineString line(List<slabfield.model.Point> pts) {
        return F.createLineString(pts.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
    }
    public static Geometry strip(Barrier b) {
        Geometry g = buffer(line(b.path().points()), b.width() / 2);
        for (Gap gap : b.gaps()) {
            double m = b.path().nearest(gap.at());
            g = g.difference(buffer(line(List.of(b.path().at(m - gap.length() / 2), b.path().at(m + gap.length() / 2))), b.width() / 2 * 1.01));
        }
        return g;
    }
    private static Geometry buffer(LineString l, double d) {
        return BufferOp.bufferOp(l, d, new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 5));
    }
    public static Geometry disc(slabfield.model.Point p, double r) { return place(p).buffer(r, 32); }
}
