package slabfield.desktop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TabPane;
import javafx.scene.input.KeyCode;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.Theme;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.find.Job;
import slabfield.desktop.viewmodel.find.Page;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.desktop.viewmodel.lesson.Cause;
import slabfield.desktop.viewmodel.lesson.Lesson;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.figure.Profile;
import slabfield.model.Point;
import slabfield.model.SealState;
import slabfield.model.StageKind;

/** One round through the whole window, as a long day repeats it: every view, drawing, undo, readings, searches, lessons, saving. */
final class SoakRound {
    private final Stand stand;
    private final List<Example> houses;
    private final Example read;
    private final Path file;
    private final long pause;
    private int actions;

    /**
     * @param houses that are opened, dragged in and looked at in every view
     * @param read a house with readings, for the searches
     * @param file to save to
     * @param pause after each action [ms]
     */
    SoakRound(Stand stand, List<Example> houses, Example read, Path file, long pause) {
        this.stand = stand;
        this.houses = houses;
        this.read = read;
        this.file = file;
        this.pause = pause;
    }

    void go() {
        for (Example house : houses) {
            open(house);
            drag();
            edit();
            for (Mode mode : Mode.values()) turnTo(mode);
            turnTo(Mode.HOUSE);
        }
        open(read);
        tabs();
        sight();
        readings();
        open(read);
        findings();
        variants();
        lessons();
        save();
        appearance();
        open(houses.get(0));
    }

    private void act(Runnable action) {
        Stand.run(action);
        rest();
    }

    /** The actions of a user that have been made: presses, choices, numbers, drags and keys. */
    int actions() {
        return actions;
    }

    private void rest() {
        actions++;
        stand.pulses(2);
        Stand.pause(pause);
    }

    private Set<Node> all(String selector) {
        return Stand.fx(() -> stand.stage().getScene().getRoot().lookupAll(selector));
    }

