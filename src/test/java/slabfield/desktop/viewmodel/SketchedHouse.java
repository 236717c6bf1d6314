package slabfield.desktop.viewmodel;

import slabfield.model.Point;
import slabfield.model.Scenario;

/** A user who draws a house of forty things from a blank sheet, with every action counted. */
public final class SketchedHouse {
    /** @param actions how many there were */
    public record Drawn(Scenario scenario, int actions) {}

    private SketchedHouse() {}

    static Drawn draw(Workbench bench, double reach) {
        int actions = draw(new Hands() {
            @Override
            public void key(Tool tool) {
                bench.drawing().type(tool.key());
            }

            @Override
            public void click(double x, double y) {
                bench.drawing().click(Pointer.at(new Point(x, y), reach));
            }

            @Override
            public void drag(double x, double y, double toX, double toY) {
                bench.drawing().hover(Pointer.at(new Point(x, y), reach));
                bench.drawing().press(Pointer.at(new Point(x, y), reach));
                bench.drawing().drag(Pointer.at(new Point(toX, toY), reach));
                bench.drawing().release(Pointer.at(new Point(toX, toY), reach));
            }
        });
        return new Drawn(bench.document().scenario().get(), actions);
    }

    /** Draws with any hands, and counts. */
    public static int draw(Hands counted) {
        int[] actions = {0};
        Hands hands = new Hands() {
            @Override
            public void key(Tool tool) {
                actions[0]++;
                counted.key(tool);
            }

            @Override
            public void click(double x, double y) {
                actions[0]++;
                counted.click(x, y);
            }

            @Override
            public void drag(double x, double y, double toX, double toY) {
                actions[0]++;
                counted.drag(x, y, toX, toY);
            }
        };
        ground(hands);
        leaks(hands);
        spots(hands);
        return actions[0];
    }

    /** 2 slabs, 2 zones, 3 no-drill areas, 3 footings with 3 gaps, 1 loop of tile with 2 breaks. */
    private static void ground(Hands h) {
        h.key(Tool.RECTANGLE);
        h.drag(0, 0, 12, 8);
        h.drag(12, 0, 16, 6);
        h.key(Tool.ZONE);
        h.drag(0, 5, 3.5, 8);
        h.drag(8, 0, 11.5, 2.5);
        h.key(Tool.NO_DRILL);
        h.drag(5, 6.5, 6.5, 7.5);
        h.drag(9, 5.5, 10, 7);
        h.drag(13, 4, 14, 5);
        h.key(Tool.BARRIER);
        h.drag(4, 0, 4, 8);
        h.drag(8, 3, 8, 8);
        h.drag(12, 0, 12, 6);
        h.key(Tool.GAP);
        h.click(4, 2);
        h.click(8, 5);
        h.click(12, 3);
        h.key(Tool.TILE);
        h.click(5.2, 0);
        h.key(Tool.BREAK);
        h.click(2, 0.3);
        h.click(10, 7.7);
    }

    /** 4 walls, 2 joints, 3 cracks, 4 spots. */
    private static void leaks(Hands h) {
        h.key(Tool.WALL);
        h.click(0, 4.7);
        h.click(7.1, 8);
        h.click(16, 2.4);
        h.click(14.3, 6);
        h.key(Tool.JOINT);
        h.click(3.2, 0);
        h.click(13.3, 0);
        h.key(Tool.CRACK);
        h.drag(5, 2, 7, 3.5);
        h.drag(9, 3, 11, 4.5);
        h.drag(1, 1.5, 3, 3);
        h.key(Tool.OPENING);
        h.click(6, 5.5);
        h.click(2.5, 6.5);
        h.click(10.5, 1.5);
        h.click(14.5, 2);
    }

    /** 3 suction points and 8 test holes. */
    private static void spots(Hands h) {
        h.key(Tool.SUCTION);
        h.click(2, 4.5);
        h.click(6, 4.5);
        h.click(14, 3);
        h.key(Tool.HOLE);
        h.click(1, 1);
        h.click(3, 7);
        h.click(5, 1);
        h.click(7, 7);
        h.click(9, 1);
        h.click(11, 7);
        h.click(13, 1);
        h.click(15, 5);
    }
}
