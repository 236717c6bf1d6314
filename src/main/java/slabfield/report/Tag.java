package slabfield.report;

import java.util.Optional;

/** An element of a document's structure, known by itself and not by what it holds: two paragraphs are two tags. */
final class Tag {
    private final String type;
    private final String alternative;
    private final Optional<Tag> parent;

    private Tag(String type, String alternative, Optional<Tag> parent) {
        this.type = type;
        this.alternative = alternative;
        this.parent = parent;
    }

    static Tag of(String type) {
        return new Tag(type, "", Optional.empty());
    }

    /** A figure with the words that stand for it. */
    static Tag figure(String alternative) {
        return new Tag("Figure", alternative, Optional.empty());
    }

    Tag child(String childType) {
        return new Tag(childType, "", Optional.of(this));
    }

    /** Standard structure type, such as "P" or "TD". */
    String type() {
        return type;
    }

    String alternative() {
        return alternative;
    }

    Optional<Tag> parent() {
        return parent;
    }
}
