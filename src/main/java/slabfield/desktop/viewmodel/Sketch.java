package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Optional;
import slabfield.desktop.drawing.Snap;
import slabfield.model.Point;

/**
 * What is being drawn and is not yet part of the house.
 *
 * @param line its points so far, the pointer's place last
 * @param closed whether the last joins the first
 * @param frame true where the line is a frame to select with
 * @param snap what the pointer's place was drawn to
 * @param words measures to show at the pointer
 */
public record Sketch(List<Point> line, boolean closed, boolean frame, Optional<Snap> snap, String words) {
    public static final Sketch NONE = new Sketch(List.of(), false, false, Optional.empty(), "");

    public Sketch {
        line = List.copyOf(line);
    }
}
