package slabfield.desktop.view;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.layout.BorderPane;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.guide.Guide.Mode;

/** Shows in a window what its mode is about; a part is made when it is first shown. */
final class ModePanes {
    private final BorderPane root;
    private final Guide guide;
    private final FileActions files;
    private final TaskRunner painting;
    private final Node house;
    private final Node houseSide;
    private final Map<Mode, Node> made = new EnumMap<>(Mode.class);

    /**
     * @param house shown in the middle for {@link Mode#HOUSE}
     * @param houseSide shown at its right
     */
    ModePanes(BorderPane root, Guide guide, FileActions files, TaskRunner painting, Node house, Node houseSide) {
        this.root = root;
        this.guide = guide;
        this.files = files;
        this.painting = painting;
        this.house = house;
        this.houseSide = houseSide;
        made.put(Mode.HOUSE, house);
        guide.mode().addListener((o, was, is) -> show(is));
        show(guide.mode().get());
    }

    private void show(Mode mode) {
        Node pane = made.computeIfAbsent(mode, this::make);
        root.setCenter(pane);
        root.setRight(pane == house ? houseSide : null);
        if (mode == Mode.READINGS && guide.entry().stage().get().isEmpty())
            guide.entry()
                    .stage()
                    .set(guide.bench()
                            .readings()
                            .stage()
                            .get()
                            .map(slabfield.model.Stage::id)
                            .or(Optional::empty));
        if (mode != Mode.HOUSE) pane.requestFocus();
    }

    private Node make(Mode mode) {
        return switch (mode) {
            case HOUSE -> house;
            case COMPARE -> new ComparePane(guide, painting);
            case READINGS -> new ReadingsPane(guide);
            case FINDINGS -> new FindingsPane(guide, painting);
            case LEARN -> new LearnPane(guide, painting, files::saveSheet);
        };
    }
}
