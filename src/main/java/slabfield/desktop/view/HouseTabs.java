package slabfield.desktop.view;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Supplier;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.control.Tooltip;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.HoleRow;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.work.JobStage.Place;

/** Beneath the map of the house: its tables, and what is to be known about it. */
final class HouseTabs extends TabPane {
    private final Guide guide;
    private final Workbench bench;
    private final FileActions files;
    private final TaskRunner painting;
    private final AfterMap afterMap;
    private final Runnable asked;
    private final Map<Place, Tab> places = new EnumMap<>(Place.class);

    /** @param asked done when something is shown here that was begun elsewhere, so that it is seen */
    HouseTabs(Guide guide, FileActions files, TaskRunner painting, AfterMap afterMap, Runnable asked) {
        this.guide = guide;
        this.bench = guide.bench();
        this.files = files;
        this.painting = painting;
        this.afterMap = afterMap;
        this.asked = asked;
        getStyleClass().add("house-tabs");
        setAccessibleText("Tables of the house");
        Tab holes = holes(), measures = measures(), system = system(), profile = profile(), checklist = checklist();
        Tab objects = tab("Objects", "Everything that is drawn, as a table", () -> new ObjectsTab(bench)),
                air = tab("Air", "Where the air in the exhaust comes from", () -> new AirTab(bench)),
                safety =
                        tab("Safety", "Cautions before you drill, core or start a fan", () -> NotesTab.cautions(bench));
        getTabs().setAll(holes, objects, problems(), measures, system, air, profile, doubts(), safety, checklist);
        places.put(Place.MEASURES, measures);
        places.put(Place.SYSTEM, system);
        places.put(Place.CHECKLIST, checklist);
    }

    /** Shows where something that a stage of the job lacks is done, if that is here. */
    void show(Place place) {
        if (places.containsKey(place)) show(places.get(place));
    }

    private void show(Tab tab) {
        getSelectionModel().select(tab);
        asked.run();
    }

    private Tab holes() {
        Tab tab = tab("Holes", "Test holes: prediction beside reading", () -> new HolesTab(bench));
        bench.readings().rows().addListener((ListChangeListener<HoleRow>)
                c -> tab.setText("Holes (" + bench.readings().rows().size() + ")"));
        return tab;
    }

    private Tab problems() {
        Tab tab = tab("Problems", "What stands in the drawing as it cannot", () -> new ProblemsTab(bench));
        bench.solving()
                .problems()
                .addListener((o, was, is) -> tab.setText(is.isEmpty() ? "Problems" : "Problems (" + is.size() + ")"));
        return tab;
    }

    private Tab measures() {
        Tab tab = tab(
                "Measures",
                "What sealing, coring or another fan would gain",
                () -> new AdviceTab(bench, guide.previews()));
        bench.advising().suggestions().addListener((ListChangeListener<Suggestion>) c -> tab.setText(
                c.getList().isEmpty() ? "Measures" : "Measures (" + c.getList().size() + ")"));
        bench.advising().search().searching().addListener((o, was, is) -> {
            if (is) show(tab);
        });
        return tab;
    }

    private Tab system() {
        Tab tab = tab("System", "Fans, pipes, worst day, seasons, cost", () -> new SystemTab(bench, painting));
        bench.sizing().search().searching().addListener((o, was, is) -> {
            if (is) show(tab);
        });
        return tab;
    }

    private Tab profile() {
        Tab tab = tab(
                "Profile",
                "Pressure along a line, and the pinned places",
                () -> new MarksTab(bench, guide.sight(), painting));
        guide.sight().cut().addListener((o, was, is) -> {
            if (is.isPresent()) show(tab);
        });
        return tab;
    }

    private Tab doubts() {
        Tab tab = tab("Doubts", "What this prediction may have wrong", () -> NotesTab.doubts(bench));
        bench.solving().picture().addListener((o, was, is) -> {
            if (!is.quick())
                tab.setText(is.solved()
                        .map(s -> "Doubts (" + s.doubts().size() + ")")
                        .orElse("Doubts"));
        });
        return tab;
    }

    private Tab checklist() {
        Tab tab = tab(
                "Checklist",
                "What must be asked before coring, start-up and hand-over",
                () -> new ChecklistTab(bench, files));
        tab.setOnSelectionChanged(e -> {
            if (tab.isSelected()) bench.checklist().reload();
        });
        return tab;
    }

    /** A tab whose content is made when it is first looked at, and the first map is there. */
    private Tab tab(String title, String help, Supplier<Node> content) {
        Tab tab = new Tab(title);
        tab.setTooltip(new Tooltip(help));
        tab.setClosable(false);
        tab.selectedProperty().addListener((o, was, is) -> {
            if (is)
                afterMap.then(() -> {
                    if (tab.getContent() == null) tab.setContent(content.get());
                });
        });
        return tab;
    }
}
