package slabfield.desktop.viewmodel.work;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.JobStage.Open;
import slabfield.desktop.viewmodel.work.JobStage.Place;
import slabfield.desktop.viewmodel.work.JobStage.Step;
import slabfield.field.Result;
import slabfield.model.Barrier;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Slab;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.safety.Answer;
import slabfield.safety.Gate;
import slabfield.safety.JobRecord;

/**
 * How far the job is: what each of its stages still lacks, as far as the drawing, the readings and the record tell. It
 * judges whether something is written down, never whether a house is free of danger.
 */
public final class JobStages {
    /** Holes that a house has at least: home standard, ANSI/AARST SGM-SF 2017, 13.3.3. */
    public static final int LEAST_HOLES = 3;

    /** A slab larger than this has a hole of its own, 64 square feet by the same standard [m2]. */
    public static final double LARGE_SECTION = 64 * 0.3048 * 0.3048;

    private static final List<Gate> BEFORE_DRILLING = List.of(Gate.UTILITIES, Gate.STRUCTURAL_SLAB, Gate.GAS_ON_SITE);

    private final Workbench bench;
    private final Supplier<LocalDateTime> clock;
    private final ReadOnlyObjectWrapper<List<JobStage>> stages = new ReadOnlyObjectWrapper<>(List.of());

    /** @param clock the time now */
    public JobStages(Workbench bench, Supplier<LocalDateTime> clock) {
        this.bench = bench;
        this.clock = clock;
        bench.document().scenario().addListener((o, was, is) -> {
            if (!bench.solving().dragging().get()) update();
        });
        bench.solving().picture().addListener((o, was, is) -> {
            if (is.state() != Solving.State.SOLVING
                    && !bench.solving().dragging().get()) update();
        });
        bench.checklist().record().addListener((o, was, is) -> update());
        bench.document().file().addListener((o, was, is) -> update());
        update();
    }

    /** All stages, in the order of the job. */
    public ReadOnlyObjectProperty<List<JobStage>> stages() {
        return stages.getReadOnlyProperty();
    }

    /** The first stage that lacks something; empty where none does. */
    public Optional<JobStage> next() {
        return stages.get().stream().filter(s -> !s.open().isEmpty()).findFirst();
    }

    private void update() {
        Scenario scenario = bench.document().scenario().get();
        Optional<JobRecord> record = bench.checklist().record().get();
        stages.set(List.of(
                inspect(scenario, record),
                plan(scenario),
                test(scenario),
                design(scenario),
                startUp(scenario, record),
                record(record),
                retest(record)));
    }

    private static JobStage stage(Step step, List<Open> open) {
        return new JobStage(step, open, false);
    }

    private static JobStage inspect(Scenario scenario, Optional<JobRecord> record) {
        List<Open> open = new ArrayList<>();
        if (record.isEmpty()) open.add(new Open("Save the house: the answers are kept beside its file", Place.FILE));
        List<Gate> no = BEFORE_DRILLING.stream()
                .filter(g -> answered(record, g, Answer.NO))
                .toList();
        no.forEach(g ->
                open.add(new Open("\u201c" + g.word() + "\u201d was answered with no: do not drill", Place.CHECKLIST)));
        record.ifPresent(r -> BEFORE_DRILLING.stream()
                .filter(g -> r.answer(g).isEmpty())
                .forEach(g -> open.add(
                        new Open("Answer \u201c" + g.word() + "\u201d before anybody drills", Place.CHECKLIST))));
        if (scenario.openings().isEmpty() && scenario.blockWalls().isEmpty())
            open.add(new Open("Draw the openings: joint, sump, penetrations, block tops", Place.DRAWING));
        return new JobStage(Step.INSPECT, open, !no.isEmpty());
    }

    private static boolean answered(Optional<JobRecord> record, Gate gate, Answer answer) {
        return record.flatMap(r -> r.answer(gate))
                .filter(a -> a.answer() == answer)
                .isPresent();
    }

