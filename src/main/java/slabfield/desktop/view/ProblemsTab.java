package slabfield.desktop.view;

import javafx.scene.control.Hyperlink;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Problem;

/** What stands in the drawing as it cannot, each with a way to it. */
final class ProblemsTab extends ScrollPane {
    private final Workbench bench;
    private final VBox list = new VBox();

    ProblemsTab(Workbench bench) {
        this.bench = bench;
        list.getStyleClass().addAll("tab-body", "notes");
        setContent(list);
        setFitToWidth(true);
        bench.solving().problems().addListener((o, was, is) -> fill());
        fill();
    }

    private void fill() {
        list.getChildren().clear();
        if (bench.solving().problems().get().isEmpty())
            list.getChildren().add(Parts.paragraph("Everything that is drawn can stand as it is.", "soft"));
        for (Problem problem : bench.solving().problems().get())
            list.getChildren().add(row(problem));
    }

    private Hyperlink row(Problem problem) {
        String words = problem.message();
        Hyperlink link =
                new Hyperlink(words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1) + ".");
        link.setWrapText(true);
        link.setOnAction(e -> {
            for (Item item : Items.all(bench.document().scenario().get()))
                if (words.contains("\"" + item.id() + "\"")) {
                    bench.drawing().selection().set(java.util.List.of(item));
                    return;
                }
        });
        return link;
    }
}
