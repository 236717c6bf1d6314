package slabfield.desktop.viewmodel.find;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;

/** What readings and drawing together tell: pages of questions, of which one is looked at. */
public final class Findings {
    private final Workbench bench;
    private final List<Page> pages;
    private final Glances glances;
    private final ObjectProperty<Page> page;
    private final ObjectProperty<String> view;
    private final Map<Page, String> views = new HashMap<>();
    private final BooleanProperty watched = new SimpleBooleanProperty();
    private final ReadOnlyObjectWrapper<Sheet> sheet = new ReadOnlyObjectWrapper<>(Sheet.EMPTY);
    private final ReadOnlyObjectWrapper<Optional<Picture>> picture = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
    private Optional<Laid> laid = Optional.empty();
    private final ReadOnlyObjectWrapper<Optional<Picture.Plan>> layer = new ReadOnlyObjectWrapper<>(Optional.empty());

    /** A picture that lies over the map of the house too. */
    private record Laid(Page page, String view) {}

    /**
     * @param solver of houses that are pointed at
     * @param finds runs the long work, one after the other
     * @param looks runs solves of what is pointed at
     */
    public Findings(Workbench bench, Solving.Solver solver, TaskRunner finds, TaskRunner looks) {
        this.bench = bench;
        Explained explained = new Explained();
        pages = List.of(
                new ComparePage(bench),
                new DiagnosisPage(bench, finds),
                new FitPage(bench, explained, finds),
                new NextHolePage(bench, explained, finds),
                new LeakPage(bench, explained, finds),
                new PlacementPage(bench, finds),
                new MeasuresPage(bench, explained, finds),
                new PlansPage(bench, finds),
                new CoversPage(bench, finds));
        glances = new Glances(bench.document(), solver, looks);
        page = new SimpleObjectProperty<>(pages.get(0));
        view = new SimpleObjectProperty<>(pages.get(0).views().get(0));
        listen();
    }

    private void listen() {
        for (Page p : pages)
            for (Job j : p.jobs()) {
                j.search().found().addListener((o, was, is) -> changed(p));
                j.search().outOfDate().addListener((o, was, is) -> changed(p));
            }
        page.addListener((o, was, is) -> turn(was, is));
        view.addListener((o, was, is) -> draw());
        watched.addListener((o, was, is) -> all());
        glances.shown().addListener((o, was, is) -> draw());
        bench.units().shown().addListener((o, was, is) -> all());
        bench.look().style().addListener((o, was, is) -> {
            draw();
            lay();
        });
        bench.readings().comparison().addListener((o, was, is) -> all());
        bench.readings().note().addListener((o, was, is) -> all());
        bench.document().opened().addListener((o, was, is) -> glances.point(Optional.empty()));
        bench.solving().picture().addListener((o, was, is) -> {
            if (is.state() != Solving.State.SOLVING) all();
        });
    }

    private void changed(Page p) {
        if (p == page.get()) all();
        if (laid.filter(l -> l.page() == p).isPresent()) lay();
    }

    /** The layer over the map of the house as it is now; none where its page has lost what it found. */
    private void lay() {
        layer.set(laid.flatMap(l -> l.page().picture(l.view(), Optional.empty()))
                .map(p -> p instanceof Picture.Plan plan && plan.layered() ? plan : null));
    }

    private void turn(Page was, Page is) {
        views.put(was, view.get());
        glances.point(Optional.empty());
        view.set(views.getOrDefault(is, is.views().get(0)));
        all();
    }

    private void all() {
        if (!watched.get()) return;
        stale.set(page.get().stale());
        sheet.set(page.get().sheet());
        draw();
    }

    private void draw() {
        if (!watched.get() || !page.get().views().contains(view.get())) return;
        picture.set(page.get().picture(view.get(), glances.shown().get()));
        if (picture.get().orElse(null) instanceof Picture.Plan plan && plan.layered()) {
            laid = Optional.of(new Laid(page.get(), view.get()));
            layer.set(Optional.of(plan));
        }
    }

    /** In the order of a job. */
    public List<Page> pages() {
        return pages;
    }

    /** The page that is looked at. */
    public ObjectProperty<Page> page() {
        return page;
    }

    /** The picture of the page that is looked at, by its name. */
    public ObjectProperty<String> view() {
        return view;
    }

    /** True while somebody looks; only then is anything drawn. */
    public BooleanProperty watched() {
        return watched;
    }

    public ReadOnlyObjectProperty<Sheet> sheet() {
        return sheet.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<Optional<Picture>> picture() {
        return picture.getReadOnlyProperty();
    }

    /** True where the page belongs to an earlier state of the house. */
    public ReadOnlyBooleanProperty stale() {
        return stale.getReadOnlyProperty();
    }

    /** The layer that was last looked at here, for the map of the house; empty before. */
    public ReadOnlyObjectProperty<Optional<Picture.Plan>> layer() {
        return layer.getReadOnlyProperty();
    }

    /** Somebody points at a row, or at none. */
    public void point(Optional<Sheet.Row> row) {
        glances.point(row.flatMap(Sheet.Row::subject));
    }
}
