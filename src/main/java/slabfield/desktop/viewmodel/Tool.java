package slabfield.desktop.viewmodel;

import slabfield.desktop.drawing.Layer;

/** What the pointer does on the plan. Each has a key of one letter. */
public enum Tool {
    SELECT(
            "Select",
            "V",
            Style.SELECT,
            Layer.SLABS,
            "Click or drag a thing, a corner, an edge; drag on empty ground to choose. F1 lists all keys."),
    OUTLINE(
            "Slab outline",
            "P",
            Style.AREA,
            Layer.SLABS,
            "Click the corners, or type a length and an angle; Enter or a click on the first corner closes."),
    RECTANGLE("Rectangle slab", "R", Style.RECTANGLE, Layer.SLABS, "Drag, or type width, Tab, depth, Enter."),
    CUT_OUT(
            "Cut-out",
            "X",
            Style.AREA,
            Layer.SLABS,
            "A hole in the slab: drag a rectangle or click its corners inside a slab."),
    ZONE("Fill zone", "Z", Style.AREA, Layer.FILL, "Ground with another fill: drag a rectangle or click the corners."),
    NO_DRILL(
            "No-drill area",
            "D",
            Style.AREA,
            Layer.NO_DRILL,
            "Where nothing may be cored: drag a rectangle or click the corners."),
    BARRIER(
            "Barrier",
            "B",
            Style.LINE,
            Layer.BARRIERS,
            "A footing or grade beam: drag one piece, or click the points and press Enter."),
    GAP("Gap", "G", Style.SPAN, Layer.BARRIERS, "An opening in a barrier: click its middle, or drag from end to end."),
    TILE(
            "Drain tile",
            "T",
            Style.LINE,
            Layer.DRAINS,
            "Click a slab's edge for a loop inside it; or drag one piece, or click the points and press Enter."),
    BREAK(
            "Tile break",
            "K",
            Style.SPAN,
            Layer.DRAINS,
            "Where a tile is broken: click its middle, or drag from end to end."),
    WALL(
            "Block wall",
            "W",
            Style.LINE,
            Layer.WALLS,
            "Click a slab's edge for a wall along it; or drag one piece, or click the points and press Enter."),
    JOINT(
            "Joint",
            "J",
            Style.LINE,
            Layer.LEAKS,
            "Click a slab's edge for the joint all round it; or drag one piece, or click the points and press Enter."),
    CRACK("Crack", "C", Style.LINE, Layer.LEAKS, "Drag one piece, or click the points and press Enter."),
    OPENING(
            "Spot opening",
            "O",
            Style.SPOT,
            Layer.LEAKS,
            "A sump, a pipe passage, a drain: click, or type x, Tab, y, Enter."),
    SUCTION(
            "Suction point",
            "S",
            Style.SPOT,
            Layer.SUCTION,
            "Click, or type x, Tab, y, Enter. On a tile it is teed into the tile."),
    HOLE("Test hole", "H", Style.SPOT, Layer.HOLES, "Click, or type x, Tab, y, Enter."),
    MEASURE("Measure", "M", Style.MEASURE, Layer.SLABS, "Click or drag from one place to another."),
    SCALE(
            "Scale picture",
            "U",
            Style.MEASURE,
            Layer.UNDERLAY,
            "Click both ends of something whose length you know, then type its length and press Enter."),
    CHECK(
            "Check length",
            "Y",
            Style.MEASURE,
            Layer.UNDERLAY,
            "Click both ends of another known length, then type it: the error of the picture's scale is shown.");

    /** How a tool takes places. */
    public enum Style {
        SELECT,
        AREA,
        RECTANGLE,
        LINE,
        SPAN,
        SPOT,
        MEASURE
    }

    private final String words;
    private final String key;
    private final Style style;
    private final Layer layer;
    private final String hint;

    Tool(String words, String key, Style style, Layer layer, String hint) {
        this.words = words;
        this.key = key;
        this.style = style;
        this.layer = layer;
        this.hint = hint;
    }

    public String words() {
        return words;
    }

    /** The letter that chooses it. */
    public String key() {
        return key;
    }

    public Style style() {
        return style;
    }

    /** Where it draws. */
    Layer layer() {
        return layer;
    }

    public String hint() {
        return hint;
    }
}
