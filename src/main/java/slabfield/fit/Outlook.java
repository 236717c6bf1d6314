package slabfield.fit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.Point;

/**
 * What all members of an ensemble expect of one and the same arrangement. Vacuums and flows are those of each member with its draw
 * of the model's own errors. All fields lie on the same grid.
 *
 * @param forecasts of the members whose house has a solution, at least one
 */
public record Outlook(List<Forecast> forecasts) {
    /**
     * What one member expects.
     *
     * @param member its number
     * @param solved its house
     * @param error its draw of the model's own errors
     */
    public record Forecast(int member, Result.Solved solved, ModelError error) {
        /** Least vacuum [Pa]. */
        public double weakest() {
            return vacuum(solved.coverage().weakest());
        }

        /** A vacuum, or a pressure, of its house with the model's error [Pa]. */
        double vacuum(double modelled) {
            return error.pressure(modelled, solved.strongest());
        }
    }

    public Outlook {
        forecasts = List.copyOf(forecasts);
        if (forecasts.isEmpty()) throw new IllegalArgumentException("no member of the ensemble has a solution");
    }

    /** The cells of all fields. */
    public Grid grid() {
        return forecasts.get(0).solved().field().grid();
    }

    /** Least vacuum anywhere [Pa]. */
    public Band weakest() {
        return band(Forecast::weakest);
    }

    /** Flow drawn by all suction points [m3/s]. */
    public Band exhaust() {
        return band(f -> f.error().flow(f.solved().flows().exhaust()));
    }

    /** Room air drawn [m3/s]. */
    public Band fromRoom() {
        return band(f -> f.error().flow(f.solved().flows().fromRoom()));
    }

    /** Part of the area that meets the target. */
    public Band meeting() {
        return band(f -> f.solved().coverage().meeting());
    }

    /** Pressure at a place [Pa]; NaN values where members have none there. */
    public Band pressureAt(Point at) {
        return band(f -> f.vacuum(f.solved().field().at(at.x(), at.y()).orElse(Double.NaN)));
    }

    private Band band(ToDoubleFunction<Forecast> number) {
        return Band.of(forecasts.stream().mapToDouble(number).toArray());
    }

    /** Probability that the weakest place has at least a vacuum [Pa]. */
    public double chanceThatAllMeet(double vacuum) {
        return weakest().chanceOf(vacuum);
    }

    /**
     * Probability, cell by cell, that the vacuum is at least so much [Pa].
     *
     * @return length {@code grid().cells()}, NaN where a cell does not count
     */
    public double[] chanceOf(double vacuum) {
        return byCell(b -> b.chanceOf(vacuum));
    }

    /**
     * Vacuum below which the truth lies with a probability, cell by cell [Pa].
     *
     * @return length {@code grid().cells()}, NaN where a cell does not count
     */
    public double[] quantile(double probability) {
        return byCell(b -> b.quantile(probability));
    }

    private double[] byCell(ToDoubleFunction<Band> number) {
        double[] out = new double[grid().cells()], values = new double[forecasts.size()];
        for (int c = 0; c < out.length; c++) {
            boolean counts = true;
            for (int m = 0; m < values.length; m++) {
                PressureField field = forecasts.get(m).solved().field();
                counts &= field.counts()[c];
                values[m] = counts ? forecasts.get(m).vacuum(-field.pressure()[c]) : Double.NaN;
            }
            out[c] = counts ? number.applyAsDouble(Band.of(values)) : Double.NaN;
        }
        return out;
    }

    /**
     * What a change gains at the weakest place, member by member, so that what the members doubt alike cancels [Pa].
     *
     * @param before the same ensemble without the change
     */
    public Band gainOver(Outlook before) {
        Map<Integer, Forecast> old = new HashMap<>();
        before.forecasts().forEach(f -> old.put(f.member(), f));
        return Band.of(forecasts.stream()
                .filter(f -> old.containsKey(f.member()))
                .mapToDouble(f -> f.weakest() - old.get(f.member()).weakest())
                .toArray());
    }
}
