package slabfield.io;

import java.util.Comparator;
import java.util.List;

/** A scenario file that cannot be used, with all its problems at once. */
public final class ScenarioProblems extends Exception {
    private static final long serialVersionUID = 1L;
    private static final int SHOWN = 100;

    private final transient List<FileProblem> problems;

    /** Problems of one file, at least one; they are put in the order of their lines. */
    ScenarioProblems(String file, List<FileProblem> problems) {
        super(text(file, sorted(problems)));
        this.problems = sorted(problems);
    }

    /** In the order of their lines. */
    public List<FileProblem> problems() {
        return problems;
    }

    /** The whole list as the user reads it. */
    @Override
    public String toString() {
        return getMessage();
    }

    private static List<FileProblem> sorted(List<FileProblem> problems) {
        return problems.stream()
                .sorted(Comparator.comparingInt(FileProblem::line))
                .toList();
    }

    private static String text(String file, List<FileProblem> problems) {
        List<FileProblem> shown = problems.subList(0, Math.min(SHOWN, problems.size()));
        int lineWidth = shown.stream()
                .mapToInt(p -> String.valueOf(p.line()).length())
                .max()
                .orElse(1);
        int pointerWidth =
                shown.stream().mapToInt(p -> p.pointer().length()).max().orElse(1);
        StringBuilder text = new StringBuilder(file)
                .append(problems.size() == 1 ? " has 1 problem:" : " has " + problems.size() + " problems:");
        for (FileProblem p : shown) {
            text.append("\n  ");
            if (p.line() > 0) text.append(String.format("line %-" + lineWidth + "d  ", p.line()));
            if (pointerWidth > 0) text.append(String.format("%-" + pointerWidth + "s   ", p.pointer()));
            text.append(p.message());
            if (!p.message().matches("(?s).*[.?!]")) text.append('.');
        }
        if (shown.size() < problems.size())
            text.append("\n  and ").append(problems.size() - SHOWN).append(" more.");
        return text.toString();
    }
}
