package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds places for labels, each where nothing is yet: tried in a fixed order, the first free place wins. */
final class Labels {
    /** Right, left, above, below, and the four corners; -1, 0, 1 along x and y. */
    private static final int[][] SIDES = {{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}};

    private final Box page;
    private final List<Box> taken = new ArrayList<>();

    Labels(Box page) {
        this.page = page;
    }

    void take(Box box) {
        taken.add(box);
    }

    boolean isFree(Box box) {
        return page.holds(box) && taken.stream().noneMatch(box::overlaps);
    }

    /**
     * A place beside a symbol, taken at once.
     *
     * @param x middle of the symbol
     * @param y middle of the symbol
     * @param gaps distances from the middle to the label, tried one after the other
     * @return empty where every one of the eight places at each distance is taken or leaves the page
     */
    Optional<Box> place(double x, double y, double width, double height, double... gaps) {
        for (double gap : gaps)
            for (int[] side : SIDES) {
                double reach = side[0] != 0 && side[1] != 0 ? 0.8 * gap : gap;
                double middleX = x + side[0] * (reach + width / 2), middleY = y + side[1] * (reach + height / 2);
                Box box = new Box(middleX - width / 2, middleY - height / 2, middleX + width / 2, middleY + height / 2);
                if (!isFree(box)) continue;
                take(box);
                return Optional.of(box);
            }
        return Optional.empty();
    }
}
