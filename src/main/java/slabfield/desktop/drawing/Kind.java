package slabfield.desktop.drawing;

/** What a drawn thing is. */
public enum Kind {
    UNDERLAY("picture", Layer.UNDERLAY),
    SLAB("slab", Layer.SLABS),
    CUT_OUT("cut-out", Layer.SLABS),
    ZONE("zone", Layer.FILL),
    TILE("tile", Layer.DRAINS),
    TILE_BREAK("break", Layer.DRAINS),
    WATER("water-filled stretch", Layer.DRAINS),
    BARRIER("barrier", Layer.BARRIERS),
    GAP("gap", Layer.BARRIERS),
    WALL("wall", Layer.WALLS),
    OPENING("opening", Layer.LEAKS),
    NO_DRILL("no-drill area", Layer.NO_DRILL),
    HOLE("test hole", Layer.HOLES),
    SUCTION("suction point", Layer.SUCTION);

    private final String word;
    private final Layer layer;

    Kind(String word, Layer layer) {
        this.word = word;
        this.layer = layer;
    }

    public String word() {
        return word;
    }

    public Layer layer() {
        return layer;
    }

    /** True for what is a piece of something else and has no name of its own. */
    public boolean isPart() {
        return this == CUT_OUT || this == TILE_BREAK || this == WATER || this == GAP;
    }
}
