package slabfield.desktop.drawing;

/**
 * Names one drawn thing of a scenario.
 *
 * @param kind what it is
 * @param id what the user calls it; for a part, what the user calls that which it is a part of
 * @param part which of the parts, counted from 0; 0 for what is no part
 */
public record Item(Kind kind, String id, int part) {
    public Item {
        if (part < 0) throw new IllegalArgumentException("parts are counted from 0");
    }

    public static Item of(Kind kind, String id) {
        return new Item(kind, id, 0);
    }

    /** In the user's words, such as "gap 2 of footing". */
    public String title() {
        if (kind == Kind.UNDERLAY) return "picture to trace";
        if (kind.isPart()) return kind.word() + " " + (part + 1) + " of " + id;
        return id.toLowerCase(java.util.Locale.ROOT).contains(kind.word()) ? id : kind.word() + " " + id;
    }
}
