package slabfield.desktop.viewmodel;

import java.util.Optional;
import slabfield.desktop.drawing.Places;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Underlay;

/** What is done with the picture that a plan is traced from. */
public final class Tracing {
    /** A picture is laid this wide until it is scaled [m]. */
    private static final double FIRST_WIDTH = 12;

    private Tracing() {}

    /** The scenario with a picture laid at the origin, as wide as a house may be. */
    public static Scenario laid(Scenario s, String picture, int pixelsWide) {
        return with(s, new Underlay(picture, new Point(0, 0), FIRST_WIDTH / pixelsWide, 0));
    }

    /** The picture enlarged about a place that stays where it is. */
    static Scenario scaled(Scenario s, Point fixed, double factor) {
        return s.plan()
                .underlay()
                .map(u -> with(
                        s,
                        new Underlay(
                                u.picture(),
                                Places.whole(
                                        fixed.x() + factor * (u.corner().x() - fixed.x()),
                                        fixed.y() + factor * (u.corner().y() - fixed.y())),
                                factor * u.pixel(),
                                u.turned())))
                .orElse(s);
    }

    private static Scenario with(Scenario s, Underlay underlay) {
        return s.withPlan(s.plan().withUnderlay(Optional.of(underlay)));
    }
}
