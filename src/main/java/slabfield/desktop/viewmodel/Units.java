package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.ObjectBinding;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.figure.UnitsShown;
import slabfield.model.Display;
import slabfield.model.Point;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** The units in which numbers are shown. Switching one changes text alone, never a stored value. */
public final class Units {
    /** Units of pressure to choose from. */
    public static final List<Unit> PRESSURES = List.of(Unit.PASCAL, Unit.INCH_OF_WATER);

    /** Units of flow to choose from. */
    public static final List<Unit> FLOWS = List.of(Unit.CFM, Unit.LITRE_PER_SECOND, Unit.CUBIC_METRE_PER_HOUR);

    /** Units of length to choose from. */
    public static final List<Unit> LENGTHS = List.of(Unit.FOOT, Unit.METRE);

    private final ObjectProperty<Unit> pressure = new SimpleObjectProperty<>(Unit.PASCAL);
    private final ObjectProperty<Unit> flow = new SimpleObjectProperty<>(Unit.LITRE_PER_SECOND);
    private final ObjectProperty<Unit> length = new SimpleObjectProperty<>(Unit.METRE);
    private final ObjectBinding<UnitsShown> shown = Bindings.createObjectBinding(this::current, pressure, flow, length);

    public ObjectProperty<Unit> pressure() {
        return pressure;
    }

    public ObjectProperty<Unit> flow() {
        return flow;
    }

    public ObjectProperty<Unit> length() {
        return length;
    }

    /** All three, as figures need them. */
    public ObjectBinding<UnitsShown> shown() {
        return shown;
    }

    /** Takes over what a scenario asks for; a unit that is not known leaves the one there is. */
    public void take(Display display) {
        Unit.find(display.pressure(), Dimension.PRESSURE).ifPresent(pressure::set);
        Unit.find(display.flow(), Dimension.FLOW).ifPresent(flow::set);
        Unit.find(display.length(), Dimension.LENGTH).ifPresent(length::set);
    }

    /** The units shown, as a scenario keeps them. */
    Display display() {
        return new Display(
                pressure.get().symbol(), flow.get().symbol(), length.get().symbol());
    }

    private UnitsShown current() {
        Unit p = pressure.get(), q = flow.get(), x = length.get();
        return new UnitsShown(p.symbol(), p::fromSi, q.symbol(), q::fromSi, x.symbol(), x::fromSi);
    }

    /** A pressure with its unit, such as "−3.2 Pa". */
    public String pressure(double si) {
        return Double.isNaN(si)
                ? "no pressure"
                : shown.get().pressure(si) + " " + pressure.get().symbol();
    }

    /** A number of the unit of pressure, without it. */
    public String pressureNumber(double si) {
        return shown.get().pressure(si);
    }

    /** A pressure in pascals and in inches of water, whatever is chosen, such as "−3.2 Pa = −0.013 inH2O". */
    public String bothPressures(double si) {
        UnitsShown water = new UnitsShown("", Unit.INCH_OF_WATER::fromSi, "", q -> q, "", x -> x);
        return UnitsShown.SI().pressure(si) + " Pa = " + water.pressure(si) + " " + Unit.INCH_OF_WATER.symbol();
    }

    /** A given pressure, such as a target, with no more digits than it has. */
    public String exactPressure(double si) {
        return shown.get().round(si) + " " + pressure.get().symbol();
    }

    /** A flow with its unit. */
    public String flow(double si) {
        return shown.get().flow(si) + " " + flow.get().symbol();
    }

    /** A length with its unit; feet are written with inches. */
    public String length(double si) {
        return length.get() == Unit.FOOT ? Quantity.feetInches(si) : Quantity.formatDecimals(si, length.get(), 2);
    }

    /** A place on the plan. */
    public String place(Point at) {
        return "x " + length(at.x()) + ", y " + length(at.y());
    }

    /** A place that is known no better than to a cell of the grid: to the inch or the decimetre. */
    public String about(Point at) {
        return "x " + aboutLength(at.x()) + ", y " + aboutLength(at.y());
    }

    /** A length that is known no better than to a cell of the grid: to the inch or the decimetre. */
    public String aboutLength(double si) {
        double step = length.get() == Unit.FOOT || length.get() == Unit.INCH ? Unit.INCH.toSi(1) : 0.1;
        return length(step * Math.rint(si / step));
    }

    /** An area in square feet or square metres, as the unit of length is. */
    public String area(double si) {
        boolean feet = length.get() == Unit.FOOT || length.get() == Unit.INCH;
        return Quantity.format(si, feet ? Unit.SQUARE_FOOT : Unit.SQUARE_METRE, 3);
    }

    /** Unit of speed that goes with the unit of length. */
    public Unit speedUnit() {
        return length.get() == Unit.FOOT ? Unit.FOOT_PER_MINUTE : Unit.METRE_PER_SECOND;
    }

    /** A number of the unit of speed, without it: to ten feet a minute or a tenth of a metre a second. */
    public String speedNumber(double si) {
        if (!Double.isFinite(si)) return "none";
        double shown = speedUnit().fromSi(si);
        return speedUnit() == Unit.FOOT_PER_MINUTE
                ? String.valueOf(10 * Math.round(shown / 10))
                : String.format(Locale.ROOT, "%.1f", shown);
    }

    /** A temperature to the degree, in Fahrenheit or Celsius as the unit of length is. */
    public String temperature(double si) {
        return Quantity.formatDecimals(si, length.get() == Unit.FOOT ? Unit.FAHRENHEIT : Unit.CELSIUS, 0)
                .replace('-', '\u2212');
    }

    /** Lines of the grid that drawing keeps to: the finest that can be told apart [m]. */
    public double grid(double apart) {
        boolean feet = length.get() == Unit.FOOT || length.get() == Unit.INCH;
        double[] steps = feet
                ? new double[] {
                    Unit.INCH.toSi(0.5), Unit.INCH.toSi(1), Unit.INCH.toSi(3), Unit.INCH.toSi(6), Unit.FOOT.toSi(1)
                }
                : new double[] {0.01, 0.05, 0.1, 0.25, 0.5, 1};
        for (double step : steps) if (step >= 0.4 * apart) return step;
        return steps[steps.length - 1];
    }

    /** Distance between two neighbouring places at which something that is moved can stand [m]. */
    public double step() {
        return length.get() == Unit.FOOT || length.get() == Unit.INCH ? Unit.INCH.toSi(0.5) : 0.01;
    }
}
