package slabfield.model;

/**
 * A picture that the plan is traced from.
 *
 * @param picture file name, in the scenario's own folder or below it, with forward slashes
 * @param corner place on the plan of the picture's lower left corner
 * @param pixel side of a pixel on the plan [m]
 * @param turned how far the picture is turned about that corner, counter-clockwise [degree]
 */
public record Underlay(String picture, Point corner, double pixel, double turned) {
    public Underlay {
        Check.name("picture", picture);
        if (picture.startsWith("/")
                || picture.contains("\\")
                || picture.contains(":")
                || ("/" + picture + "/").contains("/../"))
            throw new ImpossibleValue(
                    "picture", "must lie in the scenario's own folder; write its name without a path");
        Check.present("corner", corner);
        Check.positive("pixel", pixel);
        Check.finite("turned", turned);
    }
}
