package slabfield.desktop.viewmodel.compare;

import java.util.OptionalDouble;
import slabfield.equipment.DrawnPower;
import slabfield.equipment.YearlyCost;
import slabfield.field.Result;

/**
 * What is decided by when options are compared.
 *
 * @param weakest vacuum at the weakest place [Pa]
 * @param meeting part of the area that meets the target
 * @param exhaust [m3/s]
 * @param roomAir drawn from the room [m3/s]
 * @param watts of all fans; empty where the house's list of fans does not give the power of one that is drawn [W]
 * @param cost of a year, at the upper bound, in the user's currency; empty where prices, climate or power are not given
 */
public record Option(
        double weakest, double meeting, double exhaust, double roomAir, OptionalDouble watts, OptionalDouble cost) {
    public static Option of(Result.Solved solved) {
        OptionalDouble watts = DrawnPower.of(solved);
        YearlyCost cost = YearlyCost.of(solved.scenario(), watts, solved.flows().fromRoom());
        return new Option(
                solved.coverage().weakest(),
                solved.coverage().meeting(),
                solved.flows().exhaust(),
                solved.flows().fromRoom(),
                watts,
                cost.most());
    }
}
