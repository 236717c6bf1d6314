package slabfield.model;

import java.util.List;

/**
 * Where the branches of several suction points meet: a common pipe with one fan.
 *
 * @param id what the user calls it
 * @param curve of its fan: pressure rise against flow
 * @param run stretches of pipe from the joint to the discharge, in their order; empty for no loss
 * @param discharge pressure where the air leaves, relative to the room at floor level [Pa]
 */
public record Riser(String id, Source.FanCurve curve, List<Source.Pipe> run, double discharge) {
    public Riser {
        Check.name("id", id);
        Check.present("fan", curve);
        run = Check.list("pipes", run);
        Check.finite("discharge", discharge);
    }
}
