package slabfield.desktop.view;

import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Headline;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;

/** The first numbers of a prediction, as cards in two columns. */
final class HeadlinePane extends GridPane {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");

    /** While the map follows a drag the numbers change no more often than they can be read [ns]. */
    private static final long QUIET = 200_000_000;

    private final Workbench bench;
    private long updated;

    HeadlinePane(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("headline");
        for (int i = 0; i < 2; i++) {
            ColumnConstraints half = new ColumnConstraints();
            half.setPercentWidth(50);
            getColumnConstraints().add(half);
        }
        bench.solving().picture().addListener((o, was, is) -> {
            pseudoClassStateChanged(STALE, is.state() == Solving.State.FAILED);
            boolean soon = is.quick() && System.nanoTime() - updated < QUIET;
            if (was.result() != is.result() && !soon) update();
        });
        bench.units().shown().addListener((o, was, is) -> update());
        update();
    }

    private void update() {
        Solving.Picture picture = bench.solving().picture().get();
        updated = System.nanoTime();
        getChildren().clear();
        if (picture.solved().isEmpty()) {
            add(Parts.paragraph("The first numbers appear here once the house is solved.", "soft"), 0, 0, 2, 1);
            return;
        }
        var facts = Headline.of(picture.solved().get(), bench.units());
        for (int i = 0; i < facts.size(); i++) add(card(facts.get(i)), i % 2, i / 2);
    }

    private static VBox card(Headline.Fact fact) {
        VBox card = new VBox();
        String tone =
                switch (fact.tone()) {
                    case MEETS -> "meets";
                    case MISSES -> "misses";
                    case PLAIN -> "plain";
                };
        card.getStyleClass().addAll("card", tone);
        String mark =
                switch (fact.tone()) {
                    case MEETS -> " \u2713";
                    case MISSES -> " \u25bc";
                    case PLAIN -> "";
                };
        int unit = fact.value().lastIndexOf(' ') + 1;
        Label number = Parts.label(fact.value().substring(0, unit), "value");
        Label symbol = Parts.label(fact.value().substring(unit), "unit"), sign = Parts.label(mark, "mark");
        for (Label each : List.of(number, symbol, sign)) each.setMinWidth(USE_PREF_SIZE);
        HBox first = new HBox(number, symbol, sign);
        first.setAlignment(Pos.BASELINE_LEFT);
        card.getChildren().addAll(Parts.paragraph(fact.title(), "title"), first, Parts.paragraph(fact.detail(), "detail"));
        card.setMaxHeight(Double.MAX_VALUE);
        card.setAccessibleText(fact.title() + ": " + fact.value() + mark + ", " + fact.detail());
        return card;
    }
}
