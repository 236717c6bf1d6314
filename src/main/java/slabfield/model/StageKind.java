package slabfield.model;

/** The steps of a job at which readings are taken. */
public enum StageKind {
    BASELINE("baseline"),
    COMMUNICATION_TEST("communication test"),
    AFTER_SEALING("after sealing"),
    START_UP("start-up"),
    LATER_VISIT("later visit");

    private final String words;

    StageKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
