package slabfield.field;

/** What a cell of the grid is. */
public enum CellKind {
    /** Not under any slab. */
    OUTSIDE,
    /** Layer that air moves through, with a pressure of its own. */
    LAYER,
    /** Covered by a barrier that is not permeable. */
    BARRIER,
    /** Inside the disc of a suction pit or of a point opening, at that one pressure. */
    DISC,
    /** Layer from which no boundary can be reached; it has no pressure. */
    UNREACHED
}
