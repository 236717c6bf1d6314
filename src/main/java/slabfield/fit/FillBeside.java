package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Zone;

/**
 * Permeability of the fill around an opening of one place, as a multiple of what the house has there. Air that enters through a
 * sump or a block-out meets two resistances one after the other, the opening's own and that of the fill around it, into which it
 * spreads; holes and flow tell only their sum. Which of the two it is decides the vacuum beside the opening, and so often that of
 * the weakest place. A fit that takes the fill for even there believes to know the size of the leak, which it does not.
 */
final class FillBeside {
    /**
     * How fill differs from place to place, as a factor; an assumption that goes with {@link NoiseModel#USUAL}. With 1.6 the gains of
     * suggestions lay in their ranges less often than these claim.
     */
    private static final double SPREAD = 2;
    /** Half the side of the square around the opening [m]; what lies further off spreads the air little. */
    private static final double REACH = 1;

    private static final String BESIDE = "fill beside ";

    private FillBeside() {}

    /** Empty for an opening along a line, which averages over the fill that it passes, where there is no layer, and where an earlier fit has drawn it. */
    static Optional<Parameter> of(Scenario house, Opening opening) {
        if (!(opening.place() instanceof Opening.Spot spot) || !house.hasLayerAt(spot.at())) return Optional.empty();
        List<Point> square = around(spot.at());
        String id = BESIDE + opening.id();
        if (house.layer().zones().stream().anyMatch(z -> z.id().equals(id))) return Optional.empty();
        return Optional.of(new Parameter(
                id,
                Parameter.Kind.FILL_BESIDE,
                "the fill beside \"" + opening.id() + "\"",
                Prior.factor(1, SPREAD),
                (h, multiple) -> h.withLayer(with(h.layer(), square, id, multiple))));
    }

    /** True where one is the leak of an opening and the other the fill beside it. */
    static boolean goTogether(Parameter leak, Parameter beside) {
        return leak.id().startsWith(Unknowns.OPENING)
                && beside.id().startsWith(BESIDE)
                && leak.id()
                        .substring(Unknowns.OPENING.length())
                        .equals(beside.id().substring(BESIDE.length()));
    }

    private static List<Point> around(Point p) {
        return List.of(
                new Point(p.x() - REACH, p.y() - REACH),
                new Point(p.x() + REACH, p.y() - REACH),
                new Point(p.x() + REACH, p.y() + REACH),
                new Point(p.x() - REACH, p.y() + REACH));
    }

    /** Over all that lies in the square the same with another permeability: the layer's own fill, then its zones. */
    private static Layer with(Layer layer, List<Point> square, String id, double multiple) {
        List<Zone> zones = new ArrayList<>(layer.zones());
        zones.add(new Zone(id, square, times(layer.fill(), multiple)));
        for (Zone z : layer.zones())
            for (List<Point> part : Shapes.common(z.outline(), square))
                zones.add(new Zone(id + " in " + z.id() + " " + zones.size(), part, times(z.fill(), multiple)));
        return new Layer(layer.fill(), zones);
    }

    private static Fill times(Fill f, double multiple) {
        return new Fill(f.word(), f.thickness(), f.permeability() * multiple, f.inertial(), f.assumed());
    }
}
