package slabfield.desktop.viewmodel;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import slabfield.desktop.drawing.Typed;
import slabfield.model.NominalPipe;
import slabfield.model.Scenario;
import slabfield.model.Source.FanCurve;
import slabfield.model.Source.Pipe;
import slabfield.model.Source.Turns;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Properties of a fan and of the pipe to it: a row for each point of the curve, and for each number of a stretch. */
final class DuctProperties {
    private static final int DIGITS = 4;
    private static final int MOST = 30;

    private final String of;
    private final Units units;
    private final List<Property> list = new ArrayList<>();

    /** @param of what stands in front of each label, such as "Riser ", or nothing */
    DuctProperties(String of, Units units) {
        this.of = of;
        this.units = units;
    }

    List<Property> list() {
        return list;
    }

    /** Rows for the points of a fan's curve, and one for another point. */
    void fan(FanCurve curve, BiFunction<Scenario, UnaryOperator<FanCurve>, Scenario> put) {
        String help = "Flow at pressure rise, such as \"60 cfm at 1.2 inH2O\"; numbers alone have the units shown. ";
        for (int k = 0; k < curve.flows().size(); k++) {
            int at = k;
            text(
                    "Fan point " + (k + 1),
                    help + "Left empty, the point is taken away.",
                    point(curve, k),
                    (s, typed) -> put.apply(
                            s,
                            c -> typed.isBlank()
                                    ? without(c, at)
                                    : added(without(c.flows(), at), without(c.rises(), at), typed)));
        }
        text(
                "One point more",
                help + "It finds its place by its flow.",
                "",
                (s, typed) -> put.apply(s, c -> added(c.flows(), c.rises(), typed)));
    }

    private String point(FanCurve curve, int k) {
        return Quantity.format(curve.flows().get(k), units.flow().get(), DIGITS) + " at "
                + Quantity.format(curve.rises().get(k), units.pressure().get(), DIGITS)
                        .replace('-', '\u2212');
    }

    private static FanCurve without(FanCurve curve, int at) {
        return new FanCurve(without(curve.flows(), at), without(curve.rises(), at));
    }

    private static List<Double> without(List<Double> numbers, int at) {
        List<Double> out = new ArrayList<>(numbers);
        out.remove(at);
        return out;
    }

    private FanCurve added(List<Double> flows, List<Double> rises, String typed) {
        String[] parts = typed.split("\\bat\\b|@", -1);
        if (parts.length != 2)
            throw new IllegalArgumentException(
                    "\"" + typed + "\" is no point of a fan; write flow at rise, such as \"60 cfm at 1.2 inH2O\".");
        double flow = SuctionProperties.quantity(
                parts[0], Dimension.FLOW, units.flow().get().symbol());
        double rise = SuctionProperties.quantity(
                parts[1], Dimension.PRESSURE, units.pressure().get().symbol());
        List<Double> allFlows = new ArrayList<>(flows), allRises = new ArrayList<>(rises);
        int at = (int) flows.stream().filter(f -> f < flow).count();
        allFlows.add(at, flow);
        allRises.add(at, rise);
        return new FanCurve(allFlows, allRises);
    }

    /** How many stretches of pipe, and rows for each. */
    void run(List<Pipe> run, BiFunction<Scenario, UnaryOperator<List<Pipe>>, Scenario> put) {
        text(
                "Pipe stretches",
                "Stretches of pipe one after the other; each has a diameter of its own.",
                String.valueOf(run.size()),
                (s, typed) -> put.apply(s, r -> resized(r, whole(typed))));
        for (int k = 0; k < run.size(); k++) {
            int at = k;
            stretch(
                    run.size() == 1 ? "Pipe " : "Pipe " + (k + 1) + " ",
                    run.get(k),
                    (s, change) -> put.apply(s, r -> {
                        List<Pipe> out = new ArrayList<>(r);
                        out.set(at, change.apply(r.get(at)));
                        return out;
                    }));
        }
    }

