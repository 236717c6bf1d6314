package slabfield.desktop.viewmodel.compare;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.desktop.viewmodel.Document;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.io.ScenarioProblems;
import slabfield.io.VariantsFile;
import slabfield.model.Scenario;

/**
 * Named variants of the house that is open, a small tree. The document shows one of them; each has its own undo. They are
 * saved beside the scenario file whenever that is saved.
 */
public final class Variants {
    /** What the first variant of a house is called. */
    public static final String FIRST = "as drawn";

    /**
     * A variant as it is listed.
     *
     * @param id number that it keeps
     * @param depth how many variants it stands under
     * @param current whether the document shows it
     */
    public record Row(int id, String name, int depth, boolean current, Scenario scenario) {}

    private static final class Node {
        final int id;
        final int parent;
        String name;
        Document.Line line;

        Node(int id, int parent, String name, Document.Line line) {
            this.id = id;
            this.parent = parent;
            this.name = name;
            this.line = line;
        }
    }

    private static final int NONE = -1;

    private final Document document;
    private final Consumer<Workbench.Trouble> trouble;
    private final List<Node> nodes = new ArrayList<>();
    private final ObservableList<Row> rows = FXCollections.observableArrayList();
    private final ReadOnlyIntegerWrapper current = new ReadOnlyIntegerWrapper();
    private int last;
    private boolean switching;

    public Variants(Document document, Consumer<Workbench.Trouble> trouble) {
        this.document = document;
        this.trouble = trouble;
        document.opened().addListener((o, was, is) -> load());
        document.scenario().addListener((o, was, is) -> {
            if (!switching) list();
        });
        document.saves().addListener((o, was, is) -> save());
        load();
    }

    /** Depth first, so that each stands under the one that it branched from. */
    public ObservableList<Row> rows() {
        return rows;
    }

    /** Id of the variant that the document shows. */
    public ReadOnlyIntegerProperty current() {
        return current.getReadOnlyProperty();
    }

    public Optional<Row> row(int id) {
        return rows.stream().filter(r -> r.id() == id).findFirst();
    }

    /** Branches from the variant that is shown, and shows the branch. Its name is made unique. */
    public void branch(String name) {
        Node from = node(current.get());
        Node branch = new Node(
                ++last,
                from.id,
                free(name),
                Document.Line.of(document.scenario().get()));
        nodes.add(branch);
        document.changedBeside();
        show(branch);
    }

    /** Gives a variant another name, made unique; a blank one changes nothing. */
    public void rename(int id, String name) {
        Node node = node(id);
        if (name.isBlank() || name.strip().equals(node.name)) return;
        node.name = "";
        node.name = free(name);
        document.changedBeside();
        list();
    }

    /** Shows a variant. */
    public void switchTo(int id) {
        if (id == current.get()) return;
        document.changedBeside();
        show(node(id));
    }

    /** Takes a variant away; those that branched from it go to the one that it branched from. The one shown stays. */
    public void delete(int id) {
        if (id == current.get() || nodes.size() == 1) return;
        Node gone = node(id);
        nodes.remove(gone);
        nodes.replaceAll(n -> {
            if (n.parent != id) return n;
            return new Node(n.id, gone.parent, n.name, n.line);
        });
        document.changedBeside();
        list();
    }

    private Node node(int id) {
        return nodes.stream().filter(n -> n.id == id).findFirst().orElseThrow();
    }

    private void show(Node node) {
        current.set(node.id);
        switching = true;
        document.resume(node.line);
        switching = false;
        list();
    }

    private String free(String wanted) {
        String name = wanted.isBlank() ? "variant" : wanted.strip(), free = name;
        for (int k = 2; taken(free); k++) free = name + " " + k;
        return free;
    }

    private boolean taken(String name) {
        return nodes.stream().anyMatch(n -> n.name.equals(name));
    }

    private void list() {
        node(current.get()).line = document.line();
        List<Row> out = new ArrayList<>();
        for (Node n : nodes) if (n.parent == NONE) under(n, 0, out);
        rows.setAll(out);
    }

    private void under(Node node, int depth, List<Row> out) {
        boolean shown = node.id == current.get();
        out.add(new Row(
                node.id, node.name, depth, shown, shown ? document.scenario().get() : node.line.scenario()));
        for (Node n : nodes) if (n.parent == node.id) under(n, depth + 1, out);
    }

    /** Takes the variants that stand beside a file just opened; the document's scenario is that of the current one. */
    private void load() {
        nodes.clear();
        last = 0;
        Optional<Path> beside = document.file().get().map(VariantsFile::beside).filter(Files::exists);
        if (beside.isPresent())
            try {
                take(VariantsFile.read(beside.get()));
            } catch (ScenarioProblems problems) {
                trouble.accept(
                        new Workbench.Trouble("The variants of this house cannot be read", problems.getMessage()));
                nodes.clear();
            }
        if (nodes.isEmpty()) {
            nodes.add(new Node(last, NONE, FIRST, document.line()));
            current.set(last);
        }
        list();
    }

    private void take(VariantsFile.Variants variants) {
        for (VariantsFile.Variant v : variants.all()) {
            int parent = v.parent()
                    .map(p -> nodes.stream()
                            .filter(n -> n.name.equals(p))
                            .findFirst()
                            .orElseThrow()
                            .id)
                    .orElse(NONE);
            nodes.add(new Node(last, parent, v.name(), Document.Line.of(v.scenario())));
            if (v.name().equals(variants.current())) current.set(last);
            last++;
        }
    }

    private void save() {
        Path beside = VariantsFile.beside(document.file().get().orElseThrow());
        if (nodes.size() == 1 && !Files.exists(beside)) return;
        List<VariantsFile.Variant> all = rows.stream()
                .map(r -> new VariantsFile.Variant(r.name(), parentOf(r.id()), r.scenario()))
                .toList();
        try {
            VariantsFile.write(beside, new VariantsFile.Variants(all, node(current.get()).name));
        } catch (IOException reason) {
            trouble.accept(new Workbench.Trouble("The variants cannot be saved", reason.getMessage()));
        }
    }

    private Optional<String> parentOf(int id) {
        int parent = node(id).parent;
        return parent == NONE ? Optional.empty() : Optional.of(node(parent).name);
    }
}
