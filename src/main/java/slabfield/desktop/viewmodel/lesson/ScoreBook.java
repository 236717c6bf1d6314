package slabfield.desktop.viewmodel.lesson;

/** What a learner got right so far, kept on this machine alone. */
public interface ScoreBook {
    /**
     * Points for a lesson, or for all of a kind of practice.
     *
     * @param right answers that were right
     * @param asked questions that were answered
     */
    record Score(int right, int asked) {
        public static final Score NONE = new Score(0, 0);

        public Score plus(int moreRight, int moreAsked) {
            return new Score(right + moreRight, asked + moreAsked);
        }
    }

    /** Score of a lesson; {@link Score#NONE} before it was answered. */
    Score of(String lesson);

    void keep(String lesson, Score score);

    /** Forgets all scores. */
    void clear();
}