    private static JobStage plan(Scenario scenario) {
        List<Open> open = new ArrayList<>();
        if (scenario.suctionPoints().isEmpty()) open.add(new Open("Place a suction point", Place.DRAWING));
        int holes = scenario.testHoles().size();
        if (holes < LEAST_HOLES)
            open.add(new Open("Plan at least " + LEAST_HOLES + " test holes; there are " + holes, Place.DRAWING));
        for (Slab slab : scenario.slabs())
            if (Shapes.area(slab).getArea() > LARGE_SECTION
                    && scenario.testHoles().stream().noneMatch(h -> under(slab, h.at())))
                open.add(new Open("\u201c" + slab.id() + "\u201d has no test hole", Place.DRAWING));
        for (Barrier b : scenario.barriers())
            if (!b.known() && oneSided(scenario, b))
                open.add(new Open("No hole beyond the suspected \u201c" + b.id() + "\u201d", Place.DRAWING));
        for (TestHole hole : scenario.testHoles())
            if (!scenario.plan().mayDrill(hole.at()))
                open.add(new Open("\u201c" + hole.id() + "\u201d lies where nothing may be drilled", Place.DRAWING));
        return stage(Step.PLAN, open);
    }

    private static boolean under(Slab slab, Point at) {
        return Shapes.area(slab).covers(Shapes.point(at));
    }

    /** True where all holes lie on one side of a barrier's line, so that none tells whether it is there. */
    private static boolean oneSided(Scenario scenario, Barrier barrier) {
        List<Point> path = barrier.path().points();
        Point a = path.get(0), b = path.get(path.size() - 1);
        long left = scenario.testHoles().stream()
                .filter(h -> (b.x() - a.x()) * (h.at().y() - a.y()) - (b.y() - a.y()) * (h.at().x() - a.x()) > 0)
                .count();
        return left == 0 || left == scenario.testHoles().size();
    }

    private static JobStage test(Scenario scenario) {
        List<Open> open = new ArrayList<>();
        Optional<Stage> test = last(scenario, StageKind.COMMUNICATION_TEST);
        if (test.isEmpty()) open.add(new Open("Enter the readings of a communication test", Place.READINGS));
        else missingReadings(scenario, test.get(), true, open);
        return stage(Step.COMMUNICATION_TEST, open);
    }

    private static Optional<Stage> last(Scenario scenario, StageKind kind) {
        return scenario.stages().stream().filter(s -> s.kind() == kind).reduce((earlier, later) -> later);
    }

    private static void missingReadings(Scenario scenario, Stage stage, boolean withOff, List<Open> open) {
        List<String> on = new ArrayList<>(), off = new ArrayList<>();
        for (TestHole hole : scenario.testHoles()) {
            Optional<Stage.HoleReading> read = stage.holes().stream()
                    .filter(r -> r.hole().equals(hole.id()))
                    .findFirst();
            if (read.filter(r -> r.fanOn().isPresent()).isEmpty()) on.add(hole.id());
            if (read.filter(r -> r.fanOff().isPresent()).isEmpty()) off.add(hole.id());
        }
        if (!on.isEmpty()) open.add(new Open("Read with the suction on: " + String.join(", ", on), Place.READINGS));
        if (withOff && !off.isEmpty())
            open.add(new Open("Read with the suction off: " + String.join(", ", off), Place.READINGS));
        for (SuctionPoint s : scenario.suctionPoints()) {
            Optional<Stage.SystemReading> read = stage.systems().stream()
                    .filter(r -> r.suctionPoint().equals(s.id()))
                    .findFirst();
            if (read.filter(r -> r.riser().isPresent()).isEmpty())
                open.add(new Open("Measure the vacuum at " + s.id(), Place.READINGS));
            if (withOff && read.filter(r -> r.flow().isPresent()).isEmpty())
                open.add(new Open(
                        "Measure the flow at " + s.id() + ": without it leaky and tight look the same",
                        Place.READINGS));
        }
    }

