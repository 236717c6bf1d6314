package slabfield.field;

import java.util.List;

/**
 * A fan against what it works on.
 *
 * @param name of the fan
 * @param fan flow [m3/s] and pressure rise [Pa], pairs by rising flow
 * @param system flow [m3/s] and suction that pipe and slab together ask for [Pa], from 0 upwards
 * @param slab flow [m3/s] and suction that the slab alone asks for [Pa]
 * @param flow at which the system works, as solved [m3/s]
 * @param rise of the fan there [Pa]
 */
public record SystemCurve(
        String name, List<double[]> fan, List<double[]> system, List<double[]> slab, double flow, double rise) {}
