package slabfield.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;

/** Reads a quantity with its unit from an option, in SI. */
class QuantityOption implements ITypeConverter<Double> {
    private final Dimension dimension;

    private QuantityOption(Dimension dimension) {
        this.dimension = dimension;
    }

    @Override
    public Double convert(String text) {
        try {
            return Quantity.parse(text, dimension);
        } catch (NotAQuantity e) {
            throw new TypeConversionException(e.getMessage());
        }
    }

    static final class OfPressure extends QuantityOption {
        OfPressure() {
            super(Dimension.PRESSURE);
        }
    }

    static final class OfSpeed extends QuantityOption {
        OfSpeed() {
            super(Dimension.SPEED);
        }
    }

    static final class OfTemperature extends QuantityOption {
        OfTemperature() {
            super(Dimension.TEMPERATURE);
        }
    }

    static final class OfDuration extends QuantityOption {
        OfDuration() {
            super(Dimension.DURATION);
        }
    }
}
