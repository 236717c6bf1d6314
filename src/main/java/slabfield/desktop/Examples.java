package slabfield.desktop;

import java.util.AbstractList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import slabfield.desktop.viewmodel.Example;
import slabfield.io.ExampleScenarios;

/** The houses that come with the program, each read when it is first asked for, so that the window need not wait for all. */
final class Examples extends AbstractList<Example> {
    private final List<String> files = ExampleScenarios.files();
    private final Map<Integer, Example> read = new HashMap<>();

    @Override
    public Example get(int index) {
        return read.computeIfAbsent(index, i -> i == 0 ? FirstHouse.example() : FirstHouse.read(files.get(i)));
    }

    @Override
    public int size() {
        return files.size();
    }
}
