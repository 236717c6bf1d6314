package slabfield.desktop.view;

import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import slabfield.desktop.viewmodel.find.Findings;
import slabfield.desktop.viewmodel.find.Job;
import slabfield.desktop.viewmodel.find.Sheet;
import slabfield.desktop.viewmodel.guide.Guide;

/** Begins the long work of a page, shows how far it is, stops it; beside it what can be done with what was found. */
final class JobRow extends FlowPane {
    private final Findings findings;

    JobRow(Guide guide) {
        this.findings = guide.findings();
        getStyleClass().add("sight");
        setAlignment(Pos.CENTER_LEFT);
        setHgap(8);
        setVgap(4);
        findings.page().addListener((o, was, is) -> fill());
        findings.sheet().addListener((o, was, is) -> {
            if (!was.acts().isEmpty() || !is.acts().isEmpty()) fill();
        });
        fill();
    }

    private void fill() {
        getChildren().clear();
        for (Job job : findings.page().get().jobs()) getChildren().add(job(job));
        for (Sheet.Act act : findings.sheet().get().acts())
            getChildren().add(act.chosen().isPresent() ? choice(act) : act(act, "primary"));
        if (getChildren().isEmpty())
            getChildren().add(Parts.label(findings.page().get().help(), "soft"));
    }

    private static Node job(Job job) {
        SearchRow row = new SearchRow(job.words(), job.words(), job.search(), job.start());
        Label message = Parts.label("", "soft");
        message.textProperty().bind(job.search().message());
        message.tooltipProperty()
                .bind(Bindings.createObjectBinding(
                        () -> new javafx.scene.control.Tooltip(
                                job.search().message().get()),
                        job.search().message()));
        message.setMaxWidth(760);
        HBox.setHgrow(message, Priority.ALWAYS);
        row.getChildren().add(message);
        return row;
    }

    /** A button of which one of several is down. */
    private static ToggleButton choice(Sheet.Act act) {
        ToggleButton button = new ToggleButton(act.words());
        button.setSelected(act.chosen().orElseThrow());
        button.setAccessibleText(act.spoken());
        button.setMinWidth(USE_PREF_SIZE);
        button.setOnAction(e -> {
            button.setSelected(true);
            act.run().run();
        });
        return button;
    }

    /** A button that does something with what was found. */
    static Button act(Sheet.Act act, String style) {
        Button button = new Button(act.words());
        button.getStyleClass().add(style);
        button.setMinWidth(USE_PREF_SIZE);
        button.setAccessibleText(act.spoken());
        button.setOnAction(e -> act.run().run());
        return button;
    }
}
