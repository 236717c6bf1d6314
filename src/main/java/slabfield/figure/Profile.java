package slabfield.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.figure.Series.Line;
import slabfield.figure.Series.Sign;
import slabfield.model.Point;
import slabfield.model.TestHole;

/**
 * The pressure along a straight line over the slab, and the test holes near it at the feet of their perpendiculars.
 *
 * @param from where the line begins [m]
 * @param to where it ends [m]
 */
public record Profile(Point from, Point to) {
    private static final int PLACES = 400;

    public Profile {
        if (!(from.distanceTo(to) > 0))
            throw new IllegalArgumentException("a profile needs two places apart from each other");
    }

    public double length() {
        return from.distanceTo(to);
    }

    /** The place at a distance along the line. */
    public Point at(double distance) {
        double t = distance / length();
        return new Point(from.x() + t * (to.x() - from.x()), from.y() + t * (to.y() - from.y()));
    }

    /** Holes no further from the line than a reach, by their order along it. */
    public List<Charts.Foot> feet(Result.Solved solved, double reach) {
        double length = length(), ux = (to.x() - from.x()) / length, uy = (to.y() - from.y()) / length;
        List<Charts.Foot> out = new ArrayList<>();
        for (TestHole hole : solved.scenario().testHoles()) {
            double dx = hole.at().x() - from.x(), dy = hole.at().y() - from.y();
            double along = dx * ux + dy * uy, beside = Math.abs(dx * uy - dy * ux);
            if (along < 0 || along > length || beside > reach) continue;
            OptionalDouble predicted =
                    solved.hole(hole.id()).map(Result.Hole::fanOn).orElse(OptionalDouble.empty());
            out.add(new Charts.Foot(hole.id(), along, beside, predicted, Plan.measured(solved.scenario(), hole.id())));
        }
        out.sort(Comparator.comparingDouble(Charts.Foot::along));
        return out;
    }

    /**
     * The chart.
     *
     * @param reach how far a hole may stand from the line [m]
     */
    public Figure figure(Result.Solved solved, double reach, MapStyle look) {
        return chart(solved, reach, look);
    }

    /** The chart in a box of a window, without title and notes. */
    public void drawPanel(Canvas canvas, Box box, Result.Solved solved, double reach, MapStyle look) {
        chart(solved, reach, look).drawPanel(canvas, box);
    }

    private Chart chart(Result.Solved solved, double reach, MapStyle look) {
        UnitsShown units = look.units();
        PressureField field = solved.field();
        double[] x = new double[PLACES + 1], y = new double[PLACES + 1];
        for (int i = 0; i <= PLACES; i++) {
            double along = length() * i / PLACES;
            Point p = at(along);
            x[i] = units.lengthFromSi().applyAsDouble(along);
            y[i] = units.pressureFromSi().applyAsDouble(HeatMap.value(field, p.x(), p.y()));
        }
        List<Charts.Foot> feet = feet(solved, reach);
        double goal = units.pressureFromSi().applyAsDouble(-solved.coverage().target());
        Axis across = new Axis(
                "along the line, " + units.lengthSymbol(),
                0,
                units.lengthFromSi().applyAsDouble(length()));
        Series target =
                Series.line("target", new double[] {0, across.high()}, new double[] {goal, goal}, Line.DASH_DOT);
        Series predicted = holes("predicted at a hole", feet, Charts.Foot::predicted, Sign.RING, units, true);
        Series measured = holes("measured at a hole", feet, Charts.Foot::measured, Sign.FULL_SQUARE, units, false);
        Axis up = Axis.around(
                "pressure, " + units.pressureSymbol(),
                true,
                Charts.joined(Charts.joined(y, new double[] {goal}), Charts.joined(predicted.y(), measured.y())));
        boolean any = feet.stream().anyMatch(f -> f.measured().isPresent());
        List<Series> series =
                new ArrayList<>(List.of(target, Series.line("predicted on the line", x, y, Line.SOLID), predicted));
        if (any) series.add(measured);
        return new Chart(
                solved.scenario().name(),
                any ? "PREDICTED, HOLES MEASURED" : "PREDICTED",
                "pressure along a line from " + place(from, units) + " to " + place(to, units),
                "Pressure along a straight line; the holes nearest to it: "
                        + String.join(", ", feet.stream().map(Charts.Foot::id).toList()) + ".",
                across,
                up,
                series,
                Chart.Columns.NONE,
                List.of("Negative = soil under vacuum relative to the room. Holes up to " + units.length(reach) + " "
                        + units.lengthSymbol()
                        + " beside the line stand at the foot of their perpendicular. A gap in the line is a"
                        + " barrier or slab without layer."),
                look);
    }

    private static String place(Point p, UnitsShown units) {
        return "(" + units.place(p.x()) + ", " + units.place(p.y()) + ") " + units.lengthSymbol();
    }

    private interface Value {
        OptionalDouble of(Charts.Foot foot);
    }

    private static Series holes(
            String name, List<Charts.Foot> feet, Value value, Sign sign, UnitsShown units, boolean labelled) {
        List<Charts.Foot> known =
                feet.stream().filter(f -> value.of(f).isPresent()).toList();
        return Series.points(
                name,
                known.stream()
                        .mapToDouble(f -> units.lengthFromSi().applyAsDouble(f.along()))
                        .toArray(),
                known.stream()
                        .mapToDouble(f ->
                                units.pressureFromSi().applyAsDouble(value.of(f).getAsDouble()))
                        .toArray(),
                sign,
                labelled ? known.stream().map(Charts.Foot::id).toList() : List.of());
    }
}
