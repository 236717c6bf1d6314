package slabfield.desktop.viewmodel;

import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Layer;
import slabfield.model.Scenario;
import slabfield.model.Zone;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Properties of the ground: by a word, or by numbers. */
final class FillProperties {
    private static final List<String> WORDS = Arrays.stream(FillWord.values())
            .filter(w -> w != FillWord.MEASURED)
            .map(FillWord::words)
            .toList();

    private FillProperties() {}

    static List<Property> ofZone(Scenario scenario, String zone, Units units) {
        Fill fill = scenario.layer().zones().stream()
                .filter(z -> z.id().equals(zone))
                .findFirst()
                .orElseThrow()
                .fill();
        return of(
                fill,
                units,
                (s, change) -> s.withLayer(new Layer(
                        s.layer().fill(),
                        Properties.with(
                                s.layer().zones(),
                                Zone::id,
                                zone,
                                z -> new Zone(z.id(), z.outline(), change.apply(z.fill()))))));
    }

    static List<Property> ofLayer(Scenario scenario, Units units) {
        return of(
                scenario.layer().fill(),
                units,
                (s, change) -> s.withLayer(
                        new Layer(change.apply(s.layer().fill()), s.layer().zones())));
    }

    private static List<Property> of(Fill fill, Units units, BiFunction<Scenario, UnaryOperator<Fill>, Scenario> put) {
        Unit square = Unit.find("m2", Dimension.PERMEABILITY).orElseThrow();
        return List.of(
                new Property(
                        "Fill",
                        "What lies under the slab; the word gives a usual permeability.",
                        WORDS,
                        fill.word().words(),
                        (s, word) -> put.apply(s, f -> Fill.of(word(word), f.thickness()))),
                new Property(
                        "Layer thickness",
                        "Depth of the layer that air flows in.",
                        List.of(),
                        units.length(fill.thickness()),
                        (s, text) -> put.apply(
                                s,
                                f -> thick(f, Typed.length(text, units.length().get())))),
                new Property(
                        "Permeability",
                        "With its unit, such as 2e-9 m2; a number of yours replaces the word.",
                        List.of(),
                        Quantity.format(fill.permeability(), square, 3),
                        (s, text) -> put.apply(
                                s,
                                f -> Fill.of(
                                        f.thickness(), Quantity.parse(text, Dimension.PERMEABILITY), f.inertial()))));
    }

    private static Fill thick(Fill fill, double thickness) {
        return fill.word() == FillWord.MEASURED
                ? Fill.of(thickness, fill.permeability(), fill.inertial())
                : Fill.of(fill.word(), thickness);
    }

    private static FillWord word(String words) {
        return Arrays.stream(FillWord.values())
                .filter(w -> w.words().equals(words))
                .findFirst()
                .orElseThrow();
    }
}
