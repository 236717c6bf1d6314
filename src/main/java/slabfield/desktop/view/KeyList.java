package slabfield.desktop.view;

import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Tool;

/** The list of keys that the help shows. */
final class KeyList {
    private static final String FIRST = """
            Tools, by one letter
            """;

    private static final double WIDTH = 840, HEIGHT = 540;

    private static final String REST = """

            While drawing
            click or drag; or type: width Tab depth, length Tab angle, x Tab y; Enter takes it
            12'6 1/2", 12-6.5, 3.82 m, 3,82 m and sums with + are understood; a number alone has the unit shown
            Enter ends a line; Backspace takes the last point back; Esc backs out one level; Alt lets nothing draw the pointer

            On the map
            drag a thing, a corner, an edge: the map follows; click a measure to change it
            double click on an edge: a corner more; right click on a corner: away with it
            right click on an opening: open it or close it
            Shift+click: choose too; Tab: the next thing under the pointer; drag on empty ground: choose by a frame,
            to the right what lies inside it, to the left what it touches
            arrow keys: move what is chosen, with Shift ten times as far; else a cross-hair that reads the pressure
            N: the next suction point; Delete: away with what is chosen
            space or right button and drag: move the plan; wheel, + and \u2212: zoom; 0: whole plan

            Under Readings
            digits, Enter: the next number; Page Up, Page Down: back and on; S spread, N number of readings, W waiting time, P pit, R riser

            Everywhere
            Ctrl+1, Ctrl+2, Ctrl+3, Ctrl+4, Ctrl+5: House, Compare, Readings, Findings, Learn
            Ctrl+N, Ctrl+O, Ctrl+S, Ctrl+Shift+S: new, open, save, save as; Ctrl+E: export the map; Ctrl+Q: quit
            Ctrl+Z, Ctrl+Shift+Z or Ctrl+Y: undo, redo; Ctrl+C, Ctrl+X, Ctrl+V, Ctrl+D, Ctrl+A: copy, cut, paste, duplicate, choose all
            Ctrl+L: look for measures; Ctrl+M: size the system; Ctrl+J: the next suction point
            Ctrl+I, Ctrl+H, Ctrl+K: isolines, hatch, key on and off; Ctrl+0: whole plan; F9: the map alone
            Tab and Shift+Tab go from part to part, arrow keys along buttons of which one is down; Enter does what a row of a table offers
            F1: this list; F10: the menus; F11: large type; Shift+F11: large targets""";

    private KeyList() {}

    static String words() {
        StringBuilder words = new StringBuilder(FIRST);
        Tool[] tools = Tool.values();
        for (int i = 0; i < tools.length; i++)
            words.append(tools[i].key())
                    .append("  ")
                    .append(tools[i].words())
                    .append(i == tools.length - 1 ? "\n" : i % 6 == 5 ? "\n" : ";   ");
        return words.append(REST).toString();
    }

    /** The list as it is read on the screen: a head for each part, and a bar where there is no room for all. */
    static Node pane() {
        VBox parts = new VBox();
        parts.getStyleClass().add("tab-body");
        for (String part : words().split("\n\n")) {
            String[] headAndLines = part.strip().split("\n", 2);
            parts.getChildren()
                    .add(new VBox(2, Parts.label(headAndLines[0], "heading"), Parts.paragraph(headAndLines[1])));
        }
        ScrollPane scroll = new ScrollPane(parts);
        scroll.setFitToWidth(true);
        scroll.setPrefViewportWidth(WIDTH);
        scroll.setPrefViewportHeight(HEIGHT);
        scroll.setAccessibleText("Keys and mouse");
        scroll.getStyleClass().add("key-list");
        return scroll;
    }
}
