package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import slabfield.field.Result;

/**
 * Air that enters the layer at one place.
 *
 * @param source the opening, part of a wall, or soil
 * @param flow into the layer, below 0 where it leaves there [m3/s]
 * @param share of the exhaust; NaN where nothing is drawn
 */
public record AirShare(String source, double flow, double share) {
    /** All sources, the largest first. */
    public static List<AirShare> of(Result.Solved solved) {
        double exhaust = solved.flows().exhaust();
        List<AirShare> all = new ArrayList<>();
        solved.flows()
                .bySource()
                .forEach((name, flow) -> all.add(new AirShare(name, flow, exhaust > 0 ? flow / exhaust : Double.NaN)));
        all.sort(Comparator.comparingDouble((AirShare a) -> -Math.abs(a.flow())));
        return all;
    }

    /** The share in words. */
    public String shareText() {
        return share < 0 ? "leaves here" : Words.percent(share);
    }
}
