package slabfield.model;

/**
 * The material that air moves through below a slab.
 *
 * @param word what the user called it
 * @param thickness height of the layer [m]
 * @param permeability k in Darcy's law [m2]
 * @param inertial beta in the Darcy-Forchheimer law, 0 for Darcy alone [1/m]
 * @param assumed true where permeability comes from the word and not from a number of the user's
 */
public record Fill(FillWord word, double thickness, double permeability, double inertial, boolean assumed) {
    public static final double USUAL_THICKNESS = 0.1016;

    public Fill {
        Check.present("fill", word);
        Check.positive("thickness", thickness);
        Check.positive("permeability", permeability);
        Check.notNegative("inertial", inertial);
    }

    /** A fill known only by its word. */
    public static Fill of(FillWord word, double thickness) {
        return new Fill(word, thickness, word.permeability(thickness), word.inertial(), true);
    }

    /** A fill given by numbers. */
    public static Fill of(double thickness, double permeability, double inertial) {
        return new Fill(FillWord.MEASURED, thickness, permeability, inertial, false);
    }
}
