package slabfield.safety;

/** Steps of a draft test under worst-case exhaust, in their order; common practice. */
public enum DraftStep {
    WEATHER("weather", "Outdoor temperature and wind are noted."),
    APPLIANCES_COLD("appliances cold", "Burners are off and flues have cooled."),
    SHUT("house shut", "Windows, outside doors and fireplace dampers are shut."),
    EXHAUSTS("exhausts on", "All exhaust fans, the kitchen hood, the dryer and a central vacuum run."),
    AIR_HANDLER("air handler", "The air handler was tried on and off, and stays as it draws most."),
    INNER_DOORS("inner doors", "Inner doors stand as they make the appliance's room lowest."),
    RADON_FAN("radon fan", "The radon fan runs, if it is built in."),
    HOUSE_PRESSURE("house pressure", "The room's pressure against outdoors was read."),
    SMALLEST_FIRST("smallest first", "The appliance was lit with the smallest first where several share a flue."),
    SPILLAGE("spillage", "Spillage at the draft hood was watched from lighting on."),
    DRAFT("draft", "Draft in the flue was read once it was steady."),
    CARBON_MONOXIDE("carbon monoxide", "Carbon monoxide in flue and room was read."),
    RESTORED("restored", "Everything was set back as it was found.");

    private final String word;
    private final String text;

    DraftStep(String word, String text) {
        this.word = word;
        this.text = text;
    }

    public String word() {
        return word;
    }

    public String text() {
        return text;
    }
}
