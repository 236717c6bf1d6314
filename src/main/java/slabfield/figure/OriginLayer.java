package slabfield.figure;

import java.util.List;
import slabfield.field.AirPaths;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Result;

/**
 * Where the air under each part of the slab came in. Each origin has a colour; where airs mix so do the colours, in OKLab.
 * Lines part the areas of the main origins, and each bears its name, so that the colours are not needed to tell them.
 *
 * @see "M. Okabe and K. Ito (2008), Color universal design: how to make figures that are friendly to colorblind people"
 */
public final class OriginLayer implements PlanLayer {
    private static final int[] COLOURS = {
        0xFF56B4E9, 0xFFE69F00, 0xFF009E73, 0xFFF0E442, 0xFFCC79A7, 0xFF0072B2, 0xFFD55E00
    };
    private static final int OTHERS = 0xFFB9BEC4;
    private static final double MOST_PIXELS = 4e6;

    private final AirPaths paths;
    private final Result.Solved solved;
    private final MapStyle style;

    public OriginLayer(AirPaths paths, Result.Solved solved, MapStyle style) {
        this.paths = paths;
        this.solved = solved;
        this.style = style;
    }

    /** Colour of an origin by its rank, from 0 for the one that gives most. */
    public static int colour(int rank) {
        return rank < COLOURS.length ? COLOURS[rank] : OTHERS;
    }

    @Override
    public String heading() {
        return "where the air under the slab comes from";
    }

    @Override
    public boolean hidesField() {
        return true;
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Grid g = paths.grid();
        Box slab = view.box(new Bounds(g.left(), g.bottom(), g.right(), g.top()));
        Box seen = new Box(
                Math.max(box.left(), slab.left()),
                Math.max(box.top(), slab.top()),
                Math.min(box.right(), slab.right()),
                Math.min(box.bottom(), slab.bottom()));
        if (seen.width() <= 0 || seen.height() <= 0) return;
        colours(canvas, view, seen);
        Ink ink = new Ink(fontScale);
        for (int k = 0; k < paths.origins().size(); k++) edge(canvas, view, k, ink);
        for (int k = 0; k < paths.origins().size(); k++) name(canvas, view, seen, k, ink);
    }

    private void colours(Canvas canvas, PlanView view, Box seen) {
        double fine = canvas.pixelsPerPoint();
        double squeeze = Math.min(1, Math.sqrt(MOST_PIXELS / (seen.width() * seen.height() * fine * fine)));
        int columns = Math.max(1, (int) Math.round(seen.width() * fine * squeeze)),
                rows = Math.max(1, (int) Math.round(seen.height() * fine * squeeze));
        OkLab[] cell = cells();
        int[] argb = new int[columns * rows];
        for (int j = 0; j < rows; j++)
            for (int i = 0; i < columns; i++) {
                var place = view.plan(
                        seen.left() + (i + 0.5) * seen.width() / columns,
                        seen.top() + (j + 0.5) * seen.height() / rows);
                argb[j * columns + i] = pixel(cell, place.x(), place.y());
            }
        canvas.image(argb, columns, rows, seen);
    }

    private OkLab[] cells() {
        OkLab[] origin = new OkLab[paths.origins().size()],
                cell = new OkLab[paths.grid().cells()];
        for (int k = 0; k < origin.length; k++) origin[k] = OkLab.ofArgb(colour(k));
        for (int c = 0; c < cell.length; c++) {
            if (paths.main(c) < 0) continue;
            double l = 0, a = 0, b = 0;
            for (int k = 0; k < origin.length; k++) {
                l += paths.share()[k][c] * origin[k].l();
                a += paths.share()[k][c] * origin[k].a();
                b += paths.share()[k][c] * origin[k].b();
            }
            cell[c] = new OkLab(l, a, b);
        }
        return cell;
    }

    /** Bilinear between the middles of cells around that have a colour; none where the pixel's own cell has none. */
    private int pixel(OkLab[] cell, double x, double y) {
        Grid g = paths.grid();
        int column = g.column(x), row = g.row(y);
        if (column < 0 || row < 0 || cell[g.index(column, row)] == null) return 0;
        double fx = (x - g.left()) / g.width() - 0.5, fy = (y - g.bottom()) / g.height() - 0.5;
        int i0 = (int) Math.floor(fx), j0 = (int) Math.floor(fy);
        double l = 0, a = 0, b = 0, sum = 0;
        for (int j = j0; j <= j0 + 1; j++)
            for (int i = i0; i <= i0 + 1; i++) {
                if (i < 0 || j < 0 || i >= g.columns() || j >= g.rows() || cell[g.index(i, j)] == null) continue;
                double w = (1 - Math.abs(fx - i)) * (1 - Math.abs(fy - j));
                OkLab o = cell[g.index(i, j)];
                l += w * o.l();
                a += w * o.a();
                b += w * o.b();
                sum += w;
            }
        return new OkLab(l / sum, a / sum, b / sum).argb();
    }

