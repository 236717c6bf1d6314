package slabfield.diagnosis;

/** What can be wrong with a house, as far as flow under the slab can weigh it. */
public enum Cause {
    AS_DRAWN("the house as drawn", "nothing is out of the ordinary for what is drawn"),
    LEAK("a leak", "an opening lets in far more room air than drawn: more flow, less suction, and weak holes near it"),
    WALL_TOPS("open wall tops", "the block walls are open at the top: more flow, and weak holes along the walls"),
    SHORT_CIRCUIT(
            "a short circuit", "air enters beside the suction point: much flow, little suction, weak holes everywhere"),
    BARRIER("a barrier", "a footing or beam keeps the vacuum from the far side: strong near, next to nothing beyond"),
    BARRIER_WITH_GAP(
            "a barrier with a gap", "a footing or beam with an opening: clearly weaker beyond, but not nothing"),
    TIGHT_FILL(
            "tight fill", "the fill is far tighter than drawn: little flow, strong suction, steep fall near the pit"),
    LOOSE_FILL("loose fill", "the fill is far looser than drawn: much flow, and the vacuum reaches further"),
    TILE_CUT(
            "a broken or flooded tile",
            "a stretch of the drain tile passes no air: good near the suction, poor along that stretch"),
    HIDDEN_PATH("a hidden path", "a trench, tile or void that is not drawn carries the vacuum to a far hole"),
    DEPRESSURIZED_HOUSE(
            "a strongly depressurized house",
            "the house lies far below outdoors: above the room with the fan off, weaker with it on"),
    BLOCKED_PIPE("a blocked pipe", "water, soil or a valve blocks the pipe: next to no flow and no suction in the pit");

    private final String words;
    private final String sign;

    Cause(String words, String sign) {
        this.words = words;
        this.sign = sign;
    }

    /** Name with its article. */
    public String words() {
        return words;
    }

    /** What it does to flow and vacuum. */
    public String sign() {
        return sign;
    }
}
