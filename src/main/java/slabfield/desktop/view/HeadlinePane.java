package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import slabfield.desktop.viewmodel.Headline;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;

/** The first numbers of a prediction, as cards in two columns. */
final class HeadlinePane extends GridPane {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");

    /** While the map follows a drag the numbers change no more often than they can be read. */
    private static final Duration LEAST = Duration.millis(150);

    private final Workbench bench;
    private final List<Card> cards = new ArrayList<>();

    HeadlinePane(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("headline");
        for (int i = 0; i < 2; i++) {
            ColumnConstraints half = new ColumnConstraints();
            half.setPercentWidth(50);
            getColumnConstraints().add(half);
        }
        Throttle following = new Throttle(LEAST, this::update);
        bench.solving().picture().addListener((o, was, is) -> {
            pseudoClassStateChanged(STALE, is.state() == Solving.State.FAILED);
            if (was.result() == is.result() && was.reason().equals(is.reason())) return;
            if (is.quick()) following.ask();
            else update();
        });
        bench.units().shown().addListener((o, was, is) -> update());
        update();
    }

    /** Writes new numbers into the cards that are there; only another number of them is laid anew. */
    private void update() {
        List<Headline.Fact> facts = bench.solving()
                .picture()
                .get()
                .solved()
                .map(s -> Headline.of(s, bench.units()))
                .orElse(List.of());
        if (facts.isEmpty() || facts.size() != cards.size()) lay(facts.size());
        for (int i = 0; i < facts.size(); i++) cards.get(i).say(facts.get(i));
    }

    private void lay(int count) {
        getChildren().clear();
        cards.clear();
        String reason = bench.solving().picture().get().reason();
        if (count == 0)
            add(
                    reason.isEmpty()
                            ? Parts.paragraph("The first numbers appear here once the house is solved.", "soft")
                            : Parts.paragraph(reason),
                    0,
                    0,
                    2,
                    1);
        for (int i = 0; i < count; i++) {
            cards.add(new Card());
            add(cards.get(i), i % 2, i / 2);
        }
    }

    private static final class Card extends VBox {
        private final Label title = Parts.paragraph("", "title");
        private final Label number = Parts.label("", "value");
        private final Label symbol = Parts.label("", "unit");
        private final Label sign = Parts.label("", "mark");
        private final Label detail = Parts.paragraph("", "detail");

        Card() {
            for (Label each : List.of(number, symbol, sign)) each.setMinWidth(USE_PREF_SIZE);
            HBox first = new HBox(number, symbol, sign);
            first.setAlignment(Pos.BASELINE_LEFT);
            getChildren().addAll(title, first, detail);
            setMaxHeight(Double.MAX_VALUE);
        }

        void say(Headline.Fact fact) {
            String tone = switch (fact.tone()) {
                case MEETS -> "meets";
                case MISSES -> "misses";
                case PLAIN -> "plain";
            };
            if (!getStyleClass().contains(tone)) getStyleClass().setAll("card", tone);
            String mark = switch (fact.tone()) {
                case MEETS -> " \u2713";
                case MISSES -> " \u25bc";
                case PLAIN -> "";
            };
            int unit = fact.value().lastIndexOf(' ') + 1;
            title.setText(fact.title());
            number.setText(fact.value().substring(0, unit));
            symbol.setText(fact.value().substring(unit));
            sign.setText(mark);
            detail.setText(fact.detail());
            setAccessibleText(fact.title() + ": " + fact.value() + mark + ", " + fact.detail());
        }
    }
}
