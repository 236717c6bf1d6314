package slabfield.model;

/**
 * Units to show results in, by their symbols.
 *
 * @param pressure such as "Pa" or "inH2O"
 * @param flow such as "cfm", "L/s" or "m3/h"
 * @param length such as "ft" or "m"; also the unit of the plan coordinates in the file
 */
public record Display(String pressure, String flow, String length) {
    public static final Display SI = new Display("Pa", "L/s", "m");

    public Display {
        Check.name("pressure", pressure);
        Check.name("flow", flow);
        Check.name("length", length);
    }
}