    private JobStage design(Scenario scenario) {
        List<Open> open = new ArrayList<>();
        Solving.Picture picture = bench.solving().picture().get();
        if (picture.state() == Solving.State.FAILED)
            open.add(new Open("There is no prediction: " + picture.reason(), Place.DRAWING));
        picture.current()
                .map(Result.Solved::coverage)
                .filter(c -> c.meeting() < 1)
                .ifPresent(c -> open.add(new Open(
                        "The target is predicted to be missed under " + Math.max(1, Math.round(100 * (1 - c.meeting())))
                                + " % of the area",
                        Place.MEASURES)));
        boolean fan = scenario.suctionPoints().stream()
                .allMatch(s -> s.source() instanceof slabfield.model.Source.Fan
                        || s.source() instanceof slabfield.model.Source.Branch);
        if (!scenario.suctionPoints().isEmpty() && !fan) open.add(new Open("Choose fan and pipe", Place.SYSTEM));
        List<String> states = scenario.openings().stream()
                .filter(o -> o.seal().assumed() && o.seal().fraction() > 0)
                .map(Opening::id)
                .toList();
        if (!states.isEmpty())
            open.add(new Open("How well it is closed is assumed: " + String.join(", ", states), Place.DRAWING));
        return stage(Step.DESIGN, open);
    }

    private static JobStage startUp(Scenario scenario, Optional<JobRecord> record) {
        List<Open> open = new ArrayList<>();
        List<String> forbidding = record.map(JobRecord::openBeforeStartUp).orElse(List.of());
        forbidding.forEach(words -> open.add(new Open(words, Place.CHECKLIST)));
        record.filter(r -> r.draftTests().isEmpty() && !answered(record, Gate.COMBUSTION, Answer.NOT_PRESENT))
                .ifPresent(r -> open.add(new Open(
                        "Test the draft of every fuel-burning appliance, before and after start-up", Place.CHECKLIST)));
        Optional<Stage> stage = last(scenario, StageKind.START_UP);
        if (stage.isEmpty())
            open.add(new Open("Enter the readings at start-up: every hole and every riser", Place.READINGS));
        else missingReadings(scenario, stage.get(), false, open);
        if (record.flatMap(JobRecord::startUp).isEmpty())
            open.add(new Open("Record when the fan was started", Place.CHECKLIST));
        return new JobStage(Step.START_UP, open, !forbidding.isEmpty());
    }

    private static JobStage record(Optional<JobRecord> record) {
        List<Open> open = new ArrayList<>();
        if (record.isEmpty()) open.add(new Open("Save the house: the record stands beside its file", Place.FILE));
        record.ifPresent(r -> r.openBeforeCompletion().forEach(words -> open.add(new Open(words, Place.CHECKLIST))));
        record.filter(r -> r.openBeforeCompletion().isEmpty() && r.completed().isEmpty())
                .ifPresent(r -> open.add(new Open("Mark the record complete", Place.CHECKLIST)));
        return stage(Step.RECORD, open);
    }

    private JobStage retest(Optional<JobRecord> record) {
        List<Open> open = new ArrayList<>();
        Optional<LocalDateTime> earliest = record.flatMap(JobRecord::earliestRadonTest);
        if (earliest.isEmpty())
            open.add(new Open(
                    "A radon test follows 24 h after start-up at the earliest; only it shows success",
                    Place.CHECKLIST));
        else if (record.orElseThrow().radonTests().isEmpty()) {
            String when = earliest.get().isAfter(clock.get())
                    ? "A radon test may start from " + earliest.get().toString().replace('T', ' ')
                    : "Start the radon test";
            open.add(new Open(when + "; only it shows success", Place.CHECKLIST));
        }
        return stage(Step.RETEST, open);
    }
}
