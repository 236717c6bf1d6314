package slabfield.safety;

import java.util.List;

/** Something that a record does not allow yet, with all reasons. */
public final class Blocked extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<String> reasons;

    Blocked(String what, List<String> reasons) {
        super(what + "\n  " + String.join("\n  ", reasons));
        this.reasons = List.copyOf(reasons);
    }

    /** Plain sentences, at least one. */
    public List<String> reasons() {
        return reasons;
    }
}