    private void press(String selector, String text) {
        Node button = all(selector).stream()
                .filter(n -> n instanceof ButtonBase b && text.equals(b.getText()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("there is no \"" + text + "\" to press"));
        stand.clickOn(button);
        rest();
    }

    private void open(Example house) {
        act(() -> stand.bench.open(house));
        turnTo(Mode.HOUSE);
        stand.settle();
    }

    private void turnTo(Mode mode) {
        press(".rail .toggle-button", mode.words());
        stand.pulses(3);
    }

    /** Drags the first suction point half a metre, and undoes and redoes that by keys. */
    private void drag() {
        Point at = Stand.fx(() ->
                stand.bench.document().scenario().get().suctionPoints().get(0).at());
        stand.moveTo(at);
        stand.press();
        for (int i = 1; i <= 5; i++) {
            stand.moveTo(new Point(at.x() + 0.1 * i, at.y()));
            Stand.pause(pause / 5);
        }
        stand.release();
        stand.settle();
        rest();
        stand.shortcut(KeyCode.Z);
        stand.settle();
        rest();
        stand.shortcut(KeyCode.Y);
        stand.settle();
        rest();
    }

    /** Puts a hole by key and click, chooses the slab so that its properties show, zooms, and takes the hole back. */
    private void edit() {
        stand.key(KeyCode.H);
        Point at = Stand.fx(() ->
                stand.bench.document().scenario().get().suctionPoints().get(0).at());
        stand.click(at.x() + 0.7, at.y() + 0.4);
        stand.key(KeyCode.ESCAPE);
        stand.settle();
        act(() -> stand.bench
                .drawing()
                .selection()
                .set(List.of(Item.of(
                        Kind.SLAB,
                        stand.bench.document().scenario().get().slabs().get(0).id()))));
        stand.key(KeyCode.PLUS);
        stand.key(KeyCode.HOME);
        stand.key(KeyCode.ESCAPE);
        stand.shortcut(KeyCode.Z);
        stand.settle();
        rest();
    }

    private void tabs() {
        TabPane tabs = stand.node(".tab-pane", TabPane.class);
        int many = Stand.fx(() -> tabs.getTabs().size());
        for (int i = 0; i < many; i++) {
            int now = i;
            act(() -> tabs.getSelectionModel().select(now));
        }
        act(() -> stand.bench.sizing().start());
        stand.await(
                "the system is sized",
                () -> !stand.bench.sizing().search().searching().get());
        act(() -> tabs.getSelectionModel().select(0));
    }

    private void sight() {
        Sight sight = stand.guide.sight();
        for (Sight.Show show : Sight.Show.values()) act(() -> sight.show().set(show));
        act(() -> sight.show().set(Sight.Show.PRESSURE));
        for (Sight.Flow flow : List.of(Sight.Flow.ARROWS, Sight.Flow.PATHS, Sight.Flow.NONE))
            act(() -> sight.flow().set(flow));
        act(() -> sight.pin(new Point(2, 1)));
        act(() -> sight.cut().set(Optional.of(new Profile(new Point(0.5, 1), new Point(5, 3)))));
        drag();
        act(() -> sight.cut().set(Optional.empty()));
        act(() -> sight.unpin(sight.rows().get(0).pin()));
    }

    private void readings() {
        turnTo(Mode.READINGS);
        act(() -> stand.guide.entry().begin(StageKind.COMMUNICATION_TEST));
        for (String number : List.of("0.2", "0.1", "0.3")) {
            stand.type(number);
            stand.key(KeyCode.ENTER);
            rest();
        }
        stand.settle();
        turnTo(Mode.HOUSE);
    }

    /** Each page, with one search to its end, one that is stopped, and a row that is pointed at. */
    private void findings() {
        turnTo(Mode.FINDINGS);
        for (Page page : stand.guide.findings().pages()) {
            press(".findings .toggle-button", page.title());
            for (String view : page.views())
                act(() -> stand.guide.findings().view().set(view));
            for (Job job : page.jobs()) {
                Stand.run(job.start());
                stand.pulses(1);
                if (page.title().equals("Diagnosis"))
                    stand.await(
                            "the search is done",
                            () -> !job.search().searching().get());
                else Stand.run(() -> job.search().cancel());
                rest();
            }
            act(() -> stand.guide
                    .findings()
                    .point(stand.guide.findings().sheet().get().tables().stream()
                            .flatMap(t -> t.rows().stream())
                            .findFirst()));
        }
        press(".findings .toggle-button", stand.guide.findings().pages().get(0).title());
    }

    private void variants() {
        turnTo(Mode.COMPARE);
        press(".button", "Branch from this");
        act(() -> stand.bench.seal("sump", SealState.SEALED));
        stand.await("both are solved", () -> stand.guide.options().pair().get().isPresent());
        stand.pulses(3);
        act(() -> stand.guide.options().divider().set(0.3));
        int other = Stand.fx(() -> stand.guide.variants().rows().stream()
                .filter(r -> !r.current())
                .findFirst()
                .orElseThrow()
                .id());
        act(() -> stand.guide.variants().switchTo(other));
        stand.settle();
        turnTo(Mode.HOUSE);
    }

    private void lessons() {
        turnTo(Mode.LEARN);
        for (Lesson lesson : stand.guide.course().lessons().subList(0, 2)) {
            act(() -> stand.guide.course().lesson().set(lesson));
            act(() -> stand.guide.course().begin());
            stand.await(
                    "the lesson is solved",
                    () -> stand.guide.course().solved().get().isPresent());
            stand.pulses(2);
            act(() -> all(".lesson-page .radio-button").stream()
                    .map(RadioButton.class::cast)
                    .filter(b -> b.getText().equals("more than doubles"))
                    .forEach(RadioButton::fire));
            press(".button", "Reveal");
        }
        press(".contents-entry", contents("Practice"));
        act(() -> stand.guide.practice().next());
        stand.await("a case is hidden", () -> stand.guide.practice().now().get().isPresent());
        act(() -> stand.guide.practice().answer(Cause.NOTHING));
        press(".contents-entry", contents("1. "));
        turnTo(Mode.HOUSE);
    }

    private String contents(String start) {
        return all(".contents-entry").stream()
                .map(n -> ((ButtonBase) n).getText())
                .filter(t -> t.startsWith(start))
                .findFirst()
                .orElseThrow();
    }

    private void save() {
        act(() -> stand.bench.save(file));
        act(() -> stand.bench.open(file));
        stand.settle();
        act(() -> stand.bench.exportFigure(stand.guide.sight().figure(), 400, file.resolveSibling("map.png")));
    }

    private void appearance() {
        for (Theme theme : List.of(Theme.DARK, Theme.CONTRAST, Theme.LIGHT))
            act(() -> stand.bench.theme().set(theme));
        for (int i = 0; i < Units.FLOWS.size(); i++) {
            int now = i;
            act(() -> {
                stand.bench.units().pressure().set(Units.PRESSURES.get(now % Units.PRESSURES.size()));
                stand.bench.units().flow().set(Units.FLOWS.get(now));
                stand.bench.units().length().set(Units.LENGTHS.get(now % Units.LENGTHS.size()));
            });
        }
        for (boolean on : new boolean[] {true, false}) {
            act(() -> stand.bench.look().presentation().set(on));
            act(() -> stand.bench.look().largeTargets().set(on));
        }
        act(() -> all(".combo-box").forEach(n -> ((ComboBoxBase<?>) n).hide()));
    }
}
