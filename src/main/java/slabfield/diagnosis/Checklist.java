package slabfield.diagnosis;

import java.util.List;

/**
 * Patterns that flow under the slab cannot weigh, or not alone: what is seen, what is likely behind it, and what to look at
 * next. All common practice unless the reason names a law.
 *
 * @param pattern what is seen
 * @param cause what is likely behind it
 * @param check what to do next
 * @param reason why
 * @param stop true where work stops until it is cleared
 */
public record Checklist(String pattern, String cause, String check, String reason, boolean stop) {
    /** All rows; those that stop the work first. */
    public static List<Checklist> all() {
        return List.of(
                stop(
                        "The draft at a heater or water heater turns round when the system is on.",
                        "The system or open leaks take air out of the house.",
                        "Switch the system off and have the combustion air put right.",
                        "No pressure computed here tells whether an appliance vents."),
                row(
                        "Suction is high only while the pipe is lifted.",
                        "The pipe's end stands in soil or in water.",
                        "Lift the pipe and look into the pit.",
                        "The model takes the pit as open."),
                row(
                        "Next to no flow, and the fan's own shut-off suction in the riser.",
                        "Water in a low spot, a closed valve, ice at the outlet.",
                        "Slope, drain, look.",
                        "A riser read between fan and blockage shows the fan, not the pit."),
                row(
                        "Much flow, little suction, and every hole is good.",
                        "Open stone below the whole slab.",
                        "Try a fan of less power; work out the pipe's friction.",
                        "Little suction is enough where nothing resists."),
                row(
                        "Only holes along walls respond.",
                        "A tile along the footing, or a gap left by settling.",
                        "Drill a hole in mid-slab; look whether the tile is closed.",
                        "A path that is not drawn is weighed only towards holes."),
                row(
                        "One hole is far weaker than its neighbours.",
                        "The hole is not through, in plastic, or wet; or there is an opening beside it.",
                        "Drill it again and probe; smoke within 1 m.",
                        "Only the opening is weighed."),
                row(
                        "Fan on and fan off read the same.",
                        "The hole is clogged, or the hose is on the wrong port.",
                        "Blow it out, swap ports, check a near hole.",
                        "No layer stays without any answer."),
                row(
                        "Above the room with the fan on.",
                        "Hoses are swapped, the test vacuum blows into the room, or a supply duct runs below the slab.",
                        "Swap them, lead the exhaust outdoors, look for ducts.",
                        "Suction cannot push (maximum principle)."),
                row(
                        "A hole is stronger than the suction.",
                        "The baseline was not taken off, units are mixed, or a second system draws.",
                        "Check the units; shut the other stack.",
                        "No place can lie below all suction (maximum principle)."),
                row(
                        "The reading still creeps after minutes.",
                        "Tight fill with much air in it.",
                        "Wait as long as the settling time says, and log.",
                        "The fill's storage has to empty first."),
                row(
                        "Readings swing by several pascals.",
                        "Wind, doors, a furnace that cycles, a probe that leaks.",
                        "Log 60 s, read on and off in pairs, seal the probe.",
                        "One value of a swinging pressure is noise."),
                row(
                        "Readings pass in mild weather and fail in winter.",
                        "No allowance for the season.",
                        "Work out the worst day; log a cold day.",
                        "Stack pressure grows with the cold."),
                row(
                        "Sealed, and neither flow nor holes change.",
                        "What was sealed was not the leak, or the soil resists and not the crack.",
                        "Uncover and try the next one.",
                        "A leak that carries no air costs none."),
                row(
                        "Sealed, flow falls and far holes rise a lot.",
                        "The leak was real.",
                        "Choose the fan again; a smaller one may do.",
                        "Less air is drawn for the same reach."),
                row(
                        "Sealed, near holes rise and far ones do not.",
                        "A barrier, or a second leak in the far part.",
                        "Read a pair of holes 0.3 m to either side of the suspected line.",
                        "What is gained near does not get across."),
                row(
                        "The slab is good, an adjoining slab shows nothing, radon is still high.",
                        "The other slab is not connected.",
                        "Drill there; give it a point of its own.",
                        "Vacuum needs a way through fill or tile."),
                row(
                        "Every hole is strong and radon is still high.",
                        "Another source: wall cavity, water, a slab left out, exhaust that comes back, a faulty test.",
                        "Read walls and wings, look at the discharge, test again.",
                        "Vacuum below this slab says nothing of other ways in."),
                row(
                        "The wall's cavity is at room pressure or above while the slab is good.",
                        "The wall is not reached, or its tops are open.",
                        "Close the tops; then a point at the wall.",
                        "The foot's joint resists more than open tops do."),
                row(
                        "A stronger fan brings much more flow and hardly more vacuum.",
                        "Leaks, or stone in which the flow is turbulent.",
                        "Seal first.",
                        "Both resist with the square of the flow."),
                row(
                        "Hole over suction changes with the level of suction.",
                        "Turbulent flow, or a leak that opens.",
                        "Read at two or three levels and fit the inertial coefficient.",
                        "In a linear house the ratio stays (Darcy)."),
                row(
                        "A huge flow, weak vacuum, ground that lets everything through.",
                        "Vacuum cannot be held.",
                        "Ask a specialist about other methods.",
                        "Soil feeds the layer as fast as it is drawn."),
                row(
                        "Water rises in pit or holes after the start.",
                        "A high water table, or the tile's level.",
                        "Stop the fan, find where it can drain.",
                        "Suction lifts water by its own head."),
                row(
                        "A second suction point adds nothing.",
                        "It draws on what the first has already, or its pipe starves.",
                        "Balance the valves; read the suction in each branch.",
                        "Two points share one zone."),
                row(
                        "It smells of sewer when the system is on.",
                        "A dry trap or a broken drain below the slab.",
                        "Fill the traps, fit trapped covers, call a plumber.",
                        "The suction draws on the drain."));
    }

    private static Checklist row(String pattern, String cause, String check, String reason) {
        return new Checklist(pattern, cause, check, reason, false);
    }

    private static Checklist stop(String pattern, String cause, String check, String reason) {
        return new Checklist(pattern, cause, check, reason, true);
    }
}
