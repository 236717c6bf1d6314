package slabfield.figure;

import java.util.List;
import slabfield.field.Grid;

/** Grey with hatches where something cannot be, such as a hole where nothing may be drilled. */
public final class MaskLayer implements PlanLayer {
    private static final int VEIL = 0xB4B9BEC4;
    private static final double SPACING = 5;

    private final Grid grid;
    private final boolean[] masked;
    private final String words;

    /**
     * A mask.
     *
     * @param masked for each cell, row-major
     * @param words of the key: what cannot be there
     */
    public MaskLayer(Grid grid, boolean[] masked, String words) {
        if (masked.length != grid.cells()) throw new IllegalArgumentException("there must be one mark for each cell");
        this.grid = grid;
        this.masked = masked.clone();
        this.words = words;
    }

    /** True where a place is masked. */
    public boolean at(double x, double y) {
        int column = grid.column(x), row = grid.row(y);
        return column >= 0 && row >= 0 && masked[grid.index(column, row)];
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Box seen = LayerInk.seen(grid, view, box);
        if (seen.width() <= 0 || seen.height() <= 0) return;
        Ink ink = new Ink(fontScale);
        int columns = Math.max(1, (int) Math.round(seen.width())), rows = Math.max(1, (int) Math.round(seen.height()));
        int[] argb = new int[columns * rows];
        for (int j = 0; j < rows; j++)
            for (int i = 0; i < columns; i++)
                if (on(
                        view,
                        seen.left() + (i + 0.5) * seen.width() / columns,
                        seen.top() + (j + 0.5) * seen.height() / rows)) argb[j * columns + i] = VEIL;
        canvas.image(argb, columns, rows, seen);
        for (double[] line : Hatching.across(seen, (x, y) -> on(view, x, y), SPACING * ink.size(), -Math.PI / 4))
            canvas.line(line, false, ink.solid(Ink.SOFT, 0.6));
    }

    private boolean on(PlanView view, double pageX, double pageY) {
        var place = view.plan(pageX, pageY);
        return at(place.x(), place.y());
    }

    @Override
    public void explain(Key key, double fontScale) {
        Ink ink = new Ink(fontScale);
        key.entry(
                (canvas, x, y, half) -> {
                    double[] ring = LayerInk.swatch(x, y, half, ink);
                    canvas.fill(List.of(ring), Ink.GROUND);
                    canvas.fill(List.of(ring), VEIL);
                    canvas.hatch(List.of(ring), SPACING * ink.size(), -Math.PI / 4, ink.solid(Ink.SOFT, 0.6));
                    canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
                },
                words);
    }
}