    /** More stretches go on with the last diameter and no length yet; fewer leave the last ones out. */
    private static List<Pipe> resized(List<Pipe> run, int wanted) {
        if (wanted > MOST) throw new IllegalArgumentException("A run has at most " + MOST + " stretches.");
        if (wanted <= run.size()) return run.subList(0, wanted);
        double diameter = run.isEmpty()
                ? NominalPipe.FOUR_INCH.insideDiameter()
                : run.get(run.size() - 1).diameter();
        List<Pipe> out = new ArrayList<>(run);
        out.addAll(Collections.nCopies(wanted - run.size(), new Pipe(diameter, 0, 0, 0, Pipe.USUAL_ROUGHNESS)));
        return out;
    }

    private void stretch(String pipe, Pipe p, BiFunction<Scenario, UnaryOperator<Pipe>, Scenario> put) {
        Unit small = units.length().get() == Unit.FOOT ? Unit.INCH : Unit.MILLIMETRE;
        text(
                pipe + "diameter",
                "Inside, not the nominal size. A number alone is in " + small.symbol() + ".",
                Quantity.format(p.diameter(), small, DIGITS),
                (s, t) -> put.apply(s, o -> o.withDiameter(Typed.length(t, small))));
        length(pipe + "length", "Straight lengths together.", p.length(), put, Pipe::withLength);
        length(
                pipe + "rise",
                "How much higher its end is than its beginning; below 0 where it falls.",
                p.rise(),
                put,
                Pipe::withRise);
        count(pipe + "bends 90\u00b0", "Each stands for 30 diameters of pipe.", p.ells(), put, Pipe::withElls);
        turns(
                pipe + "bends 45\u00b0",
                "Each stands for 16 diameters of pipe.",
                p.turns().halfElls(),
                put,
                (t, n) -> new Turns(n, t.teesThrough(), t.teesByBranch()));
        turns(
                pipe + "tees run",
                "Tees run straight through; each stands for 20 diameters of pipe.",
                p.turns().teesThrough(),
                put,
                (t, n) -> new Turns(t.halfElls(), n, t.teesByBranch()));
        turns(
                pipe + "tees turned",
                "Tees entered by their branch; each stands for 60 diameters of pipe.",
                p.turns().teesByBranch(),
                put,
                (t, n) -> new Turns(t.halfElls(), t.teesThrough(), n));
        text(
                pipe + "fittings",
                "Further losses, entrance and exit among them, as a sum of coefficients on the velocity head.",
                plain(p.fittings()),
                (s, t) -> put.apply(s, o -> o.withFittings(number(t))));
        text(
                pipe + "valve",
                "Coefficient of a balance valve on the velocity head; 0 for none.",
                plain(p.valve()),
                (s, t) -> put.apply(s, o -> o.withValve(number(t))));
    }

    private void length(
            String label,
            String help,
            double value,
            BiFunction<Scenario, UnaryOperator<Pipe>, Scenario> put,
            BiFunction<Pipe, Double, Pipe> with) {
        text(
                label,
                help + " A number alone has the unit shown.",
                units.length(value),
                (s, t) -> put.apply(
                        s, o -> with.apply(o, Typed.length(t, units.length().get()))));
    }

    private void count(
            String label,
            String help,
            int value,
            BiFunction<Scenario, UnaryOperator<Pipe>, Scenario> put,
            BiFunction<Pipe, Integer, Pipe> with) {
        text(label, help, String.valueOf(value), (s, t) -> put.apply(s, o -> with.apply(o, whole(t))));
    }

    private void turns(
            String label,
            String help,
            int value,
            BiFunction<Scenario, UnaryOperator<Pipe>, Scenario> put,
            BiFunction<Turns, Integer, Turns> with) {
        count(label, help, value, put, (o, n) -> o.withTurns(with.apply(o.turns(), n)));
    }

    private void text(String label, String help, String value, Property.Change change) {
        String whole =
                of + (of.isEmpty() ? label : label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1));
        list.add(new Property(whole, help, List.of(), value, change));
    }

    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    private static double number(String text) {
        if (text.strip().matches("\\d+([.,]\\d+)?"))
            return Double.parseDouble(text.strip().replace(',', '.'));
        throw new IllegalArgumentException("\"" + text.strip() + "\" is not a number from 0 up.");
    }

    private static int whole(String text) {
        if (text.strip().matches("\\d{1,4}")) return Integer.parseInt(text.strip());
        throw new IllegalArgumentException("\"" + text.strip() + "\" is not a whole number from 0 up.");
    }
}
