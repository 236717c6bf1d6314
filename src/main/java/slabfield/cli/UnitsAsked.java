package slabfield.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import slabfield.model.Display;
import slabfield.quantity.Dimension;
import slabfield.quantity.Unit;
import slabfield.wording.Nearest;

/**
 * Units that the user asked for, such as "inH2O,cfm,ft"; those not named are the scenario's.
 *
 * @param units by kind, at most one of each
 */
record UnitsAsked(Map<Dimension, Unit> units) {
    /** The scenario's own. */
    static final UnitsAsked NONE = new UnitsAsked(Map.of());

    private static final List<Dimension> KINDS = List.of(Dimension.PRESSURE, Dimension.FLOW, Dimension.LENGTH);

    Shown over(Display display) {
        return new Shown(
                one(Dimension.PRESSURE, display.pressure()),
                one(Dimension.FLOW, display.flow()),
                one(Dimension.LENGTH, display.length()));
    }

    private Unit one(Dimension kind, String drawn) {
        return Optional.ofNullable(units.get(kind))
                .or(() -> Unit.find(drawn, kind))
                .orElseThrow(
                        () -> new IllegalStateException("a scenario shows its results in known units, not " + drawn));
    }

    /** Reads the option's text. */
    static final class Reader implements ITypeConverter<UnitsAsked> {
        @Override
        public UnitsAsked convert(String text) {
            Map<Dimension, Unit> units = new EnumMap<>(Dimension.class);
            List<String> wrong = new ArrayList<>();
            for (String symbol : text.split(",")) {
                Optional<Unit> unit = KINDS.stream()
                        .flatMap(kind -> Unit.find(symbol, kind).stream())
                        .findFirst();
                if (unit.isEmpty())
                    wrong.add('"' + symbol.strip() + "\" is no unit of pressure, flow or length; "
                            + Nearest.hint(symbol.strip(), symbols()));
                else if (units.put(unit.get().dimension(), unit.get()) != null)
                    wrong.add('"' + text + "\" names two units for "
                            + unit.get().dimension().words());
            }
            if (!wrong.isEmpty()) throw new TypeConversionException(String.join("; ", wrong));
            return new UnitsAsked(units);
        }

        private static List<String> symbols() {
            return KINDS.stream()
                    .flatMap(kind -> Unit.of(kind).stream())
                    .map(Unit::symbol)
                    .toList();
        }
    }
}
