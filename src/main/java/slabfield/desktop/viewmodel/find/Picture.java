package slabfield.desktop.viewmodel.find;

import java.util.List;
import slabfield.field.Result;
import slabfield.figure.Figure;
import slabfield.figure.PlanLayer;

/** What a page shows beside its words. */
public sealed interface Picture {
    /** One line above it. */
    String caption();

    /** For those who do not see it. */
    String description();

    /**
     * A plan.
     *
     * @param result house and field
     * @param layers laid over it
     * @param layered true where the layers say something of their own, which the map of the house can show too
     */
    record Plan(Result result, List<PlanLayer> layers, boolean layered, String caption, String description)
            implements Picture {
        public Plan {
            layers = List.copyOf(layers);
        }
    }

    /** A chart. */
    record Drawn(Figure figure, String caption) implements Picture {
        @Override
        public String description() {
            return figure.description();
        }
    }
}
