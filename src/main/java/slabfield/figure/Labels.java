package slabfield.figure;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Finds places for labels, each where nothing is yet: tried in a fixed order, the first free place wins. */
final class Labels {
    /** Right, left, above, below, and the four corners; -1, 0, 1 along x and y. */
    private static final int[][] SIDES = {{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}};

    private final Box page;
    private final List<Box> taken = new ArrayList<>();
    private final List<double[]> edges = new ArrayList<>();

    Labels(Box page) {
        this.page = page;
    }

    void take(Box box) {
        taken.add(box);
    }

    /**
     * An outline that labels do not lie on where there is another place near.
     *
     * @param ring corners, x and y by turns
     */
    void shun(double[] ring) {
        edges.add(ring);
    }

    private boolean isClear(Box box) {
        var rectangle = new Rectangle2D.Double(box.left(), box.top(), box.width(), box.height());
        for (double[] ring : edges)
            for (int i = 0, last = ring.length - 2; i < ring.length; last = i, i += 2)
                if (rectangle.intersectsLine(ring[last], ring[last + 1], ring[i], ring[i + 1])) return false;
        return true;
    }

    boolean isFree(Box box) {
        return page.holds(box) && taken.stream().noneMatch(box::overlaps);
    }

    /**
     * A place beside a symbol, taken at once. At the two nearest distances places that lie on no outline come first.
     *
     * @param x middle of the symbol
     * @param y middle of the symbol
     * @param gaps distances from the middle to the label, tried one after the other
     * @return empty where every one of the eight places at each distance is taken or leaves the page
     */
    Optional<Box> place(double x, double y, double width, double height, double... gaps) {
        double[] near = edges.isEmpty() ? new double[0] : Arrays.copyOf(gaps, Math.min(2, gaps.length));
        Optional<Box> found =
                find(x, y, width, height, near, this::isClear).or(() -> find(x, y, width, height, gaps, b -> true));
        found.ifPresent(this::take);
        return found;
    }

    private Optional<Box> find(double x, double y, double width, double height, double[] gaps, Predicate<Box> wanted) {
        for (double gap : gaps)
            for (int[] side : SIDES) {
                double reach = side[0] != 0 && side[1] != 0 ? 0.8 * gap : gap;
                double middleX = x + side[0] * (reach + width / 2), middleY = y + side[1] * (reach + height / 2);
                Box box = new Box(middleX - width / 2, middleY - height / 2, middleX + width / 2, middleY + height / 2);
                if (isFree(box) && wanted.test(box)) return Optional.of(box);
            }
        return Optional.empty();
    }
}
