package slabfield.model;

/** What an opening through the slab is. The word decides nothing in the flow model; it is for people. */
public enum OpeningKind {
    SUMP("sump"),
    JOINT("joint"),
    CRACK("crack"),
    PENETRATION("penetration"),
    BLOCK_OUT("block-out"),
    FLOOR_DRAIN("floor drain"),
    OTHER("other");

    private final String word;

    OpeningKind(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
