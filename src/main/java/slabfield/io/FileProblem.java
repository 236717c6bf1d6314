package slabfield.io;

/**
 * Something wrong in a file.
 *
 * @param file its name as the user gave it
 * @param line from 1; 0 where it concerns the file as a whole
 * @param pointer place as a JSON pointer, such as "/openings/2/at"; empty for the whole file
 * @param message what is wrong and what to do
 */
public record FileProblem(String file, int line, String pointer, String message) {
    private static final int LONGEST_SHOWN = 80;

    /** A user's text as a message quotes it: its beginning, where it is long. */
    static String shortened(String text) {
        return text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN - 3) + "...";
    }
}
