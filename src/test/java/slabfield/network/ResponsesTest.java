package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Gap;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** The outlook of a further suction point against a full solve with it. */
class ResponsesTest {
    private static Scenario house(double inertial) {
        return Houses.on(2e-8, inertial)
                .rectangle(0, 0, 10, 8)
                .barrier(0.4, 0, List.of(new Gap(new Point(5, 4), 0.9)), 5, 0, 5, 8)
                .leakance(2e-6)
                .suction("S", 2, 4, 0.15, new Source.Pressure(-200))
                .scenario();
    }

    private static Result.Solved withPoint(Scenario s, Point at, Source source) {
        List<SuctionPoint> points = new java.util.ArrayList<>(s.suctionPoints());
        points.add(new SuctionPoint("new", at, java.util.Optional.empty(), new SuctionPoint.Pit(0.15), source, false));
        return Houses.solve(s.withSuctionPoints(points));
    }

    /** In a linear house the two agree but for the pit, whose tie the outlook takes from Peaceman's radius. */
    @ParameterizedTest
    @CsvSource({"7.55,2.05", "8.55,6.45", "6.05,4.05"})
    void linearHouse(double x, double y) {
        Scenario s = house(0);
        Point at = new Point(x, y);
        Responses.Outlook held = Responses.of(s, Progress.NONE)
                .orElseThrow()
                .holding(at, 0.15, -200)
                .orElseThrow();
        Result.Solved full = withPoint(s, at, new Source.Pressure(-200));
        assertThat(held.flow()).isCloseTo(full.suction("new").orElseThrow().flow(), Percentage.withPercentage(2));
        assertThat(held.weakest()).isCloseTo(full.coverage().weakest(), Percentage.withPercentage(2));
        Responses.Outlook drawn =
                Responses.of(s, Progress.NONE).orElseThrow().drawing(at, 0.005).orElseThrow();
        assertThat(drawn.weakest())
                .isCloseTo(
                        withPoint(s, at, new Source.Flow(0.005)).coverage().weakest(), Percentage.withPercentage(0.5));
    }

    /** In coarse stone the outlook is an estimate on the hopeful side, good enough to tell places apart. */
    @ParameterizedTest
    @CsvSource({"7.55,2.05", "8.55,6.45"})
    void coarseStone(double x, double y) {
        Scenario s = house(1500);
        Point at = new Point(x, y);
        Responses.Outlook held = Responses.of(s, Progress.NONE)
                .orElseThrow()
                .holding(at, 0.15, -200)
                .orElseThrow();
        Result.Solved full = withPoint(s, at, new Source.Pressure(-200));
        assertThat(held.weakest()).isCloseTo(full.coverage().weakest(), Percentage.withPercentage(20));
    }
}
