package slabfield.io;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import slabfield.quantity.Unit;

/** What is known while one scenario file is read: its lines, its unit of length and the problems so far. */
final class FileReading {
    private static final Pattern IN_LIST = Pattern.compile("(/layer/zones|/[^/]+)/(\\d+)(.*)");

    /** More are counted, but not kept: nobody reads them. */
    private static final int MOST_PROBLEMS = 1000;

    private final String file;
    private final JsonTree tree;
    private final List<FileProblem> problems = new ArrayList<>();
    private final Map<String, List<Integer>> kept = new HashMap<>();
    private int count;
    private Unit lengthUnit = Unit.METRE;

    FileReading(String file, JsonTree tree) {
        this.file = file;
        this.tree = tree;
    }

    void add(String pointer, String message) {
        count++;
        if (count <= MOST_PROBLEMS) problems.add(new FileProblem(file, tree.line(pointer), pointer, message));
    }

    List<FileProblem> problems() {
        return List.copyOf(problems);
    }

    int count() {
        return count;
    }

    void throwIfAny() throws ScenarioProblems {
        if (!problems.isEmpty()) throw new ScenarioProblems(file, problems);
    }

    Unit lengthUnit() {
        return lengthUnit;
    }

    void lengthUnit(Unit unit) {
        lengthUnit = unit;
    }

    /** Notes which entries of a list could be made, by their place in the file. */
    void kept(String list, List<Integer> places) {
        kept.put(list, List.copyOf(places));
    }

    /** Pointer into the file for a pointer into what could be made of it. */
    String inFile(String pointer) {
        Matcher parts = IN_LIST.matcher(pointer);
        if (!parts.matches() || !kept.containsKey(parts.group(1))) return pointer;
        int place = kept.get(parts.group(1)).get(Integer.parseInt(parts.group(2)));
        return parts.group(1) + "/" + place + parts.group(3);
    }
}
