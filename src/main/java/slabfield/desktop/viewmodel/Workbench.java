package slabfield.desktop.viewmodel;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.advice.Advisor;
import slabfield.figure.Figure;
import slabfield.figure.Figures;
import slabfield.io.SafeFile;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;
import slabfield.io.ScenarioWriter;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.network.SlabSolver;
import slabfield.network.SolveSession;

/** Everything behind one window. */
public final class Workbench {
    /** Something that went wrong and that the user must see. */
    public record Trouble(String title, String text) {}

    /**
     * Where long work is done, each kind one after the other.
     *
     * @param solves of the map
     * @param compares of stages
     * @param advises of measures
     * @param sizes of the system
     */
    public record Runners(TaskRunner solves, TaskRunner compares, TaskRunner advises, TaskRunner sizes) {}

    private static final String THEME = "theme";
    private static final String LARGE_TARGETS = "targets.large";
    private static final int PICTURE_DPI = 200;
    private static final double POINTS_PER_INCH = 72;

    private final Document document;
    private final Units units = new Units();
    private final MapLook look = new MapLook(units);
    private final Solving solving;
    private final Readings readings;
    private final Advising advising;
    private final SystemSizing sizing;
    private final Checklist checklist;
    private final SuctionMoves moves;
    private final Drawing drawing;
    private final Pictures pictures;
    private final List<Example> examples;
    private final Memory memory;
    private final ObservableList<Path> recent = FXCollections.observableArrayList();
    private final BooleanProperty accepted = new SimpleBooleanProperty();
    private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
    private Optional<Recovery> recovery = Optional.empty();
    private final ObjectProperty<Optional<Trouble>> trouble = new SimpleObjectProperty<>(Optional.empty());

    /** A workbench over the solver and the search for measures of this program. */
    public Workbench(List<Example> examples, Memory memory, Runners runners) {
        this(examples, memory, inSession(), inSession(), Advisor::suggest, runners);
    }

    /** A solver that starts from its last answer; one for dragging, one for the rest, since their grids differ. */
    private static Solving.Solver inSession() {
        SolveSession drags = new SolveSession(), others = new SolveSession();
        return (scenario, extent, progress) ->
                (extent == SlabSolver.Extent.FAN_ON_ONLY ? drags : others).solve(scenario, extent, progress);
    }

    /**
     * @param examples at least one; the first is open at the start, the others are not read before they are asked for
     */
    Workbench(List<Example> examples, Memory memory, Solving.Solver solver, Advising.Search search, Runners runners) {
        this(examples, memory, solver, solver, search, runners);
    }

    private Workbench(
            List<Example> examples,
            Memory memory,
            Solving.Solver map,
            Solving.Solver stages,
            Advising.Search search,
            Runners runners) {
        this.examples = examples;
        this.memory = memory;
        this.document = new Document(examples.get(0).scenario());
        this.solving = new Solving(document, map, runners.solves());
        this.readings = new Readings(document, solving, stages, runners.compares());
        this.advising = new Advising(document, search, runners.advises());
        this.sizing = new SystemSizing(document, units, SystemSizing::size, runners.sizes());
        this.checklist = new Checklist(document, t -> trouble.set(Optional.of(t)), LocalDateTime::now);
        this.moves = new SuctionMoves(document, solving, units);
        this.drawing = new Drawing(document, solving, moves, units);
        this.pictures = new Pictures(
                document,
                runners.compares(),
                words -> trouble.set(Optional.of(new Trouble("About the picture", words))));
        units.take(document.scenario().get().display());
        recent.setAll(memory.recent());
        accepted.set(memory.accepted());
        memory.kept(THEME)
                .flatMap(word -> Arrays.stream(Theme.values())
                        .filter(t -> t.name().equals(word))
                        .findFirst())
                .ifPresent(theme::set);
        theme.addListener((o, was, is) -> memory.keep(THEME, is.name()));
        look.largeTargets()
                .set(memory.kept(LARGE_TARGETS).filter(Boolean::parseBoolean).isPresent());
        look.largeTargets().addListener((o, was, is) -> memory.keep(LARGE_TARGETS, is.toString()));
    }

    public Document document() {
        return document;
    }

    public Units units() {
        return units;
    }

    public MapLook look() {
        return look;
    }

    public Solving solving() {
        return solving;
    }

    public Readings readings() {
        return readings;
    }

    public Advising advising() {
        return advising;
    }

    public SystemSizing sizing() {
        return sizing;
    }

    public Checklist checklist() {
        return checklist;
    }

    public SuctionMoves moves() {
        return moves;
    }

    public Drawing drawing() {
        return drawing;
    }

    /** Colours of the window, kept from run to run. */
    public ObjectProperty<Theme> theme() {
        return theme;
    }

    /** Keeps what is not saved, from now on. */
    public void keepIn(Recovery kept) {
        kept.watch(document);
        recovery = Optional.of(kept);
    }

