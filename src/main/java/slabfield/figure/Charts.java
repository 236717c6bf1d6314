package slabfield.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.field.SystemCurve;
import slabfield.figure.Series.Line;
import slabfield.figure.Series.Sign;

/** Charts of pressures and flows; values come in SI, pressures relative to the room, negative under vacuum. */
public final class Charts {
    private static final String NEGATIVE = "Negative = soil under vacuum relative to the room.";

    private Charts() {}

    /**
     * A reading beside its prediction.
     *
     * @param id of the hole
     * @param predicted [Pa]
     * @param measured [Pa]
     * @param band half-width within which the two count as equal [Pa]
     */
    public record Pair(String id, double predicted, double measured, double band) {}

    /** Readings over predictions, with the line on which both are equal. */
    public static Figure parity(String name, String stage, List<Pair> pairs, MapStyle look) {
        UnitsShown units = look.units();
        double[] x = pairs.stream()
                .mapToDouble(p -> units.pressureFromSi().applyAsDouble(p.predicted()))
                .toArray();
        double[] y = pairs.stream()
                .mapToDouble(p -> units.pressureFromSi().applyAsDouble(p.measured()))
                .toArray();
        double[] band = pairs.stream()
                .mapToDouble(p -> units.pressureFromSi().applyAsDouble(p.band()))
                .toArray();
        double[] all = new double[2 * x.length];
        System.arraycopy(x, 0, all, 0, x.length);
        System.arraycopy(y, 0, all, x.length, y.length);
        Axis both = Axis.around("", true, all);
        Series equal = Series.line(
                "measured = predicted",
                new double[] {both.low(), both.high()},
                new double[] {both.low(), both.high()},
                Line.DASHED);
        Series readings = Series.points(
                        "reading, with the band within which it counts as equal",
                        x,
                        y,
                        Sign.SQUARE,
                        pairs.stream().map(Pair::id).toList())
                .spread(band);
        String symbol = units.pressureSymbol();
        return new Chart(
                name,
                "MEASURED AND PREDICTED",
                "each reading of \"" + stage + "\" over its prediction",
                "Readings of " + pairs.size() + " test holes over their predictions. "
                        + String.join(
                                "; ",
                                pairs.stream()
                                        .map(p -> p.id() + " measured " + units.pressure(p.measured()) + ", predicted "
                                                + units.pressure(p.predicted()) + " " + symbol)
                                        .toList())
                        + ".",
                new Axis("predicted pressure, " + symbol, both.low(), both.high()),
                new Axis("measured pressure, " + symbol, both.low(), both.high()),
                List.of(equal, readings),
                Chart.Columns.NONE,
                List.of(NEGATIVE + " A reading above the line shows less vacuum than predicted."),
                look);
    }

    /** Fan, pipe and slab over the flow; where fan and system cross is where the system works. */
    public static Figure system(String name, SystemCurve curve, MapStyle look) {
        UnitsShown units = look.units();
        Series fanLine = flowLine("fan: " + curve.name(), curve.fan(), units, Line.SOLID);
        Series systemLine = flowLine("slab and pipe together", curve.system(), units, Line.DASHED);
        boolean alone = !curve.slab().isEmpty();
        double q = units.flowFromSi().applyAsDouble(curve.flow()),
                p = units.pressureFromSi().applyAsDouble(curve.rise());
        String at = units.flow(curve.flow()) + " " + units.flowSymbol() + ", " + units.pressure(curve.rise()) + " "
                + units.pressureSymbol();
        Series works = Series.points("where it works", new double[] {q}, new double[] {p}, Sign.DISC, List.of(at));
        return new Chart(
                name,
                "PREDICTED",
                "fan against pipe and slab",
                "Fan and system curves cross at " + at + ".",
                Axis.around("flow, " + units.flowSymbol(), true, fanLine.x()),
                Axis.around("suction, " + units.pressureSymbol(), true, joined(fanLine.y(), new double[] {p})),
                alone
                        ? List.of(fanLine, systemLine, flowLine("slab alone", curve.slab(), units, Line.DOTTED), works)
                        : List.of(fanLine, systemLine, works),
                Chart.Columns.NONE,
                alone ? List.of("The gap between the two lower lines is lost to the pipe.") : List.of(),
                look);
    }

