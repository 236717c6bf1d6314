package slabfield.desktop.viewmodel;

import java.util.List;
import slabfield.model.Air;
import slabfield.model.Display;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Layer;
import slabfield.model.Scenario;
import slabfield.model.Target;

/** The sheet on which a house is begun: no slab yet, usual values for the rest. */
public final class Blank {
    /** A soil of low permeability; to be changed by who knows better [m/(s Pa)]. */
    private static final double LEAKANCE = 1e-8;

    private static final String NOTES =
            "Begun blank: fill, soil, joints and suction have usual values until you change them.";

    private Blank() {}

    public static Scenario house() {
        return house(Display.SI);
    }

    static Scenario house(Display display) {
        return new Scenario(
                "New house",
                "",
                NOTES,
                display,
                List.of(),
                new Layer(Fill.of(FillWord.CLEAN_STONE, Fill.USUAL_THICKNESS), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                LEAKANCE,
                0,
                Air.STANDARD,
                List.of(),
                List.of(),
                List.of(),
                Target.COMMON_PRACTICE,
                Scenario.USUAL_CELL);
    }
}
