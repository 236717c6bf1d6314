package slabfield.figure;

import java.util.List;
import slabfield.field.Result;
import slabfield.model.Scenario;

/** Draws a predicted field: the whole sheet with title and legend, or the plan alone for a window that moves it. */
public final class VacuumMap {
    private VacuumMap() {}

    /** The scale that a map of a field has: the locked range, or a round one that holds what counts. */
    public static VacuumScale scale(Result.Solved solved, MapStyle style) {
        double unit = style.units().pressureUnit();
        var range = style.range().orElseGet(() -> VacuumScale.rangeOf(solved.field(), style.sense(), unit));
        return VacuumScale.of(style.sense(), style.law(), range, style.monochrome());
    }

    /** The whole sheet, on the whole canvas: title, plan, legend, scale bar and the limits of the model. */
    public static void draw(Canvas canvas, Result result, MapStyle style) {
        new Sheet(canvas, result, style).draw();
    }

    /** Where {@link #draw} puts the plan. */
    public static PlanView view(Canvas canvas, Result result, MapStyle style) {
        return new Sheet(canvas, result, style).view();
    }

    /**
     * Height at which a sheet of some width holds plan and legend without waste [points].
     *
     * @param measure any canvas of the kind that the sheet will be drawn on
     */
    public static double height(Canvas measure, double width, Result result, MapStyle style) {
        return Sheet.height(measure, width, result, style);
    }

    /**
     * The plan alone, in a box of the canvas, at a view of the caller's: field, house, symbols and labels.
     *
     * @return how many labels of suction points, holes and the target found no room
     */
    public static int drawPlan(Canvas canvas, Result result, MapStyle style, PlanView view, Box box) {
        return new Plan(canvas, result, style, view, box).draw();
    }

    /** The legend alone: colour bar, target, signs, facts of the run; in as many columns as a box is
     * wide, from its top down. */
    public static void drawLegend(Canvas canvas, Result result, MapStyle style, Box box) {
        new Legend(canvas, result, style, box.width()).draw(box.left(), box.top());
    }

    /** The house alone without its ground and its field, to be laid over a field that changes faster than it. */
    public static void drawHouse(Canvas canvas, Scenario scenario, MapStyle style, PlanView view, Box box) {
        canvas.clipped(List.of(box.ring()), () -> new HouseLayer(canvas, scenario, view, new Ink(style.fontScale())).draw());
    }
}