    private static Series flowLine(String name, List<double[]> places, UnitsShown units, Line form) {
        return Series.line(
                name,
                places.stream()
                        .mapToDouble(p -> units.flowFromSi().applyAsDouble(p[0]))
                        .toArray(),
                places.stream()
                        .mapToDouble(p -> units.pressureFromSi().applyAsDouble(p[1]))
                        .toArray(),
                form);
    }

    /**
     * One way to do it.
     *
     * @param name of the option
     * @param price what it takes: room air [m3/s] or fan power [W], not below 0
     * @param vacuum at the weakest place [Pa], above 0 under vacuum
     */
    public record Choice(String name, double price, double vacuum) {}

    /** Which price a frontier has. */
    public enum Price {
        ROOM_AIR,
        POWER
    }

    /** Those choices that no other one beats: nothing else takes as little and holds as much. By rising price. */
    public static List<Choice> frontier(List<Choice> choices) {
        List<Choice> sorted = choices.stream()
                .filter(c -> Double.isFinite(c.price() + c.vacuum()))
                .sorted(Comparator.comparingDouble(Choice::price)
                        .thenComparing(
                                Comparator.comparingDouble(Choice::vacuum).reversed()))
                .toList();
        List<Choice> kept = new ArrayList<>();
        for (Choice c : sorted)
            if (kept.isEmpty() || c.vacuum() > kept.get(kept.size() - 1).vacuum()) kept.add(c);
        return kept;
    }

    /** Vacuum at the weakest place over what it takes, with the line of the choices that nothing beats. */
    public static Figure frontier(String name, List<Choice> choices, Price price, double target, MapStyle look) {
        UnitsShown units = look.units();
        List<Choice> best = frontier(choices),
                rest =
                        choices.stream()
                                .filter(c -> Double.isFinite(c.price() + c.vacuum()) && !best.contains(c))
                                .toList();
        double[] all = prices(choices, price, units), vacuums = vacuums(choices, units);
        double goal = units.pressureFromSi().applyAsDouble(target);
        String what = price == Price.POWER ? "power of the fans, W" : "air drawn from the room, " + units.flowSymbol();
        Axis x = Axis.around(what, true, all),
                y =
                        Axis.around(
                                "vacuum at the weakest place, " + units.pressureSymbol(),
                                true,
                                joined(vacuums, new double[] {goal}));
        Series line = new Series(
                "nothing else holds more for as little",
                prices(best, price, units),
                vacuums(best, units),
                Line.SOLID,
                Sign.DISC,
                new double[0],
                best.stream().map(Choice::name).toList());
        Series others = Series.points(
                "beaten by another",
                prices(rest, price, units),
                vacuums(rest, units),
                Sign.RING,
                rest.stream().map(Choice::name).toList());
        return new Chart(
                name,
                "PREDICTED",
                price == Price.POWER
                        ? "vacuum held against fan power"
                        : "vacuum held against the air drawn from the room",
                "Options that nothing beats: "
                        + String.join(
                                "; ",
                                best.stream()
                                        .map(c -> c.name() + " holds " + units.pressure(c.vacuum()) + " "
                                                + units.pressureSymbol())
                                        .toList())
                        + ".",
                x,
                y,
                rest.isEmpty() ? List.of(target(goal, x), line) : List.of(target(goal, x), line, others),
                Chart.Columns.NONE,
                List.of(),
                look);
    }

    private static double[] prices(List<Choice> choices, Price price, UnitsShown units) {
        return choices.stream()
                .mapToDouble(c ->
                        price == Price.POWER ? c.price() : units.flowFromSi().applyAsDouble(c.price()))
                .toArray();
    }

