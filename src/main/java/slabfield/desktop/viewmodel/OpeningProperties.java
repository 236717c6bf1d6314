package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Properties of an opening in the slab. */
final class OpeningProperties {
    private final Opening opening;
    private final List<Property> list = new ArrayList<>();

    private OpeningProperties(Opening opening) {
        this.opening = opening;
    }

    static List<Property> of(Scenario scenario, String id, Units units) {
        OpeningProperties properties =
                new OpeningProperties(scenario.opening(id).orElseThrow());
        properties.fill(units);
        return properties.list;
    }

    private void fill(Units units) {
        add(
                "Kind",
                "For people; it decides nothing in the flow.",
                Arrays.stream(OpeningKind.values()).map(OpeningKind::word).toList(),
                opening.kind().word(),
                (o, word) -> new Opening(o.id(), kind(word), o.place(), o.passage(), o.seal()));
        add(
                "State",
                "How far it is closed.",
                Properties.states(),
                opening.seal().state().word(),
                (o, word) -> o.with(Seal.of(Properties.state(word))));
        if (opening.place() instanceof Opening.Spot spot)
            add(
                    "Radius",
                    "Of the disc that meets the layer.",
                    List.of(),
                    units.length(spot.radius()),
                    (o, text) -> new Opening(
                            o.id(),
                            o.kind(),
                            new Opening.Spot(
                                    ((Opening.Spot) o.place()).at(),
                                    Typed.length(text, units.length().get())),
                            o.passage(),
                            o.seal()));
        passage();
    }

    private void passage() {
        if (opening.passage() instanceof Opening.Crack crack) {
            add(
                    "Width of the slit",
                    "Such as 0.5 mm or 1/32 in.",
                    List.of(),
                    Quantity.format(crack.width(), Unit.MILLIMETRE, 3),
                    (o, text) -> through(
                            o,
                            new Opening.Crack(
                                    Typed.length(text, Unit.MILLIMETRE), ((Opening.Crack) o.passage()).bends())));
        } else if (opening.passage() instanceof Opening.Orifice orifice) {
            Unit square = Unit.find("cm2", Dimension.AREA).orElseThrow();
            add(
                    "Open area",
                    "With its unit, such as 40 in2 or 5 cm2.",
                    List.of(),
                    Quantity.format(orifice.area(), square, 3),
                    (o, text) -> through(
                            o,
                            new Opening.Orifice(
                                    Quantity.parse(text, Dimension.AREA),
                                    ((Opening.Orifice) o.passage()).dischargeCoefficient())));
        }
    }

    private static Opening through(Opening o, Opening.Passage passage) {
        return new Opening(o.id(), o.kind(), o.place(), passage, o.seal());
    }

    private interface Change {
        Opening of(Opening opening, String text);
    }

    private void add(String label, String help, List<String> choices, String value, Change change) {
        list.add(new Property(
                label,
                help,
                choices,
                value,
                (s, text) -> s.withOpenings(
                        Properties.with(s.openings(), Opening::id, opening.id(), o -> change.of(o, text)))));
    }

    private static OpeningKind kind(String word) {
        return Arrays.stream(OpeningKind.values())
                .filter(k -> k.word().equals(word))
                .findFirst()
                .orElseThrow();
    }
}
