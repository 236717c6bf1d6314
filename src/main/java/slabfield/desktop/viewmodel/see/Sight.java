package slabfield.desktop.viewmodel.see;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.desktop.viewmodel.Pins.Pin;
import slabfield.desktop.viewmodel.Probe;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.AirPaths;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.DoubtLayer;
import slabfield.figure.Figure;
import slabfield.figure.FlowArrows;
import slabfield.figure.MapFigure;
import slabfield.figure.MapFoot;
import slabfield.figure.MapStyle;
import slabfield.figure.MarksLayer;
import slabfield.figure.MeasuredLayer;
import slabfield.figure.OriginLayer;
import slabfield.figure.PlanLayer;
import slabfield.figure.Profile;
import slabfield.figure.Streamlines;
import slabfield.figure.VacuumMap;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;

/** What is laid over the map, and what somebody marked on it. */
public final class Sight {
    /** What the colours of the map show. */
    public enum Show {
        PRESSURE("pressure"),
        ORIGIN("air origin"),
        MEASURED("measured"),
        /** What was last looked at under Findings. */
        FINDING("finding");

        private final String words;

        Show(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** How the moving air is drawn. */
    public enum Flow {
        NONE("none"),
        ARROWS("arrows"),
        PATHS("paths");

        private final String words;

        Flow(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** What a press on the map marks. */
    public enum Marking {
        /** Nothing: the map is moved as ever. */
        NONE,
        PIN,
        PROFILE
    }

    /** What follows the air. */
    public interface Tracer {
        Optional<AirPaths> trace(Scenario scenario, Progress progress);
    }

    /**
     * A pinned place as it is listed.
     *
     * @param value pressure there now, in the units chosen
     */
    public record PinRow(Pin pin, String value, String place, String what) {}

    private record Traced(Result.Solved solved, AirPaths paths) {}

    private static final double NEAR = 0.25;

    private final Workbench bench;
    private final Tracer tracer;
    private final TaskRunner runner;
    private final ObjectProperty<Show> show = new SimpleObjectProperty<>(Show.PRESSURE);
    private final ObjectProperty<Flow> flow = new SimpleObjectProperty<>(Flow.NONE);
    private final BooleanProperty doubts = new SimpleBooleanProperty();
    private final ObjectProperty<Marking> marking = new SimpleObjectProperty<>(Marking.NONE);
    private final ObservableList<PinRow> rows = FXCollections.observableArrayList();
    private final ObjectProperty<Optional<Profile>> cut = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<List<PlanLayer>> finding = new SimpleObjectProperty<>(List.of());
    private final ReadOnlyObjectWrapper<List<PlanLayer>> layers = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyObjectWrapper<Optional<AirPaths>> paths = new ReadOnlyObjectWrapper<>(Optional.empty());
    private Optional<Traced> traced = Optional.empty();
    private Optional<Result> asked = Optional.empty();
    private Optional<TaskRunner.Task> running = Optional.empty();
    private boolean busy;
    private int grabbed;

    public Sight(Workbench bench, Tracer tracer, TaskRunner runner) {
        this.bench = bench;
        this.tracer = tracer;
        this.runner = runner;
        bench.document().opened().addListener((o, was, is) -> forget());
        bench.solving().picture().addListener((o, was, is) -> update());
        bench.look().style().addListener((o, was, is) -> update());
        bench.readings().stage().addListener((o, was, is) -> update());
        show.addListener((o, was, is) -> update());
        flow.addListener((o, was, is) -> update());
        doubts.addListener((o, was, is) -> update());
        cut.addListener((o, was, is) -> update());
        finding.addListener((o, was, is) -> update());
        bench.document().pins().addListener((o, was, is) -> update());
        update();
    }

    /** What the colours show. */
    public ObjectProperty<Show> show() {
        return show;
    }

    /** Layers of what was last looked at under Findings, with a foot of their own; empty for none. */
    public ObjectProperty<List<PlanLayer>> finding() {
        return finding;
    }

    /** How the moving air is drawn. */
    public ObjectProperty<Flow> flow() {
        return flow;
    }

    /** Whether hatches mark where the map rests on more than is known. */
    public BooleanProperty doubts() {
        return doubts;
    }

    /** What is laid over the map now. */
    public ReadOnlyObjectProperty<List<PlanLayer>> layers() {
        return layers.getReadOnlyProperty();
    }

    /** What the map was asked to show and cannot, in words; empty where it shows it. */
    public String missing() {
        return switch (show.get()) {
            case MEASURED ->
                bench.readings().stage().get().isPresent() ? "" : "No readings yet: this is the prediction";
            case FINDING -> finding.get().isEmpty() ? "Nothing found yet: this is the prediction" : "";
            case PRESSURE, ORIGIN -> "";
        };
    }

    /** The map as it is seen, as a figure to export; it has title, key and scale of its own. */
    public Figure figure() {
        return new MapFigure(
                bench.solving().picture().get().result(),
                bench.look().style().get().withFontScale(1),
                layers.get().stream().filter(l -> !(l instanceof MapFoot)).toList());
    }

    /** What a press on the map marks; after one mark it is nothing again. */
    public ObjectProperty<Marking> marking() {
        return marking;
    }

    /** The air's paths as last followed; empty before that. */
    public ReadOnlyObjectProperty<Optional<AirPaths>> paths() {
        return paths.getReadOnlyProperty();
    }

    /** The pins with what is there now. */
    public ObservableList<PinRow> rows() {
        return rows;
    }

    /** The pin next to a place, if one is as near as that [m]. */
    public Optional<Pin> pinAt(Point at, double reach) {
        return bench.document().pins().get().all().stream()
                .filter(p -> p.at().distanceTo(at) <= reach)
                .min(Comparator.comparingDouble(p -> p.at().distanceTo(at)));
    }

    /** Pins a place, as a step that can be undone. */
    public void pin(Point at) {
        bench.document().pin(at);
    }

    /** Takes a pin away, as a step that can be undone. */
    public void unpin(Pin pin) {
        bench.document().unpin(pin.number());
    }

    /** From now on a pin is moved as another step of the history. */
    public void grabPin() {
        grabbed++;
    }

    /** Moves a pin; all moves since it was last grabbed are one step. */
    public void movePin(Pin pin, Point to) {
        bench.document().movePin(pin.number(), to, grabbed);
    }

    /** The line whose profile is shown; empty for none. */
    public ObjectProperty<Optional<Profile>> cut() {
        return cut;
    }

    private void forget() {
        running.ifPresent(TaskRunner.Task::cancel);
        traced = Optional.empty();
        asked = Optional.empty();
        busy = false;
        paths.set(Optional.empty());
        cut.set(Optional.empty());
        marking.set(Marking.NONE);
    }

    private boolean needsPaths() {
        return show.get() == Show.ORIGIN || flow.get() != Flow.NONE;
    }

    private void update() {
        Solving.Picture picture = bench.solving().picture().get();
        if (needsPaths()) picture.solved().ifPresent(this::follow);
        rows.setAll(bench.document().pins().get().all().stream()
                .map(p -> row(p, picture.result()))
                .toList());
        layers.set(laid(picture.result()));
    }

    /**
     * Follows the air of a prediction, once; what was followed before stays until then. In a drag the next one waits until
     * the one under way is done, so that the air moves along too.
     */
    private void follow(Result.Solved solved) {
        if (asked.filter(a -> a == solved).isPresent()) return;
        if (busy && bench.solving().dragging().get()) return;
        asked = Optional.of(solved);
        running.ifPresent(TaskRunner.Task::cancel);
        busy = true;
        running = Optional.of(runner.run(
                progress -> tracer.trace(solved.scenario(), progress), new TaskRunner.Outcome<>() {
                    @Override
                    public void done(Optional<AirPaths> found) {
                        if (asked.filter(a -> a == solved).isEmpty()) return;
                        busy = false;
                        if (found.isEmpty()) return;
                        traced = Optional.of(new Traced(solved, found.get()));
                        paths.set(found);
                        update();
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (asked.filter(a -> a == solved).isEmpty()) return;
                        busy = false;
                        paths.set(Optional.empty());
                    }
                }));
    }

    private List<PlanLayer> laid(Result result) {
        MapStyle style = bench.look().style().get();
        if (show.get() == Show.FINDING && !finding.get().isEmpty()) return finding.get();
        List<PlanLayer> out = new ArrayList<>();
        Optional<Result.Solved> solved = result instanceof Result.Solved s ? Optional.of(s) : Optional.empty();
        Optional<Stage> stage = bench.readings().stage().get();
        boolean measured = show.get() == Show.MEASURED && stage.isPresent() && solved.isPresent();
        if (show.get() == Show.ORIGIN && solved.isPresent())
            traced.ifPresent(t -> out.add(new OriginLayer(t.paths(), t.solved(), style)));
        if (measured)
            out.add(new MeasuredLayer(
                    result.scenario(), stage.get(), VacuumMap.scale(solved.get(), style), style.units()));
        if (solved.isPresent() && !measured) {
            if (doubts.get()) out.add(new DoubtLayer(solved.get(), SlabSolver.DARCY_DOUBTFUL, style));
            traced.filter(t -> flow.get() == Flow.ARROWS).ifPresent(t -> out.add(new FlowArrows(t.paths())));
            traced.filter(t -> flow.get() == Flow.PATHS).ifPresent(t -> out.add(new Streamlines(t.paths())));
        }
        if (!rows.isEmpty() || cut.get().isPresent())
            out.add(new MarksLayer(
                    rows.stream()
                            .map(r -> new MarksLayer.Mark(
                                    r.pin().at(), r.pin().number() + (measured ? "" : ": " + r.value())))
                            .toList(),
                    cut.get()));
        String stamp = measured
                ? "MEASURED"
                : solved.isPresent() ? "PREDICTED" : result.scenario().slabs().isEmpty() ? "" : "NOT SOLVED";
        out.add(new MapFoot(stamp, style.units(), result.scenario().plan().north()));
        return List.copyOf(out);
    }

    private PinRow row(Pin pin, Result result) {
        Units units = bench.units();
        Probe probe = Probe.at(result, pin.at(), NEAR);
        String value =
                probe.pressure().isPresent() ? units.pressure(probe.pressure().getAsDouble()) : "no pressure";
        return new PinRow(pin, value, units.place(pin.at()), String.join(", ", probe.what()));
    }
}
