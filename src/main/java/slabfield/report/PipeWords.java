package slabfield.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** Runs of pipe in words. */
public final class PipeWords {
    private PipeWords() {}

    /**
     * One line for each run.
     *
     * @param small writes a pipe's diameter
     * @param length writes a length
     */
    public static List<String> of(Scenario scenario, DoubleFunction<String> small, DoubleFunction<String> length) {
        List<String> out = new ArrayList<>();
        for (SuctionPoint point : scenario.suctionPoints()) {
            if (point.source() instanceof Source.Fan fan && !fan.run().isEmpty())
                out.add(point.id() + " to its fan and discharge: " + run(fan.run(), small, length));
            if (point.source() instanceof Source.Branch branch)
                out.add(point.id() + " to riser " + branch.riser() + ": " + run(branch.run(), small, length));
        }
        for (Riser riser : scenario.equipment().risers())
            if (!riser.run().isEmpty())
                out.add("riser " + riser.id() + " to its discharge: " + run(riser.run(), small, length));
        if (!scenario.equipment().plannedRun().isEmpty())
            out.add("planned for points without pipe: "
                    + run(scenario.equipment().plannedRun(), small, length));
        return out;
    }

    private static String run(List<Source.Pipe> run, DoubleFunction<String> small, DoubleFunction<String> length) {
        return run.stream()
                .map(p -> length.apply(p.length()) + " of " + small.apply(p.diameter()) + " inside"
                        + (p.ells() > 0 ? " with " + p.ells() + (p.ells() == 1 ? " bend" : " bends") : "")
                        + (p.valve() > 0 ? ", valve" : ""))
                .collect(Collectors.joining(", then "));
    }
}