    /** The line around the area in which an origin gives more than any other. */
    private void edge(Canvas canvas, PlanView view, int k, Ink ink) {
        double[] ahead = new double[paths.grid().cells()];
        for (int c = 0; c < ahead.length; c++) {
            if (paths.main(c) < 0) ahead[c] = Double.NaN;
            else {
                double other = 0;
                for (int m = 0; m < paths.share().length; m++) if (m != k) other = Math.max(other, paths.share()[m][c]);
                ahead[c] = paths.share()[k][c] - other;
            }
        }
        PressureField f = solved.field();
        for (Contours.Isoline isoline :
                Contours.of(new PressureField(paths.grid(), f.kind(), ahead, f.counts(), f.openArea()), List.of(0.0))) {
            double[] line = new double[isoline.line().length];
            for (int i = 0; i < line.length; i += 2) {
                line[i] = view.pageX(isoline.line()[i]);
                line[i + 1] = view.pageY(isoline.line()[i + 1]);
            }
            canvas.line(line, isoline.closed(), ink.solid(Ink.WHITE, 2.6));
            canvas.line(line, isoline.closed(), ink.solid(Ink.DARK, 1));
        }
    }

    /** Writes an origin where its area is widest, unless it is too narrow for letters; the legend names all. */
    private void name(Canvas canvas, PlanView view, Box seen, int k, Ink ink) {
        Grid g = paths.grid();
        int[] inside = depths(k);
        int at = 0;
        for (int c = 1; c < inside.length; c++) if (inside[c] > inside[at]) at = c;
        double room = inside[at] * Math.min(g.width(), g.height()) * view.scale(), tall = ink.body();
        if (room < tall) return;
        double x = view.pageX(g.x(at % g.columns())), y = view.pageY(g.y(at / g.columns()));
        String text = paths.origins().get(k) + " " + Legend.percent(paths.exhaustShare()[k]);
        double half = canvas.textWidth(text, ink.bold(Ink.DARK)) / 2 + 3 * ink.size();
        x = Math.max(seen.left() + half, Math.min(seen.right() - half, x));
        canvas.fill(List.of(new Box(x - half, y - tall, x + half, y + 0.45 * tall).ring()), Ink.VEIL);
        canvas.text(text, x, y, Canvas.Anchor.MIDDLE, 0, ink.bold(Ink.DARK));
    }

    /** For each cell of an origin's area how many steps lie between it and the nearest cell outside; 0 for the others. */
    private int[] depths(int k) {
        Grid g = paths.grid();
        int[] depth = new int[g.cells()];
        for (int c = 0; c < depth.length; c++) depth[c] = paths.main(c) == k ? g.cells() : 0;
        for (int pass = 0; pass < 2; pass++)
            for (int i = 0; i < depth.length; i++) {
                int c = pass == 0 ? i : depth.length - 1 - i, column = c % g.columns(), row = c / g.columns();
                if (depth[c] == 0) continue;
                int beside = pass == 0 ? column - 1 : column + 1, above = pass == 0 ? row - 1 : row + 1;
                int first = beside < 0 || beside >= g.columns() ? 0 : depth[g.index(beside, row)];
                int second = above < 0 || above >= g.rows() ? 0 : depth[g.index(column, above)];
                depth[c] = Math.min(depth[c], 1 + Math.min(first, second));
            }
        return depth;
    }

    @Override
    public void explain(Key key, double fontScale) {
        key.paragraph("Where the air under the slab came in, and its part of the exhaust. Mixed colours: mixed air.");
        Ink ink = new Ink(fontScale);
        for (int k = 0; k < paths.origins().size(); k++) {
            int colour = colour(k);
            double share = paths.exhaustShare()[k],
                    flow = share * solved.flows().exhaust();
            key.entry(
                    (canvas, x, y, half) -> {
                        double[] ring = new Box(x - half, y - 4.2 * ink.size(), x + half, y + 4.2 * ink.size()).ring();
                        canvas.fill(List.of(ring), colour);
                        canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
                    },
                    paths.origins().get(k) + ": " + Legend.percent(share) + ", "
                            + style.units().flow(flow) + " " + style.units().flowSymbol());
        }
    }
}
