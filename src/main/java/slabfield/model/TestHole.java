package slabfield.model;

/**
 * A small hole through the slab at which the pressure below is read.
 *
 * @param id what the user calls it
 * @param at place on the plan
 * @param found what was met below, in the user's words, or empty
 */
public record TestHole(String id, Point at, String found) {
    public TestHole {
        Check.name("id", id);
        Check.present("at", at);
        Check.text("found", found);
    }
}
