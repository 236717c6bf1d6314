package slabfield.safety;

/** What was said to a gate or a step. What was not asked has no answer, which is not the same as "no". */
public enum Answer {
    YES("yes"),
    NO("no"),
    NOT_PRESENT("not present");

    private final String word;

    Answer(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
