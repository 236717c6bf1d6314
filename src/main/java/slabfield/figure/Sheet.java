package slabfield.figure;

import java.util.List;
import slabfield.field.Result;

/** The whole sheet: title above, plan with its scale bar, legend beside or below, limits of the model at the foot. */
final class Sheet {
    private static final double MARGIN = 14;
    private static final double TITLE = Heading.HEIGHT;
    private static final double STRIP = 26;
    private static final double AROUND = 12;
    private static final double PAD = 8;
    private static final double BESIDE_FROM = 0.65;
    private static final String LIMITS =
            "Limits of the model: steady flow in one layer, seen from above; assumptions as drawn.";

    private final Canvas canvas;
    private final Result result;
    private final MapStyle style;
    private final List<PlanLayer> layers;
    private final Ink ink;
    private final Legend legend;
    private final Box page;
    private final Box plan;
    private final Box key;
    private final PlanView view;

    Sheet(Canvas canvas, Result result, MapStyle style, List<PlanLayer> layers) {
        this.layers = layers;
        this.canvas = canvas;
        this.result = result;
        this.style = style;
        this.ink = new Ink(style.fontScale());
        double u = ink.size();
        this.page = new Box(0, 0, canvas.width(), canvas.height()).inset(MARGIN * u);
        double top = page.top() + TITLE * u + bannerHeight(canvas, page.width(), result, ink);
        double foot = page.bottom() - 1.6 * ink.small();
        Box beside = new Box(page.left(), top, page.right() - (Legend.COLUMN + MARGIN) * u, foot);
        Legend narrow = new Legend(canvas, result, style, layers, Legend.COLUMN * u);
        Legend wide = new Legend(canvas, result, style, layers, page.width());
        double below = wide.height();
        Box above = new Box(page.left(), top, page.right(), foot - below - 8 * u);
        PlanView first = fit(beside), second = fit(above);
        boolean side = first.scale() >= second.scale() && narrow.height() <= foot - top + u;
        this.legend = side ? narrow : wide;
        this.plan = side ? trimmed(beside, first.scale()) : above;
        this.view = side ? fit(plan) : second;
        this.key = side
                ? new Box(beside.right() + MARGIN * u, top, page.right(), foot)
                : new Box(page.left(), foot - below, page.right(), foot);
    }

    private PlanView fit(Box box) {
        double around = AROUND * ink.size();
        Box room = new Box(
                box.left() + around,
                box.top() + around,
                box.right() - around,
                box.bottom() - (AROUND + STRIP) * ink.size());
        return PlanView.fit(Bounds.of(result.scenario()), room);
    }

    /** A box no higher than the plan needs at a scale. */
    private Box trimmed(Box box, double scale) {
        double needed = Bounds.of(result.scenario()).height() * scale + (2 * AROUND + STRIP) * ink.size();
        return new Box(box.left(), box.top(), box.right(), Math.min(box.bottom(), box.top() + needed));
    }

    static double height(Canvas measure, double width, Result result, MapStyle style, List<PlanLayer> layers) {
        double u = style.fontScale(), inner = width - 2 * MARGIN * u;
        Bounds bounds = Bounds.of(result.scenario());
        double shape = Math.min(1.6, bounds.height() / Math.max(bounds.width(), 1e-3));
        Ink ink = new Ink(u);
        double frame = 2 * MARGIN * u + TITLE * u + bannerHeight(measure, inner, result, ink) + 1.6 * ink.small();
        double extra = (2 * AROUND + STRIP) * u;
        double key = new Legend(measure, result, style, layers, Legend.COLUMN * u).height() + u;
        double plan = (inner - (Legend.COLUMN + MARGIN + 2 * AROUND) * u) * shape + extra;
        if (plan > BESIDE_FROM * key) return frame + Math.max(plan, key);
        double below = new Legend(measure, result, style, layers, inner).height() + 8 * u;
        return frame + (inner - 2 * AROUND * u) * shape + extra + below;
    }

    PlanView view() {
        return view;
    }

