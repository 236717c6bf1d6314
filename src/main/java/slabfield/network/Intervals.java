package slabfield.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import slabfield.model.Gap;
import slabfield.model.Path;
import slabfield.model.Point;

/** Stretches of a line that are left when gaps are taken out. */
final class Intervals {
    private Intervals() {}

    /**
     * A stretch of a line.
     *
     * @param from distance along the line of its start [m]
     * @param to of its end [m]
     */
    record Stretch(double from, double to) {
        double length() {
            return to - from;
        }
    }

    /** What the gaps leave; a gap without length only cuts. In order along the line. */
    static List<Stretch> left(Path path, List<Gap> gaps) {
        List<Stretch> out = new ArrayList<>();
        double at = 0, length = path.length();
        List<Stretch> cuts = gaps.stream()
                .map(g -> {
                    double middle = path.nearest(g.at());
                    return new Stretch(middle - g.length() / 2, middle + g.length() / 2);
                })
                .sorted(Comparator.comparingDouble(Stretch::from))
                .toList();
        for (Stretch cut : cuts) {
            if (cut.from() > at) out.add(new Stretch(at, cut.from()));
            at = Math.max(at, cut.to());
        }
        if (at < length) out.add(new Stretch(at, length));
        return out;
    }

    /** The stretch as a line of its own points. */
    static List<Point> points(Path path, Stretch stretch) {
        List<Point> out = new ArrayList<>();
        out.add(path.at(stretch.from()));
        double along = 0;
        for (int i = 1; i < path.points().size(); i++) {
            along += path.points().get(i - 1).distanceTo(path.points().get(i));
            if (along > stretch.from() + 1e-9 && along < stretch.to() - 1e-9) out.add(path.points().get(i));
        }
        out.add(path.at(stretch.to()));
        return out;
    }
}
