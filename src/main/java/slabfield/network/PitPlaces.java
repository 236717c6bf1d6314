package slabfield.network;

import java.util.stream.IntStream;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.model.Plan;
import slabfield.model.Point;
import slabfield.model.Shapes;

/** Places of a {@link PlacementMap}, and which cells of a solved house can hold the pit that is tried. */
final class PitPlaces {
    /** Open area that a cell must have, as part of the whole, for a pit to reach over it. */
    private static final double WHOLE = 0.999;

    /** Of the map. */
    final Grid grid;
    /** Area that no longer counts under the pit [m2]. */
    final double pitArea;

    private final Plan plan;
    private final PlacementMap.Question question;
    private final LayerGrid layer;
    private final Network network;
    /** Cell of the solve at each place, or -1 where no pit can be. */
    private final int[] cellOf;

    /** @param network of the house, closed */
    PitPlaces(Plan plan, PlacementMap.Question question, LayerGrid layer, Network network) {
        this.plan = plan;
        this.question = question;
        this.layer = layer;
        this.network = network;
        pitArea = areaLost(question.pit().radius());
        Grid g = layer.grid;
        int stepX = step(g.width(), g.columns()), stepY = step(g.height(), g.rows());
        int columns = (g.columns() - stepX / 2 - 1) / stepX + 1, rows = (g.rows() - stepY / 2 - 1) / stepY + 1;
        grid = new Grid(
                g.x(stepX / 2) - stepX * g.width() / 2,
                g.y(stepY / 2) - stepY * g.height() / 2,
                stepX * g.width(),
                stepY * g.height(),
                columns,
                rows);
        cellOf = IntStream.range(0, grid.cells())
                .map(p -> g.index(p % columns * stepX + stepX / 2, p / columns * stepY + stepY / 2))
                .map(c -> canHold(c) ? c : -1)
                .toArray();
    }

    /** Cell of the solve at a place, or -1 where no pit can be. */
    int cell(int place) {
        return cellOf[place];
    }

    /** Places at which a pit can be. */
    int[] open() {
        return IntStream.range(0, cellOf.length).filter(p -> cellOf[p] >= 0).toArray();
    }

    /** Area that no longer counts under a pit in the middle of a cell: all of the cells whose middles it takes, parts of others. */
    private double areaLost(double radius) {
        Grid g = layer.grid;
        Region round = new Region(Shapes.disc(new Point(0, 0), radius));
        int ri = (int) (radius / g.width()) + 1, rj = (int) (radius / g.height()) + 1;
        double sum = 0, w = g.width(), h = g.height();
        for (int j = -rj; j <= rj; j++)
            for (int i = -ri; i <= ri; i++)
                sum += Math.hypot(i * w, j * h) <= radius
                        ? w * h
                        : round.area((i - 0.5) * w, (j - 0.5) * h, (i + 0.5) * w, (j + 0.5) * h);
        return sum;
    }

    private int step(double cell, int most) {
        return Math.max(1, Math.min(most, (int) Math.round(question.spacing() / cell)));
    }

    /** True where every cell that the pit reaches over, were it here, is open layer with a pressure. */
    boolean canHold(int cell) {
        Grid g = layer.grid;
        int i = cell % g.columns(), j = cell / g.columns();
        double reach = question.pit().radius() + Math.max(g.width(), g.height()) / 2;
        int ri = (int) (reach / g.width()), rj = (int) (reach / g.height());
        Point here = new Point(g.x(i), g.y(j));
        for (int b = -rj; b <= rj; b++)
            for (int a = -ri; a <= ri; a++) {
                if (Math.hypot(a * g.width(), b * g.height()) > reach) continue;
                int c = layer.cellAt(i + a, j + b);
                if (c < 0 || layer.kind[c] != CellKind.LAYER || !layer.counts[c] || network.unknownOf(c) < 0)
                    return false;
                if (layer.openArea[c] < WHOLE * g.width() * g.height()) return false;
                if (layer.cut(here.x(), here.y(), g.x(i + a), g.y(j + b))) return false;
            }
        return plan.mayDrill(here);
    }
}
