package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Air;
import slabfield.model.Display;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;

/** Houses for tests of the fit. */
final class MadeHouses {
    private MadeHouses() {}

    static List<Point> rectangle(double width, double height) {
        return List.of(new Point(0, 0), new Point(width, 0), new Point(width, height), new Point(0, height));
    }

    /** A rectangle on even fill with one suction point and nothing else. */
    static Scenario plain(double width, double height, double k, double soil, Point pit, Source source, double cell) {
        return new Scenario(
                "made",
                "",
                "",
                Display.SI,
                List.of(new Slab("slab", rectangle(width, height), List.of(), 0.1, true)),
                new Layer(Fill.of(0.1, k, 0), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.<Opening>of(),
                soil,
                0,
                Air.STANDARD,
                List.of(new SuctionPoint("S", pit, Optional.empty(), new SuctionPoint.Pit(0.05), source, false)),
                List.of(),
                List.of(),
                Target.COMMON_PRACTICE,
                cell);
    }

    /** The same house with a hole at each place, named by its number from 1, and what was read there in one stage. */
    static Scenario read(Scenario house, List<Point> places, List<Double> readings, double spread) {
        List<TestHole> holes = new ArrayList<>();
        List<Stage.HoleReading> read = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            String id = String.valueOf(i + 1);
            holes.add(new TestHole(id, places.get(i), ""));
            read.add(reading(id, readings.get(i), spread));
        }
        Stage stage = new Stage("test", StageKind.COMMUNICATION_TEST, Map.of(), Map.of(), read, List.of(), "", "");
        return house.withTestHoles(holes).withStages(List.of(stage));
    }

    static Stage.HoleReading reading(String hole, double fanOn, double spread) {
        return new Stage.HoleReading(
                hole,
                OptionalDouble.empty(),
                OptionalDouble.of(fanOn),
                OptionalDouble.of(spread),
                OptionalDouble.of(1e-6),
                "");
    }
}
