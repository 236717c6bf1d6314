package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Caution;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Result;

/** Lists of sentences: doubts about a prediction, and cautions. */
final class NotesTab extends ScrollPane {
    private final VBox body = new VBox();

    private NotesTab(String what) {
        body.getStyleClass().addAll("tab-body", "notes");
        setContent(body);
        setFitToWidth(true);
        setAccessibleText(what);
    }

    /** Where a prediction rests on an assumption or leaves the range of the model. */
    static NotesTab doubts(Workbench bench) {
        NotesTab tab = new NotesTab("Doubts about the prediction");
        Runnable update = () -> tab.body
                .getChildren()
                .setAll(doubts(bench, bench.solving().picture().get().solved().orElse(null)));
        bench.solving().picture().addListener((o, was, is) -> {
            if (was.result() != is.result() && !bench.solving().dragging().get()) update.run();
        });
        bench.units().shown().addListener((o, was, is) -> update.run());
        update.run();
        return tab;
    }

    private static List<Node> doubts(Workbench bench, Result.Solved solved) {
        List<Node> out = new ArrayList<>();
        if (solved == null) return List.of(Parts.paragraph("No prediction yet.", "soft"));
        for (String doubt : solved.doubts()) out.add(Parts.paragraph("\u2022 " + doubt));
        for (Result.Unreached u : solved.unreached())
            out.add(Parts.paragraph(
                    "\u2022 No boundary reaches " + bench.units().area(u.area()) + " of the layer around "
                            + bench.units().about(u.around()) + ": it has no pressure."));
        if (out.isEmpty()) out.add(Parts.paragraph("Nothing in this prediction leaves the range of the model."));
        out.add(Parts.paragraph(
                String.format(
                        Locale.ROOT,
                        "Solved in %d steps; residual %.1e, mass balance %.1e of the flow through the layer; cells of %s.",
                        solved.convergence().iterations(),
                        solved.convergence().residual(),
                        solved.convergence().massBalance(),
                        bench.units().length(solved.coverage().cell())),
                "soft"));
        out.add(Parts.paragraph(
                "Steady flow in one layer, seen from above. A prediction is not a measurement.", "soft"));
        return out;
    }

    /** Dangers that no calculation takes away. */
    static NotesTab cautions(Workbench bench) {
        NotesTab tab = new NotesTab("Safety cautions");
        Runnable update = () -> tab.body
                .getChildren()
                .setAll(Caution.of(bench.document().scenario().get()).stream()
                        .map(NotesTab::caution)
                        .toList());
        bench.document().scenario().addListener((o, was, is) -> {
            if (!Caution.of(was).equals(Caution.of(is))) update.run();
        });
        update.run();
        return tab;
    }

    private static Node caution(Caution caution) {
        String because = caution.because().isEmpty() ? "" : "  \u2013 here because " + caution.because();
        VBox one = new VBox(
                new HBox(Parts.label(caution.title(), "name"), Parts.label(because, "because")),
                Parts.paragraph(caution.text()));
        one.getStyleClass().add("caution");
        return one;
    }
}
