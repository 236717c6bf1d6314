package slabfield.model;

/**
 * What a person says came out of the hole, with the value used when nothing better is known and the range that the word
 * can mean. All are assumptions and shown as such.
 *
 * <p>Clean stone: Ergun (1952) for 10 mm spheres at a porosity of 0.40, k = e^3 d^2 / (150 (1-e)^2) and inertial
 * coefficient 1.75 (1-e) / (e^3 d); real aggregate with fines is tighter. Sand and silt or clay: orders of magnitude after
 * Nazaroff (1992), from memory. Mixed: between coarse sand and gravel of the same table. Void: a gap between flat plates,
 * k = t^2 / 12 with t its height.
 */
public enum FillWord {
    CLEAN_STONE("clean stone", 1.185e-7, 1e-8, 1e-6, 1641),
    MIXED("mixed", 2e-9, 5e-10, 1e-8, 0),
    SAND("sand", 1e-10, 5e-12, 5e-10, 0),
    SILT_OR_CLAY("silt or clay", 5e-14, 1e-16, 5e-13, 0),
    VOID("void", Double.NaN, Double.NaN, Double.NaN, 0),
    MEASURED("given by numbers", Double.NaN, Double.NaN, Double.NaN, 0);

    private final String words;
    private final double permeability;
    private final double low;
    private final double high;
    private final double inertial;

    FillWord(String words, double permeability, double low, double high, double inertial) {
        this.words = words;
        this.permeability = permeability;
        this.low = low;
        this.high = high;
        this.inertial = inertial;
    }

    public String words() {
        return words;
    }

    /**
     * Permeability assumed for this word.
     *
     * @param thickness height of the layer, which sets that of a void [m]
     * @return NaN for {@link #MEASURED} [m2]
     */
    public double permeability(double thickness) {
        return this == VOID ? thickness * thickness / 12 : permeability;
    }

    /** Least permeability that the word can mean [m2]; NaN where the word sets none. */
    public double leastPermeability() {
        return low;
    }

    /** Largest permeability that the word can mean [m2]; NaN where the word sets none. */
    public double largestPermeability() {
        return high;
    }

    /** Inertial (Forchheimer) coefficient assumed for this word [1/m]. */
    public double inertial() {
        return inertial;
    }
}
