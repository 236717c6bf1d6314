package slabfield.desktop.drawing;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * All things of one kind in a scenario: how to get at them, and how to make one like another with another name or place.
 *
 * @param kind what they are
 * @param list where a scenario keeps them
 * @param put a scenario with others in their place
 * @param name what the user calls one
 * @param renamed one with another name
 * @param form how one lies on the plan
 * @param reshaped one at other points, of which there are enough
 */
record Family<T>(
        Kind kind,
        Function<Scenario, List<T>> list,
        BiFunction<Scenario, List<T>, Scenario> put,
        Function<T, String> name,
        BiFunction<T, String, T> renamed,
        BiFunction<Scenario, T, Form> form,
        BiFunction<T, List<Point>, T> reshaped) {

    Stream<T> of(Scenario scenario, String id) {
        return list.apply(scenario).stream().filter(t -> name.apply(t).equals(id));
    }

    Scenario change(Scenario scenario, String id, UnaryOperator<T> change) {
        return put.apply(
                scenario,
                list.apply(scenario).stream()
                        .map(t -> name.apply(t).equals(id) ? change.apply(t) : t)
                        .toList());
    }

    Scenario reshape(Scenario scenario, String id, List<Point> points) {
        return change(scenario, id, t -> reshaped.apply(t, points));
    }

    Scenario rename(Scenario scenario, String id, String other) {
        return change(scenario, id, t -> renamed.apply(t, other));
    }

    Scenario without(Scenario scenario, String id) {
        return put.apply(
                scenario,
                list.apply(scenario).stream()
                        .filter(t -> !name.apply(t).equals(id))
                        .toList());
    }

    Scenario with(Scenario scenario, T another) {
        return put.apply(
                scenario,
                Stream.concat(list.apply(scenario).stream(), Stream.of(another)).toList());
    }

    /** One from another scenario, under a name of its own, moved. */
    Scenario copy(Scenario from, String id, Scenario to, String newName, double dx, double dy) {
        return of(from, id)
                .findFirst()
                .map(t -> reshaped.apply(
                        renamed.apply(t, newName),
                        Places.moved(form.apply(from, t).points(), dx, dy)))
                .map(t -> with(to, t))
                .orElse(to);
    }
}
