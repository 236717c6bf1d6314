package slabfield.validation;

import java.nio.file.Path;
import java.util.List;

/** A case folder that cannot be run, with everything that is wrong with it. */
public final class CaseProblem extends Exception {
    private static final long serialVersionUID = 1L;

    CaseProblem(Path folder, List<String> problems) {
        super(folder.getFileName() + ": " + String.join("; ", problems));
    }

    CaseProblem(String message) {
        super(message);
    }
}
