package slabfield.model;

/**
 * Something drawn that cannot be so.
 *
 * @param path where, as a JSON pointer with the keys of a scenario file, such as "/openings/2/at"
 * @param message what is wrong and what to do, in the user's words
 */
public record Problem(String path, String message) {
    public Problem {
        Check.text("path", path);
        Check.words("message", message);
    }
}