    public Optional<Recovery> recovery() {
        return recovery;
    }

    /** Opens what an earlier window left behind, as a change that is not saved. */
    public void restore(Recovery.Left left) {
        try {
            Scenario scenario = left.kept().scenario();
            if (left.file().filter(Files::isRegularFile).isPresent())
                open(left.file().get());
            else document.open(Blank.house(scenario.display()), Optional.empty());
            units.take(scenario.display());
            document.edit(Edit.of("restore what was not saved", s -> scenario));
            recovery.ifPresent(r -> r.discard(left));
        } catch (ScenarioProblems problems) {
            trouble.set(Optional.of(new Trouble("This cannot be restored", problems.getMessage())));
        }
    }

    public Pictures pictures() {
        return pictures;
    }

    /** Begins a house on a blank sheet, in the units that are shown. */
    public void begin() {
        look.unlock();
        document.open(Blank.house(units.display()), Optional.empty());
    }

    public List<Example> examples() {
        return examples;
    }

    /** Files opened lately, the latest first. */
    public ObservableList<Path> recent() {
        return recent;
    }

    /** True once the user has accepted {@link Caution#LICENCE}, in this run or an earlier one. */
    public ReadOnlyBooleanProperty accepted() {
        return accepted;
    }

    /** What went wrong last; the window shows it and sets it empty. */
    public ObjectProperty<Optional<Trouble>> trouble() {
        return trouble;
    }

    public void accept() {
        memory.accept();
        accepted.set(true);
    }

    public void open(Example example) {
        look.unlock();
        units.take(example.scenario().display());
        document.open(example.scenario(), Optional.empty());
    }

    /** Opens a file; where it cannot be read the document stays as it is. */
    public void open(Path file) {
        try {
            var scenario = ScenarioReader.readUnfinished(ScenarioReader.text(file), file.toString());
            look.unlock();
            units.take(scenario.display());
            document.open(scenario, Optional.of(file));
            remember(file);
            if (recovery.filter(r -> r.isOpenElsewhere(file)).isPresent())
                trouble.set(Optional.of(new Trouble(
                        "This file is open in another window",
                        "What is saved last wins. Save under another name here, or close one of the windows.")));
        } catch (ScenarioProblems problems) {
            if (!Files.exists(file)) memory.forget(file);
            recent.setAll(memory.recent());
            trouble.set(Optional.of(new Trouble("This file cannot be opened", problems.getMessage())));
        }
    }

    /** Writes the document to a file; returns whether that was done. */
    public boolean save(Path file) {
        try {
            pictures.bringAlong(document.scenario().get(), file);
            SafeFile.writeKeepingVersions(
                    file, ScenarioWriter.toJson(document.scenario().get()).getBytes(StandardCharsets.UTF_8));
            document.savedTo(file);
            remember(file);
            return true;
        } catch (IOException reason) {
            trouble.set(Optional.of(new Trouble("This file cannot be saved", reason.getMessage())));
            return false;
        }
    }

    /**
     * Writes a figure to a file: as PDF or SVG where its name ends so, else as PNG.
     *
     * @param width of the page [points]
     */
    public void exportFigure(Figure figure, double width, Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        try {
            if (name.endsWith(".pdf")) SafeFile.write(file, Figures.pdf(figure, width));
            else if (name.endsWith(".svg"))
                SafeFile.write(file, Figures.svg(figure, width).getBytes(StandardCharsets.UTF_8));
            else
                SafeFile.write(
                        file,
                        Figures.png(figure, (int) Math.round(width * PICTURE_DPI / POINTS_PER_INCH), PICTURE_DPI));
        } catch (IOException reason) {
            trouble.set(Optional.of(new Trouble("The file cannot be saved", reason.getMessage())));
        }
    }

    private void remember(Path file) {
        memory.remember(file);
        recent.setAll(memory.recent());
    }

    /** Closes an opening so far as a word says. */
    public void seal(String opening, SealState state) {
        document.edit(Edit.of(
                state.word() + ": " + opening,
                s -> s.opening(opening)
                        .filter(o -> o.seal().state() != state)
                        .map(o -> s.withSeal(opening, Seal.of(state)))
                        .orElse(s)));
    }

    /** Closes the tops of a block wall so far as a word says. */
    public void closeTops(String wall, SealState state) {
        document.edit(Edit.of(
                state.word() + ": tops of " + wall,
                s -> s.blockWalls().stream()
                        .filter(w -> w.id().equals(wall) && w.tops().state() != state)
                        .findFirst()
                        .map(w -> s.withTops(wall, Seal.of(state)))
                        .orElse(s)));
    }

    /** Name of the document, marked where something is not saved. */
    public String title() {
        String name = document.file()
                .get()
                .map(f -> f.getFileName().toString())
                .orElse(document.scenario().get().name());
        return (document.dirty().get() ? "\u2022 " : "") + name + " \u2013 Slabfield";
    }
}
