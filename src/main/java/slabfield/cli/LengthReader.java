package slabfield.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;

/** Reads a length with its unit from an option [m]. */
final class LengthReader implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
        try {
            return Quantity.parse(text, Dimension.LENGTH);
        } catch (NotAQuantity e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
