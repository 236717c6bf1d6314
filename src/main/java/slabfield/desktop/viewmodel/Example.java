package slabfield.desktop.viewmodel;

import slabfield.model.Scenario;

/**
 * A house that comes with the program.
 *
 * @param file its name without a folder
 */
public record Example(String file, Scenario scenario) {
    public String name() {
        return scenario.name();
    }

    /** What a learner sees in it. */
    public String teaches() {
        return scenario.teaches();
    }
}
