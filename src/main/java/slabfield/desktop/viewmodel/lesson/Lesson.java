package slabfield.desktop.viewmodel.lesson;

import java.util.List;
import java.util.function.UnaryOperator;
import slabfield.model.Scenario;

/**
 * One thing to learn: a house, a change of it, and questions about what the change does. Every answer and every number in
 * the explanation comes from solving both.
 *
 * @param id by which scores are kept
 * @param title what it is about
 * @param story what is to be seen and what is going to be done, without numbers of the outcome
 * @param file of the house among the lessons' houses
 * @param before makes the first house of the one in the file
 * @param after makes the second house of the one in the file
 * @param beforeName what the first is called
 * @param afterName what the second is called
 * @param questions at least two, so that the right sign alone does not pass
 * @param explanation of the outcome; {before:x} and {after:x} stand for numbers of {@link Quantities}
 */
public record Lesson(
        String id,
        String title,
        String story,
        String file,
        UnaryOperator<Scenario> before,
        UnaryOperator<Scenario> after,
        String beforeName,
        String afterName,
        List<Question> questions,
        String explanation) {
    public Lesson {
        questions = List.copyOf(questions);
        if (questions.size() < 2) throw new IllegalArgumentException("lesson " + id + " needs two questions");
    }

    /**
     * A question about how one quantity changes.
     *
     * @param text asks for it
     * @param quantity a name of {@link Quantities}
     */
    public record Question(String text, String quantity) {}
}
