package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Quantities and units of any kind in a case file, in SI. */
final class Amounts {
    private Amounts() {}

    /** One of a unit in SI; "-" has no unit. */
    static double unit(String written) throws CaseProblem {
        if (written.equals("-")) return 1;
        for (Dimension d : Dimension.values()) {
            Optional<Unit> unit = Unit.find(written, d);
            if (unit.isPresent()) return unit.get().toSi(1) - unit.get().toSi(0);
        }
        throw new CaseProblem("the unit " + written + " is not known; give its size as \"unitSize\"");
    }

    /** A quantity such as "100 ft" in SI; a plain number as it is. */
    static double of(String written) throws CaseProblem {
        for (Dimension d : Dimension.values()) {
            try {
                return Quantity.parse(written, d);
            } catch (NotAQuantity e) {
                // of another kind, perhaps
            }
        }
        throw new CaseProblem("\"" + written + "\" is no quantity with a unit");
    }

    /** A number, a quantity, or a product or ratio of such. */
    static double of(JsonNode node) throws CaseProblem {
        return new Values(node, 1).of(node);
    }
}
