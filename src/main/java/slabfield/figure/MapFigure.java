package slabfield.figure;

import java.util.List;
import slabfield.field.Result;

/** The predicted map with title and legend; or the plan and the reason where a solve failed. */
public record MapFigure(Result result, MapStyle style, List<PlanLayer> layers) implements Figure {
    public MapFigure {
        layers = List.copyOf(layers);
    }

    /** The map without layers. */
    public MapFigure(Result result, MapStyle style) {
        this(result, style, List.of());
    }

    @Override
    public String title() {
        return result.scenario().name();
    }

    @Override
    public String description() {
        if (result instanceof Result.Unsolved unsolved)
            return "Plan of the slab. The flow could not be solved: " + unsolved.reason();
        Result.Coverage coverage = ((Result.Solved) result).coverage();
        String least = Double.isNaN(coverage.weakest())
                ? ""
                : " The weakest place has a vacuum of " + style.units().pressure(coverage.weakest()) + " "
                        + style.units().pressureSymbol() + ".";
        return "Map of the predicted pressure under the slab. The target is met under "
                + Legend.percent(coverage.meeting()) + " of the area." + least;
    }

    @Override
    public double height(Canvas measure, double width) {
        return VacuumMap.height(measure, width, result, style, layers);
    }

    @Override
    public void draw(Canvas canvas) {
        VacuumMap.draw(canvas, result, style, layers);
    }
}
