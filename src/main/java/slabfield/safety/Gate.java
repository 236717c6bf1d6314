package slabfield.safety;

/**
 * A question about what can hurt people. A gate must be answered before a record can be complete; a notice is shown.
 * "Yes" always means that it is done as the question says.
 */
public enum Gate {
    COMBUSTION(
            "combustion",
            "Every fuel-burning appliance, fireplace and attached garage was looked for, and each appliance found was tested"
                    + " for backdrafting with all exhausts on, before start-up and after.",
            true,
            true),
    CO_ALARM("CO alarm", "A working carbon monoxide alarm is on each floor.", true, false),
    UTILITIES(
            "utilities",
            "Electricity, gas, water, sewer and floor heating in and under the slab were located; drawings alone do not count.",
            true,
            false),
    STRUCTURAL_SLAB(
            "structural slab",
            "A scan or an engineer has cleared the slab for coring: no tensioned cables, no structural slab, no heating tubes"
                    + " at the place; no footing, column or beam is cored.",
            true,
            true),
    DRAINAGE(
            "drainage",
            "Sump, floor drains and tile still drain; where a sealed one was the only way for water, there is another.",
            true,
            true),
    GAS_ON_SITE(
            "gas on site",
            "There is no smell of fuel or solvent and no known methane or chemical site; or specialists have taken over.",
            true,
            false),
    LAW(
            "law and licence",
            "Local licence, permit and standard were looked up, and it is understood that this program approves nothing.",
            true,
            false),
    DUST("silica dust", "Core wet, or drill with a shroud and a dust collector; no dry sweeping.", false, true),
    ASBESTOS(
            "asbestos, lead, mould",
            "Suspected in tiles, glue, lagging or paint: stop and have it tested.",
            false,
            true),
    ELECTRICITY(
            "electricity",
            "Wiring by licensed people, a disconnect in sight, tools behind a residual-current device.",
            false,
            true),
    SEWER("sewer gas", "No suction on sewer or septic lines; traps stay filled.", false, true),
    WORK_ROOM(
            "soil gas in the work room",
            "The test vacuum blows outdoors; the room is aired; time there is short.",
            false,
            true),
    DISCHARGE(
            "discharge",
            "Above the roof or as local rules say, away from openings; no pipe under pressure indoors.",
            false,
            true),
    CONFINED_SPACE("confined space", "Crawl spaces, pits and wells need a procedure.", false, true),
    FIRE_SEPARATION("fire separation", "A pipe through a rated wall or floor keeps its rating.", false, true),
    SEALANTS("sealants and solvents", "Air the room, read the data sheet, warn the occupants.", false, true);

    private final String word;
    private final String question;
    private final boolean mustBeAnswered;
    private final boolean mayBeAbsent;

    Gate(String word, String question, boolean mustBeAnswered, boolean mayBeAbsent) {
        this.word = word;
        this.question = question;
        this.mustBeAnswered = mustBeAnswered;
        this.mayBeAbsent = mayBeAbsent;
    }

    public String word() {
        return word;
    }

    /** What "yes" affirms, or what a notice says. */
    public String question() {
        return question;
    }

    /** False for a notice. */
    public boolean mustBeAnswered() {
        return mustBeAnswered;
    }

    /** True where "not present" is an answer. */
    public boolean mayBeAbsent() {
        return mayBeAbsent;
    }
}