    void draw() {
        title();
        Box room = new Box(plan.left(), plan.top(), plan.right(), plan.bottom() - STRIP * ink.size());
        int leftOut = new Plan(canvas, result, style, layers, view, room).draw();
        scaleBar();
        legend.draw(key.left(), key.top());
        String foot = leftOut == 0 ? LIMITS : LIMITS + " Labels without room: " + leftOut + ".";
        var fine = ink.fine(Ink.SOFT);
        String line = Words.cut(canvas, foot, page.width(), fine);
        canvas.text(line, page.left(), page.bottom(), Canvas.Anchor.START, 0, fine);
        if (result instanceof Result.Unsolved unsolved) banner(unsolved);
    }

    private void title() {
        boolean solved = result instanceof Result.Solved;
        Heading heading = new Heading(canvas, page, ink);
        int colour = solved || style.monochrome() ? Ink.DARK : Ink.STOP;
        String stamp = layers.stream().anyMatch(PlanLayer::hidesPrediction) ? "MEASURED" : "PREDICTED";
        String other = layers.stream()
                .map(PlanLayer::heading)
                .filter(h -> !h.isEmpty())
                .findFirst()
                .orElse("");
        if (solved && !other.isEmpty()) heading.draw(result.scenario().name(), stamp, colour, other);
        else if (solved)
            heading.draw(
                    result.scenario().name(),
                    stamp,
                    colour,
                    "pressure under the slab with the suction on, relative to the room",
                    "pressure under the slab, suction on");
        else heading.draw(result.scenario().name(), "NOT SOLVED", colour, "the plan as drawn, without a field");
    }

    private void scaleBar() {
        double u = ink.size(), x = plan.left() + AROUND * u, y = plan.bottom() - 8 * u;
        double length = MapFoot.bar(canvas, ink, style.units(), view, x, y);
        if (style.planNorth()) north(x + length + 46 * u, y);
    }

    private void north(double x, double y) {
        double u = ink.size();
        canvas.fill(List.of(new double[] {x, y - 15 * u, x + 4 * u, y, x, y - 4 * u, x - 4 * u, y}), Ink.DARK);
        canvas.text("plan north", x + 7 * u, y - 1 * u, Canvas.Anchor.START, 0, ink.fine(Ink.DARK));
    }

    /** Height that the reason of a failed solve takes below the title; 0 for a solved one. */
    private static double bannerHeight(Canvas canvas, double width, Result result, Ink ink) {
        if (!(result instanceof Result.Unsolved unsolved)) return 0;
        return (bannerLines(canvas, width, unsolved, ink).size() + 1.6) * 1.3 * ink.body() + (2 * PAD + 8) * ink.size();
    }

    private static List<String> bannerLines(Canvas canvas, double width, Result.Unsolved unsolved, Ink ink) {
        return Words.wrap(canvas, unsolved.reason(), width - (2 * PAD + 4) * ink.size(), ink.text(Ink.DARK));
    }

    private void banner(Result.Unsolved unsolved) {
        double u = ink.size(), step = 1.3 * ink.body(), top = page.top() + TITLE * u;
        int colour = style.monochrome() ? Ink.DARK : Ink.STOP;
        double bottom = top + bannerHeight(canvas, page.width(), unsolved, ink) - 8 * u;
        canvas.line(new Box(page.left(), top, page.right(), bottom).ring(), true, ink.solid(colour, 1.2));
        canvas.fill(List.of(new Box(page.left(), top, page.left() + 4 * u, bottom).ring()), colour);
        double x = page.left() + (PAD + 3) * u, y = top + PAD * u + 0.8 * step;
        canvas.text("No field: the flow could not be solved", x, y, Canvas.Anchor.START, 0, ink.bold(colour));
        y += 0.3 * step;
        for (String line : bannerLines(canvas, page.width(), unsolved, ink))
            canvas.text(line, x, y += step, Canvas.Anchor.START, 0, ink.text(Ink.DARK));
    }
}
