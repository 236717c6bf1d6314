package slabfield.io;

import java.util.List;

/** A kind of object in a file. */
interface ObjectKind {
    /** How messages call it. */
    String noun();

    /** Keys that must be there. */
    List<String> required();

    /** All keys, those that must be there first. */
    List<String> keys();
}
