package slabfield.figure;

import java.util.List;
import slabfield.field.Result;

/** The whole sheet: title above, plan with its scale bar, legend beside or below, limits of the model at the foot. */
final class Sheet {
    private static final double MARGIN = 14;
    private static final double TITLE = 38;
    private static final double STRIP = 26;
    private static final double AROUND = 12;
    private static final double BESIDE_FROM = 470;
    private static final String LIMITS =
            "Limits of the model: steady flow in one layer, seen from above; assumptions as drawn.";

    private final Canvas canvas;
    private final Result result;
    private final MapStyle style;
    private final Ink ink;
    private final Legend legend;
    private final Box page;
    private final Box plan;
    private final Box key;
    private final PlanView view;

    Sheet(Canvas canvas, Result result, MapStyle style) {
        this.canvas = canvas;
        this.result = result;
        this.style = style;
        this.ink = new Ink(style.fontScale());
        this.legend = new Legend(canvas, result, style);
        double u = ink.size();
        this.page = new Box(0, 0, canvas.width(), canvas.height()).inset(MARGIN * u);
        double top = page.top() + TITLE * u, foot = page.bottom() - 1.6 * ink.small();
        Box beside = new Box(page.left(), top, page.right() - (Legend.COLUMN + MARGIN) * u, foot);
        double below = legend.height(page.width());
        Box above = new Box(page.left(), top, page.right(), foot - below - 8 * u);
        PlanView first = fit(beside), second = fit(above);
        boolean side = first.scale() >= second.scale() && legend.height(Legend.COLUMN * u) <= foot - top + u;
        this.plan = side ? beside : above;
        this.view = side ? first : second;
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

    static double height(Canvas measure, double width, Result result, MapStyle style) {
        double u = style.fontScale(), inner = width - 2 * MARGIN * u;
        Legend legend = new Legend(measure, result, style);
        Bounds bounds = Bounds.of(result.scenario());
        double shape = Math.min(1.6, bounds.height() / Math.max(bounds.width(), 1e-3));
        double frame = 2 * MARGIN * u + TITLE * u + 1.6 * new Ink(u).small();
        double extra = (2 * AROUND + STRIP) * u;
        if (width >= BESIDE_FROM * u) {
            double planWidth = inner - (Legend.COLUMN + MARGIN + 2 * AROUND) * u;
            return frame + Math.max(planWidth * shape + extra, legend.height(Legend.COLUMN * u) + u);
        }
        return frame + (inner - 2 * AROUND * u) * shape + extra + legend.height(inner) + 8 * u;
    }

    PlanView view() {
        return view;
    }

    void draw() {
        title();
        Box room = new Box(plan.left(), plan.top(), plan.right(), plan.bottom() - STRIP * ink.size());
        int leftOut = new Plan(canvas, result, style, view, room).draw();
        scaleBar();
        legend.draw(key);
        String foot = leftOut == 0 ? LIMITS : LIMITS + " " + leftOut + " labels found no room.";
        var fine = ink.fine(Ink.SOFT);
        canvas.text(Words.cut(canvas, foot, page.width(), fine), page.left(), page.bottom(), Canvas.Anchor.START, 0, fine);
        if (result instanceof Result.Unsolved unsolved) banner(unsolved.reason());
    }

    private void title() {
        boolean solved = result instanceof Result.Solved;
        double u = ink.size();
        var large = new Canvas.Lettering(13 * u, true, Ink.DARK, 0);
        String name = Words.cut(canvas, result.scenario().name(), page.width(), large);
        canvas.text(name, page.left(), page.top() + 11 * u, Canvas.Anchor.START, 0, large);
        var stamp = new Canvas.Lettering(ink.body(), true, Ink.WHITE, 0);
        String word = solved ? "PREDICTED" : "NOT SOLVED";
        double wide = canvas.textWidth(word, stamp) + 8 * u, top = page.top() + 17 * u;
        Box box = new Box(page.left(), top, page.left() + wide, top + 13 * u);
        canvas.fill(List.of(box.ring()), solved ? Ink.DARK : Ink.STOP);
        canvas.text(word, page.left() + 4 * u, top + 9.6 * u, Canvas.Anchor.START, 0, stamp);
        String rest = solved ? "pressure under the slab with the suction on, relative to the room" : "the plan as drawn, without a field";
        var plain = ink.text(Ink.DARK);
        double room = page.width() - wide - 6 * u;
        canvas.text(Words.cut(canvas, rest, room, plain), box.right() + 6 * u, top + 9.6 * u, Canvas.Anchor.START, 0, plain);
    }

    private void scaleBar() {
        double u = ink.size(), unit = style.units().lengthUnit() * view.scale();
        double units = Steps.atMost(Math.max(0.01, 110 * u / unit)), length = units * unit;
        double x = plan.left() + AROUND * u, y = plan.bottom() - 8 * u;
        for (int i = 0; i < 2; i++) {
            double[] half = new Box(x + i * length / 2, y - 4 * u, x + (i + 1) * length / 2, y).ring();
            canvas.fill(List.of(half), i == 0 ? Ink.DARK : Ink.WHITE);
            canvas.line(half, true, ink.solid(Ink.DARK, 0.8));
        }
        var fine = ink.fine(Ink.DARK);
        canvas.text("0", x, y - 6.5 * u, Canvas.Anchor.MIDDLE, 0, fine);
        String end = style.units().exact(units) + " " + style.units().lengthSymbol();
        canvas.text(end, x + length, y - 6.5 * u, Canvas.Anchor.MIDDLE, 0, fine);
        if (style.planNorth()) north(x + length + 46 * u, y);
    }

    private void north(double x, double y) {
        double u = ink.size();
        canvas.fill(List.of(new double[] {x, y - 15 * u, x + 4 * u, y, x, y - 4 * u, x - 4 * u, y}), Ink.DARK);
        canvas.text("plan north", x + 7 * u, y - 1 * u, Canvas.Anchor.START, 0, ink.fine(Ink.DARK));
    }

    private void banner(String reason) {
        double u = ink.size(), pad = 9 * u, wide = plan.width() - 2 * AROUND * u;
        var lettering = ink.text(Ink.DARK);
        List<String> lines = Words.wrap(canvas, reason, wide - 2 * pad, lettering);
        double step = 1.3 * ink.body(), height = 2 * pad + 1.5 * step + lines.size() * step;
        double top = plan.top() + 2 * u, left = plan.left() + AROUND * u;
        Box box = new Box(left, top, left + wide, top + height);
        canvas.fill(List.of(box.ring()), 0xF4FFFFFF);
        canvas.fill(List.of(new Box(left, top, left + 4 * u, top + height).ring()), Ink.STOP);
        canvas.line(box.ring(), true, ink.solid(Ink.STOP, 1.2));
        double x = left + pad + 3 * u, y = top + pad + 0.8 * step;
        canvas.text("No field: the flow could not be solved", x, y, Canvas.Anchor.START, 0, ink.bold(Ink.STOP));
        for (int i = 0; i < lines.size(); i++)
            canvas.text(lines.get(i), x, y + (i + 1.4) * step, Canvas.Anchor.START, 0, lettering);
    }
}
