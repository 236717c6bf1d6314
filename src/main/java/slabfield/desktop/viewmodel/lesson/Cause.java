package slabfield.desktop.viewmodel.lesson;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import slabfield.model.Barrier;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.SuctionPoint;

/** What can make a house behave otherwise than it was drawn. */
public enum Cause {
    LEAK(
            "a leak that nobody saw",
            "More flow and less vacuum, most so on the leak's own side: the air comes in by a way that was not drawn."),
    TIGHT(
            "the fill is tighter than thought",
            "Less flow, and less vacuum the further from the pit: the pit itself is held as well as ever, or better."),
    LOOSE(
            "the fill is looser than thought",
            "Much more flow and less vacuum in the pit, since the fan gives way, and yet more at the far hole: in looser fill the vacuum evens out."),
    FOOTING(
            "a footing that nobody drew",
            "Less flow, more vacuum on the near side, next to none beyond: the far side no longer feeds the pit."),
    SMALL_PIT(
            "the pit is far too small",
            "Less flow, and every hole weaker in about one proportion: the vacuum is lost at the rim of the pit."),
    NOTHING("nothing: the house is as drawn", "All readings lie within the meter's scatter of the prediction.");

    private final String words;
    private final String sign;

    Cause(String words, String sign) {
        this.words = words;
        this.sign = sign;
    }

    public String words() {
        return words;
    }

    /** How it shows. */
    public String sign() {
        return sign;
    }

    /** The house with this cause in it, its place and size drawn by lot. */
    UnaryOperator<Scenario> hidden(RandomGenerator lot) {
        return switch (this) {
            case LEAK ->
                leak(new Point(7.5 + 3 * lot.nextDouble(), 1 + 5 * lot.nextDouble()), 0.004 + 0.008 * lot.nextDouble());
            case TIGHT -> fill(1 / (3 + 3 * lot.nextDouble()));
            case LOOSE -> fill(3 + 3 * lot.nextDouble());
            case FOOTING -> footing(4.5 + 2.5 * lot.nextDouble());
            case SMALL_PIT ->
                s -> s.withSuctionPoint(
                        "S1",
                        p -> new SuctionPoint(
                                p.id(),
                                p.at(),
                                Optional.empty(),
                                new SuctionPoint.Pit(SuctionPoint.Pit.CORE_ONLY / 2),
                                p.source(),
                                p.openWhenOff()));
            case NOTHING -> s -> s;
        };
    }

    private static UnaryOperator<Scenario> leak(Point at, double area) {
        return s -> s.withOpenings(Stream.concat(
                        s.openings().stream(),
                        Stream.of(new Opening(
                                "the leak",
                                OpeningKind.PENETRATION,
                                new Opening.Spot(at, 0.1),
                                new Opening.Orifice(area, Opening.Orifice.USUAL_COEFFICIENT),
                                Seal.of(SealState.OPEN))))
                .toList());
    }

    private static UnaryOperator<Scenario> fill(double factor) {
        return s -> {
            Fill f = s.layer().fill();
            return s.withLayer(new Layer(
                    Fill.of(f.thickness(), factor * f.permeability(), f.inertial()),
                    s.layer().zones()));
        };
    }

    private static UnaryOperator<Scenario> footing(double x) {
        return s -> {
            double top = s.slabs().get(0).outline().stream()
                    .mapToDouble(Point::y)
                    .max()
                    .orElseThrow();
            Path across = new Path(List.of(new Point(x, 0), new Point(x, top)));
            return s.withBarriers(List.of(new Barrier("the footing", across, 0.4, 0, true, List.of())));
        };
    }
}
