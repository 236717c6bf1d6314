package slabfield.desktop.drawing;

import java.util.List;
import slabfield.model.Point;

/**
 * Where the pointer counts as being.
 *
 * @param at the place
 * @param sort what it was drawn to
 * @param guides places that it stands in line with, to be shown
 */
public record Snap(Point at, Sort sort, List<Point> guides) {
    /** What a place was drawn to, the strongest first. */
    public enum Sort {
        CORNER("corner"),
        MIDPOINT("middle of an edge"),
        CROSSING("crossing"),
        PERPENDICULAR("square on an edge"),
        EDGE("on an edge"),
        STRAIGHT("straight"),
        ALIGNED("in line"),
        GRID("grid"),
        FREE("free");

        private final String words;

        Sort(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Snap {
        guides = List.copyOf(guides);
    }

    /** A place that nothing draws. */
    public static Snap free(Point at) {
        return new Snap(Places.whole(at.x(), at.y()), Sort.FREE, List.of());
    }
}
