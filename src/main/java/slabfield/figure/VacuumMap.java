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
        draw(canvas, result, style, List.of());
    }

    /** The whole sheet with layers laid over the field of its plan. */
    public static void draw(Canvas canvas, Result result, MapStyle style, List<PlanLayer> layers) {
        new Sheet(canvas, result, style, layers).draw();
    }

    /** Where {@link #draw} puts the plan. */
    public static PlanView view(Canvas canvas, Result result, MapStyle style) {
        return new Sheet(canvas, result, style, List.of()).view();
    }

    /**
     * Height at which a sheet of some width holds plan and legend without waste [points].
     *
     * @param measure any canvas of the kind that the sheet will be drawn on
     */
    public static double height(Canvas measure, double width, Result result, MapStyle style) {
        return height(measure, width, result, style, List.of());
    }

    /** As {@link #height(Canvas, double, Result, MapStyle)} for a sheet with layers. */
    public static double height(Canvas measure, double width, Result result, MapStyle style, List<PlanLayer> layers) {
        return Sheet.height(measure, width, result, style, layers);
    }

    /**
     * The plan alone, in a box of the canvas, at a view of the caller's: field, house, symbols and labels.
     *
     * @return how many labels of suction points, holes and the target found no room
     */
    public static int drawPlan(Canvas canvas, Result result, MapStyle style, PlanView view, Box box) {
        return drawPlan(canvas, result, style, List.of(), view, box);
    }

    /** As {@link #drawPlan(Canvas, Result, MapStyle, PlanView, Box)} with layers laid over the field, in their order. */
    public static int drawPlan(
            Canvas canvas, Result result, MapStyle style, List<PlanLayer> layers, PlanView view, Box box) {
        return new Plan(canvas, result, style, layers, view, box).draw();
    }

    /** The legend alone: colour bar, target, signs, facts of the run; in as many columns as a box is
     * wide, from its top down. */
    public static void drawLegend(Canvas canvas, Result result, MapStyle style, Box box) {
        drawLegend(canvas, result, style, List.of(), box);
    }

    /** The legend of a plan with layers. */
    public static void drawLegend(Canvas canvas, Result result, MapStyle style, List<PlanLayer> layers, Box box) {
        new Legend(canvas, result, style, layers, box.width()).draw(box.left(), box.top());
    }

    /** The house alone without its ground and its field, to be laid over a field that changes faster than it. */
    public static void drawHouse(Canvas canvas, Scenario scenario, MapStyle style, PlanView view, Box box) {
        canvas.clipped(
                List.of(box.ring()), () -> new HouseLayer(canvas, scenario, view, new Ink(style.fontScale())).draw());
    }

    /** The layers of one depth alone, to be laid over a field that changes faster than they. */
    public static void drawLayers(
            Canvas canvas,
            Scenario scenario,
            List<PlanLayer> layers,
            PlanLayer.Depth depth,
            double fontScale,
            PlanView view,
            Box box) {
        canvas.clipped(
                List.of(box.ring()),
                () -> canvas.clipped(
                        depth == PlanLayer.Depth.FIELD ? Lines.rings(scenario.slabs(), view) : List.of(box.ring()),
                        () -> layers.stream()
                                .filter(l -> l.depth() == depth)
                                .forEach(l -> l.draw(canvas, view, box, fontScale))));
    }
}
