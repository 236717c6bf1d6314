package slabfield.desktop.viewmodel.work;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.quantity.Unit;

/** The units in which the numbers of a stage are typed and shown. */
final class ReadingUnits {
    private final Units units;

    ReadingUnits(Units units) {
        this.units = units;
    }

    /** Empty for a mere number. */
    Optional<Unit> of(Slot slot) {
        return switch (slot.what()) {
            case FLOW -> Optional.of(units.flow().get());
            case WAITED -> Optional.of(Unit.SECOND);
            case COUNT -> Optional.empty();
            case OFF, ON, RISER, PIT, SPREAD -> Optional.of(units.pressure().get());
        };
    }

    boolean isPressure(Slot slot) {
        return of(slot).filter(Units.PRESSURES::contains).isPresent();
    }

    String symbol(Slot slot) {
        return of(slot).map(Unit::symbol).orElse("");
    }

    double toSi(Slot slot, double typed) {
        return of(slot).map(u -> u.toSi(typed)).orElse(typed);
    }

    /** A number in SI as it is shown, without its unit; empty where there is none. */
    String number(Slot slot, OptionalDouble si) {
        if (si.isEmpty()) return "";
        double v = si.getAsDouble();
        return switch (slot.what()) {
            case FLOW -> units.shown().get().flow(v);
            case COUNT, WAITED -> BigDecimal.valueOf(v).stripTrailingZeros().toPlainString();
            case SPREAD -> units.shown().get().round(v);
            case OFF, ON, RISER, PIT -> units.pressureNumber(v);
        };
    }
}
