package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;

/**
 * What a hole's reading under a test vacuum becomes under the installed fan: the measured difference between suction on
 * and off, times the ratio of the two predicted differences. In slow (Darcy) flow that is the ratio of the pit pressures;
 * in fast flow, or with more suction points, only the model knows.
 *
 * @param hole its id
 * @param measured with the test vacuum on, less off [Pa]
 * @param factor predicted with the installed fan over predicted with the test vacuum
 * @param expected with the installed fan on, less off [Pa]
 */
public record TestScaling(String hole, double measured, double factor, double expected) {
    private static final double NOTHING = 1e-6;

    /**
     * Scales the readings of a stage; those without fan-on reading, and holes that the test vacuum does not reach, are left
     * out.
     *
     * @param drawn the house
     * @param test stage at which the test vacuum drew
     * @param installed the house with its fans in place, the same openings and grid
     * @return none where a solve did not converge
     */
    public static List<TestScaling> of(Scenario drawn, Stage test, Scenario installed) {
        Result before = SlabSolver.solve(drawn.during(test), Progress.NONE);
        Result after = SlabSolver.solve(installed, Progress.NONE);
        if (!(before instanceof Result.Solved then && after instanceof Result.Solved now)) return List.of();
        List<TestScaling> out = new ArrayList<>();
        for (Stage.HoleReading reading : test.holes()) {
            if (reading.fanOn().isEmpty()) continue;
            double measured = reading.fanOn().getAsDouble() - reading.fanOff().orElse(0);
            double tested = difference(then, reading.hole()), wanted = difference(now, reading.hole());
            if (!(Math.abs(tested) > NOTHING) || Double.isNaN(wanted)) continue;
            out.add(new TestScaling(reading.hole(), measured, wanted / tested, measured * wanted / tested));
        }
        return out;
    }

    private static double difference(Result.Solved solved, String hole) {
        return solved.hole(hole)
                .map(h -> h.fanOn().orElse(Double.NaN) - h.fanOff().orElse(Double.NaN))
                .orElse(Double.NaN);
    }
}
