package slabfield.desktop.view;

import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CustomMenuItem;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.MenuButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.work.JobStage;
import slabfield.desktop.viewmodel.work.JobStage.Open;
import slabfield.desktop.viewmodel.work.JobStage.Place;
import slabfield.desktop.viewmodel.work.JobStages;

/** The stages of the job in a row; each says how much it lacks, and opens a list that leads to where it is done. */
final class StagesStrip extends HBox {
    private static final PseudoClass DONE = PseudoClass.getPseudoClass("done");
    private static final PseudoClass BLOCKED = PseudoClass.getPseudoClass("blocked");
    private static final PseudoClass NEXT = PseudoClass.getPseudoClass("next");
    private static final double WORDS = 420;

    private final JobStages stages;
    private final BooleanProperty large;
    private final Consumer<Place> lead;

    /**
     * The strip.
     *
     * @param large whether letters are so large that numbers must do
     * @param lead shows where something is done
     */
    StagesStrip(JobStages stages, BooleanProperty large, Consumer<Place> lead) {
        this.stages = stages;
        this.large = large;
        this.lead = lead;
        getStyleClass().add("stages");
        setAlignment(Pos.CENTER_LEFT);
        stages.stages().addListener((o, was, is) -> {
            if (!was.equals(is)) fill();
        });
        large.addListener((o, was, is) -> fill());
        fill();
    }

    private void fill() {
        getChildren().setAll(stages.stages().get().stream().map(this::button).toList());
    }

    private Node button(JobStage stage) {
        int open = stage.open().size();
        String count = large.get() ? String.valueOf(open) : open + " left";
        String state = open == 0 ? "\u2713" : stage.blocked() ? "\u26a0 " + count : count;
        MenuButton button = new MenuButton(
                (stage.step().ordinal() + 1) + "  " + stage.step().words() + "   " + state);
        button.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(button, Priority.ALWAYS);
        button.pseudoClassStateChanged(DONE, open == 0);
        button.pseudoClassStateChanged(BLOCKED, stage.blocked());
        button.pseudoClassStateChanged(
                NEXT, stages.next().filter(n -> n.step() == stage.step()).isPresent());
        String words =
                open == 0 ? "nothing known to be missing" : open == 1 ? "1 thing missing" : open + " things missing";
        button.setAccessibleText("Stage " + stage.step().words() + ": " + words + (stage.blocked() ? ", blocked" : ""));
        VBox list = new VBox(4);
        list.getStyleClass().add("open-list");
        list.getChildren().add(Parts.label(stage.step().words() + ": " + words, "heading"));
        for (Open each : stage.open()) list.getChildren().add(link(each, button));
        CustomMenuItem item = new CustomMenuItem(list, false);
        button.getItems().add(item);
        return button;
    }

    private Hyperlink link(Open open, MenuButton button) {
        Hyperlink link = new Hyperlink(open.words());
        link.setWrapText(true);
        link.setMaxWidth(WORDS);
        link.setOnAction(e -> {
            button.hide();
            lead.accept(open.place());
        });
        return link;
    }
}
