package slabfield.desktop.viewmodel.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.field.Result;
import slabfield.figure.VacuumScale;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver.Extent;

/**
 * All variants of a house side by side: each is solved in the background as soon as it is looked at, one after the other,
 * and again only when it changes. Two of them are compared on one scale.
 */
public final class Options {
    /** How two variants are compared. */
    public enum Mode {
        DIVIDER("one over the other"),
        CHANGE("the change");

        private final String words;

        Mode(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * A variant in the table.
     *
     * @param cells weakest place, area on target, exhaust, room air, power, cost of a year, in the units chosen
     * @param note why there are no numbers, or what makes it hard to compare with the first
     */
    public record Row(int id, String name, List<String> cells, String note) {}

    /** A pair to be drawn. */
    public record Pair(Variants.Row before, Variants.Row after, Result.Solved one, Result.Solved other) {}

    private static final int MOST_KEPT = 40;
    private static final String NONE = "\u2013";

    private final Variants variants;
    private final Units units;
    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final Map<Scenario, Result> solved = new HashMap<>();
    private final Map<Scenario, String> failed = new HashMap<>();
    private final ObservableList<Row> rows = FXCollections.observableArrayList();
    private final BooleanProperty watched = new SimpleBooleanProperty();
    private final IntegerProperty before = new SimpleIntegerProperty();
    private final IntegerProperty after = new SimpleIntegerProperty();
    private final ObjectProperty<Mode> mode = new SimpleObjectProperty<>(Mode.DIVIDER);
    private final DoubleProperty divider = new SimpleDoubleProperty(0.5);
    private final ObjectProperty<Optional<Pair>> pair = new SimpleObjectProperty<>(Optional.empty());
    private Optional<Scenario> underWay = Optional.empty();

    public Options(Variants variants, Units units, Solving.Solver solver, TaskRunner runner) {
        this.variants = variants;
        this.units = units;
        this.solver = solver;
        this.runner = runner;
        variants.rows().addListener((ListChangeListener<Variants.Row>) c -> update());
        units.shown().addListener((o, was, is) -> update());
        watched.addListener((o, was, is) -> {
            if (is) choosePair();
            update();
        });
        before.addListener((o, was, is) -> update());
        after.addListener((o, was, is) -> update());
        update();
    }

    /** True while somebody looks; only then is anything solved. */
    public BooleanProperty watched() {
        return watched;
    }

    public ObservableList<Row> rows() {
        return rows;
    }

    /** Id of the variant that counts as before. */
    public IntegerProperty before() {
        return before;
    }

    /** Id of the variant that counts as after. */
    public IntegerProperty after() {
        return after;
    }

    public ObjectProperty<Mode> mode() {
        return mode;
    }

    /** Part of the width that shows the variant before, 0 to 1. */
    public DoubleProperty divider() {
        return divider;
    }

    /** Moves the divider by a part of the width, held to its ends. */
    public void moveDivider(double by) {
        divider.set(Math.max(0, Math.min(1, divider.get() + by)));
    }

    /** The two variants with their predictions; empty until both are solved. */
    public ObjectProperty<Optional<Pair>> pair() {
        return pair;
    }

    /** One range that holds both predictions of a pair. */
    public static Range shared(Pair pair, Sense sense, double unit) {
        Range one = VacuumScale.rangeOf(pair.one().field(), sense, unit),
                other = VacuumScale.rangeOf(pair.other().field(), sense, unit);
        return new Range(Math.min(one.low(), other.low()), Math.max(one.high(), other.high()));
    }

    /** The variant shown against the one that it branched from, or the first against the last. */
    private void choosePair() {
        List<Variants.Row> all = variants.rows();
        if (all.size() < 2) return;
        int shown = variants.current().get();
        boolean stands = variants.row(before.get()).isPresent()
                && variants.row(after.get()).isPresent()
                && before.get() != after.get();
        if (stands) return;
        before.set(all.get(0).id());
        after.set(shown != all.get(0).id() ? shown : all.get(all.size() - 1).id());
    }

    private void update() {
        solved.keySet()
                .removeIf(s -> solved.size() > MOST_KEPT
                        && variants.rows().stream().noneMatch(r -> r.scenario().equals(s)));
        rows.setAll(variants.rows().stream().map(this::row).toList());
        pair.set(found());
        if (watched.get()) next();
    }

    private Optional<Pair> found() {
        Optional<Variants.Row> one = variants.row(before.get()), other = variants.row(after.get());
        if (one.isEmpty() || other.isEmpty() || one.get().id() == other.get().id()) return Optional.empty();
        if (!(solved.get(one.get().scenario()) instanceof Result.Solved a)
                || !(solved.get(other.get().scenario()) instanceof Result.Solved b)) return Optional.empty();
        return Optional.of(new Pair(one.get(), other.get(), a, b));
    }

    private void next() {
        if (underWay.isPresent()) return;
        Optional<Scenario> waits = variants.rows().stream()
                .map(Variants.Row::scenario)
                .filter(s -> !solved.containsKey(s) && !failed.containsKey(s))
                .findFirst();
        if (waits.isEmpty()) return;
        Scenario scenario = waits.get();
        underWay = waits;
        runner.run(progress -> solver.solve(scenario, Extent.FAN_ON_ONLY, progress), new TaskRunner.Outcome<>() {
            @Override
            public void done(Result result) {
                underWay = Optional.empty();
                if (result instanceof Result.Unsolved no) failed.put(scenario, no.reason());
                else solved.put(scenario, result);
                update();
            }

            @Override
            public void failed(Throwable reason) {
                underWay = Optional.empty();
                failed.put(scenario, "The solve failed: " + reason.getMessage());
                update();
            }
        });
    }

    private Row row(Variants.Row variant) {
        String reason = failed.getOrDefault(variant.scenario(), "not solved yet");
        if (!(solved.get(variant.scenario()) instanceof Result.Solved s))
            return new Row(variant.id(), variant.name(), List.of(NONE, NONE, NONE, NONE, NONE, NONE), reason);
        Option o = Option.of(s);
        List<String> cells = List.of(
                units.pressure(-o.weakest()),
                percent(o.meeting()),
                units.flow(o.exhaust()),
                o.exhaust() > 0 ? units.flow(o.roomAir()) + " (" + percent(o.roomAir() / o.exhaust()) + ")" : NONE,
                o.watts().isPresent() ? Math.round(o.watts().getAsDouble()) + " W" : NONE,
                cost(s.scenario(), o.cost()));
        return new Row(
                variant.id(),
                variant.name(),
                cells,
                differs(variants.rows().get(0).scenario(), variant.scenario()));
    }

    private static String cost(Scenario scenario, OptionalDouble cost) {
        return scenario.house()
                .tariff()
                .filter(t -> cost.isPresent())
                .map(t -> Math.round(cost.getAsDouble()) + " " + t.currency())
                .orElse(NONE);
    }

    private static String percent(double part) {
        return part > 0 && part < 0.005 ? "< 1 %" : part < 1 && part > 0.995 ? "> 99 %" : Math.round(100 * part) + " %";
    }

    /** What was assumed differently than in the first variant, so that the numbers do not compare by themselves. */
    private static String differs(Scenario first, Scenario other) {
        List<String> what = new ArrayList<>();
        if (first.cellSize() != other.cellSize()) what.add("grid");
        if (!first.target().equals(other.target())) what.add("target");
        if (!first.layer().equals(other.layer())) what.add("fill");
        if (first.outdoorPressure() != other.outdoorPressure()) what.add("pressure outdoors");
        if (first.soilLeakance() != other.soilLeakance()) what.add("soil");
        if (!first.air().equals(other.air())) what.add("air");
        return what.isEmpty() ? "" : "assumes another " + String.join(", ", what) + " than the first";
    }
}