    private static double[] vacuums(List<Choice> choices, UnitsShown units) {
        return choices.stream()
                .mapToDouble(c -> units.pressureFromSi().applyAsDouble(c.vacuum()))
                .toArray();
    }

    private static Series target(double shown, Axis x) {
        return Series.line("target", new double[] {x.low(), x.high()}, new double[] {shown, shown}, Line.DASH_DOT);
    }

    /**
     * A stretch of the year.
     *
     * @param temperature outdoors, in shown units
     * @param hours in a year
     * @param vacuum held [Pa], NaN where not solved
     */
    public record Season(double temperature, double hours, double vacuum) {}

    /**
     * The vacuum held through the year by outdoor temperature, with the hours that the year has of it.
     *
     * @param degrees symbol of the temperature's unit
     * @param worst vacuum on the worst day and its temperature; empty where that is not known
     */
    public static Figure season(
            String name, List<Season> bins, String degrees, List<Season> worst, double target, MapStyle look) {
        UnitsShown units = look.units();
        List<Season> sorted = bins.stream()
                .sorted(Comparator.comparingDouble(Season::temperature))
                .toList();
        double[] x = sorted.stream().mapToDouble(Season::temperature).toArray();
        double[] y = sorted.stream()
                .mapToDouble(s -> units.pressureFromSi().applyAsDouble(s.vacuum()))
                .toArray();
        double longest = sorted.stream().mapToDouble(Season::hours).max().orElse(1);
        double narrow = Double.MAX_VALUE;
        for (int i = 1; i < x.length; i++) narrow = Math.min(narrow, x[i] - x[i - 1]);
        double[] worstX = worst.stream().mapToDouble(Season::temperature).toArray();
        double[] worstY = worst.stream()
                .mapToDouble(s -> units.pressureFromSi().applyAsDouble(s.vacuum()))
                .toArray();
        double goal = units.pressureFromSi().applyAsDouble(target);
        double half = narrow == Double.MAX_VALUE ? 1 : narrow / 2;
        Axis across = Axis.around("outdoor temperature, " + degrees, false, joined(joined(x, worstX), ends(x, half)));
        Axis up = Axis.around(
                "vacuum at the weakest place, " + units.pressureSymbol(),
                true,
                joined(joined(y, worstY), new double[] {goal}));
        List<Series> series = new ArrayList<>(List.of(
                target(goal, across),
                new Series("calm, exhausts off", x, y, Line.SOLID, Sign.RING, new double[0], List.of())));
        if (worst.size() > 0)
            series.add(Series.points(
                    "worst day: wind and all exhausts",
                    worstX,
                    worstY,
                    Sign.TRIANGLE,
                    worst.stream().map(w -> "worst day").toList()));
        Chart.Columns columns = new Chart.Columns(
                "hours of the year; the longest bar is " + Math.round(longest) + " h",
                x,
                0.8 * 2 * half,
                sorted.stream().mapToDouble(s -> s.hours() / longest).toArray());
        return new Chart(
                name,
                "PREDICTED",
                "vacuum held through the year",
                "The vacuum held in " + x.length
                        + " stretches of the year by outdoor temperature, and on the worst day.",
                across,
                up,
                series,
                columns,
                List.of("Computed from the stack effect at each temperature; a measurement on a cold day is better."),
                look);
    }

    private static double[] ends(double[] x, double half) {
        return x.length == 0 ? x : new double[] {x[0] - half, x[x.length - 1] + half};
    }

    /**
     * A hole beside a line.
     *
     * @param id of the hole
     * @param along where its foot stands on the line [m]
     * @param beside distance from the line [m]
     * @param predicted [Pa], empty where the layer has no pressure
     * @param measured [Pa]
     */
    public record Foot(String id, double along, double beside, OptionalDouble predicted, OptionalDouble measured) {}

    static double[] joined(double[] a, double[] b) {
        double[] all = new double[a.length + b.length];
        System.arraycopy(a, 0, all, 0, a.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }
}
