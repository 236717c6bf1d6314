package slabfield.safety;

import java.time.LocalDateTime;
import java.util.Objects;

/**
 * An answer to a gate.
 *
 * @param answer what was said
 * @param by who said it, or empty
 * @param time when
 * @param note free text
 */
public record GateAnswer(Answer answer, String by, LocalDateTime time, String note) {
    public GateAnswer {
        Objects.requireNonNull(answer, "answer");
        Objects.requireNonNull(by, "by");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(note, "note");
    }
}
