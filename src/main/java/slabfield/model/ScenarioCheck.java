package slabfield.model;

import java.util.ArrayList;
import java.util.List;

/** Finds what cannot be so between the things drawn; each thing by itself is checked where it is made. */
public final class ScenarioCheck {
    private ScenarioCheck() {}

    /** All problems of a house: names first, then places on the plan, then slabs that nothing draws from. */
    public static List<Problem> problems(Scenario scenario) {
        if (scenario.slabs().isEmpty()) return List.of(new Problem("/slabs", "there is no slab yet; draw its outline"));
        List<Problem> problems = new ArrayList<>(NameCheck.problems(scenario));
        List<Problem> outlines = OutlineCheck.problems(scenario);
        problems.addAll(outlines);
        if (!outlines.isEmpty()) return problems;
        problems.addAll(new PlanCheck(scenario).problems());
        problems.addAll(ReachCheck.problems(scenario));
        return problems;
    }
}
