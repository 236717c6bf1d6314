package slabfield.safety;

import java.time.LocalDateTime;
import java.util.Objects;

/**
 * A radon test after start-up.
 *
 * @param start when the device was set out
 * @param result in the laboratory's or the device's words and unit, or empty while it runs
 */
public record RadonTest(LocalDateTime start, String result) {
    public RadonTest {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(result, "result");
    }
}
