package slabfield.desktop.viewmodel;

import java.util.Arrays;
import java.util.List;

/** Two numbers that are typed while drawing, such as a length and an angle. Tab locks one and goes to the other. */
final class TypedFields {
    private final String[] text = {"", ""};
    private int active;

    void type(String letter) {
        text[active] += letter;
    }

    void backspace() {
        if (!text[active].isEmpty()) text[active] = text[active].substring(0, text[active].length() - 1);
        else active = 0;
    }

    void tab() {
        active = 1 - active;
    }

    void clear() {
        Arrays.fill(text, "");
        active = 0;
    }

    boolean isEmpty() {
        return text[0].isBlank() && text[1].isBlank();
    }

    String first() {
        return text[0];
    }

    String second() {
        return text[1];
    }

    /** What is typed so far under the names of the two numbers; a bar marks where the next letter goes. */
    String words(List<String> names) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < 2; i++)
            words.append(i == 0 ? "" : "   ")
                    .append(names.get(i))
                    .append(": ")
                    .append(text[i])
                    .append(i == active ? "\u258f" : "");
        return words.toString();
    }
}
