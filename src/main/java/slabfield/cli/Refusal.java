package slabfield.cli;

import java.util.List;

/** Why a verb does not do what it was asked, in the user's words; all reasons at once. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;

    private final Exit exit;

    Refusal(Exit exit, List<String> reasons) {
        super(String.join("\n", reasons));
        this.exit = exit;
    }

    Refusal(Exit exit, String reason) {
        this(exit, List.of(reason));
    }

    Exit exit() {
        return exit;
    }
}
