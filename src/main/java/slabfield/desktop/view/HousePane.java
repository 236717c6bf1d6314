package slabfield.desktop.view;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;

/** What can be changed in the house: states of openings and block tops, places of suction points. */
final class HousePane extends VBox {
    private static final List<SealState> STATES = Arrays.asList(SealState.values());

    private final Workbench bench;
    private final VBox openings = new VBox();
    private final VBox walls = new VBox();
    private final VBox suctions = new VBox();

    HousePane(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("house");
        for (VBox part : List.of(openings, walls, suctions))
            part.getStyleClass().add("part");
        getChildren().addAll(openings, walls, suctions);
        bench.document().scenario().addListener((o, was, is) -> update(was, is));
        bench.units()
                .length()
                .addListener(
                        (o, was, is) -> fillSuctions(bench.document().scenario().get()));
        fill(bench.document().scenario().get());
    }

    /** Builds again only what changed, so that the focus stays where it is. */
    private void update(Scenario was, Scenario is) {
        if (!was.openings().equals(is.openings())) fillOpenings(is);
        if (!was.blockWalls().equals(is.blockWalls())) fillWalls(is);
        if (!was.suctionPoints().equals(is.suctionPoints())
                && !bench.solving().dragging().get()) fillSuctions(is);
    }

    private void fill(Scenario scenario) {
        fillOpenings(scenario);
        fillWalls(scenario);
        fillSuctions(scenario);
        bench.solving().dragging().addListener((o, was, is) -> {
            if (!is) fillSuctions(bench.document().scenario().get());
        });
    }

    private void fillOpenings(Scenario scenario) {
        refill(
                openings,
                "Openings in the slab",
                "No opening is drawn.",
                scenario.openings().stream()
                        .map(o -> stateRow(o.id(), kind(o), o.seal(), state -> bench.seal(o.id(), state)))
                        .toList());
    }

    private static String kind(Opening o) {
        return o.id().toLowerCase(Locale.ROOT).contains(o.kind().word())
                ? ""
                : o.kind().word();
    }

    private void fillWalls(Scenario scenario) {
        walls.setManaged(!scenario.blockWalls().isEmpty());
        walls.setVisible(walls.isManaged());
        refill(
                walls,
                "Tops of block walls",
                "",
                scenario.blockWalls().stream().map(this::wallRow).toList());
    }

    private VBox wallRow(BlockWall wall) {
        return stateRow(wall.id(), "block tops", wall.tops(), state -> bench.closeTops(wall.id(), state));
    }

    private void refill(VBox part, String title, String none, List<? extends Node> rows) {
        String focused = focusedButton();
        part.getChildren().setAll(Parts.label(title, "heading"));
        if (rows.isEmpty()) part.getChildren().add(Parts.label(none, "soft"));
        part.getChildren().addAll(rows);
        if (!focused.isEmpty())
            part.lookupAll(".toggle-button").stream()
                    .filter(n -> focused.equals(n.getAccessibleText()))
                    .forEach(Node::requestFocus);
    }

    private String focusedButton() {
        return getScene() == null
                        || getScene().getFocusOwner() == null
                        || getScene().getFocusOwner().getAccessibleText() == null
                ? ""
                : getScene().getFocusOwner().getAccessibleText();
    }

    private VBox stateRow(String name, String kind, Seal seal, Consumer<SealState> set) {
        Label title = Parts.label(name, "name");
        Label detail = Parts.label(kind, "soft");
        Label taken = Parts.label(
                Math.round(100 * seal.fraction()) + " % closed" + (seal.assumed() ? "" : " (given)"), "soft");
        HBox.setHgrow(detail, Priority.ALWAYS);
        detail.setMaxWidth(Double.MAX_VALUE);
        taken.setMinWidth(USE_PREF_SIZE);
        HBox first = new HBox(6, title, detail, taken);
        first.setAlignment(Pos.BASELINE_LEFT);
        ObjectProperty<SealState> state = new SimpleObjectProperty<>(seal.state());
        HBox choice = Parts.choice(name, STATES, SealState::word, state);
        choice.getStyleClass().add("wide");
        choice.getChildren().forEach(b -> HBox.setHgrow(b, Priority.ALWAYS));
        state.addListener((o, was, is) -> set.accept(is));
        VBox row = new VBox(3, first, choice);
        row.getStyleClass().add("row");
        return row;
    }

    private void fillSuctions(Scenario scenario) {
        refill(
                suctions,
                "Suction points",
                "No suction point is drawn.",
                scenario.suctionPoints().stream().map(this::suctionRow).toList());
    }

    private VBox suctionRow(SuctionPoint point) {
        Label name = Parts.label(point.id(), "name");
        Label source = Parts.label(source(point), "soft");
        TextField x = field(point, "x", point.at().x()),
                y = field(point, "y", point.at().y());
        x.setOnAction(e -> move(point, x, point.at().y(), true));
        y.setOnAction(e -> move(point, y, point.at().x(), false));
        HBox place = new HBox(6, Parts.label("x"), x, Parts.label("y"), y);
        place.setAlignment(Pos.BASELINE_LEFT);
        HBox first = new HBox(8, name, source);
        first.setAlignment(Pos.BASELINE_LEFT);
        VBox row = new VBox(3, first, place);
        row.getStyleClass().add("row");
        return row;
    }

    private String source(SuctionPoint point) {
        String draws;
        if (point.source() instanceof Source.Pressure p)
            draws = "held at " + bench.units().exactPressure(p.pressure());
        else if (point.source() instanceof Source.Flow q)
            draws = "draws " + bench.units().flow(q.flow());
        else draws = "fan and pipe";
        return point.tile().map(t -> draws + ", on tile " + t).orElse(draws);
    }

    private TextField field(SuctionPoint point, String axis, double value) {
        TextField field = new TextField(bench.units().length(value));
        field.setPrefColumnCount(9);
        HBox.setHgrow(field, Priority.ALWAYS);
        field.setAccessibleText(axis + " of suction point " + point.id());
        Parts.tip(field, "Type a length with its unit, such as 12 ft 6 in or 3.8 m, then Enter.");
        return field;
    }

    private void move(SuctionPoint point, TextField field, double other, boolean isX) {
        try {
            double value = Quantity.parse(field.getText(), Dimension.LENGTH);
            bench.moves().put(point.id(), isX ? new Point(value, other) : new Point(other, value));
            fillSuctions(bench.document().scenario().get());
        } catch (NotAQuantity wrong) {
            bench.trouble().set(Optional.of(new Workbench.Trouble("This is not a length", wrong.getMessage())));
        }
    }
}
