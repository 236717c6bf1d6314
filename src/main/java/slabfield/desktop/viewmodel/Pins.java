package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.stream.Stream;
import slabfield.model.Point;

/**
 * The places that somebody pinned on the map, by value. They are a step of the history like any edit, but no part of the
 * house, and are not saved with it.
 *
 * @param all in the order in which they were set
 * @param last the highest number given so far; a number taken away is not given again
 */
public record Pins(List<Pin> all, int last) {
    /** No place is pinned. */
    public static final Pins NONE = new Pins(List.of(), 0);

    /** A pinned place, by a number that it keeps. */
    public record Pin(int number, Point at) {}

    public Pins {
        all = List.copyOf(all);
    }

    Pins with(Point at) {
        return new Pins(
                Stream.concat(all.stream(), Stream.of(new Pin(last + 1, at))).toList(), last + 1);
    }

    Pins without(int number) {
        return new Pins(all.stream().filter(p -> p.number() != number).toList(), last);
    }

    Pins moved(int number, Point to) {
        return new Pins(
                all.stream()
                        .map(p -> p.number() == number ? new Pin(number, to) : p)
                        .toList(),
                last);
    }
}
