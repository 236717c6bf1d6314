package slabfield.report;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Where a report comes from.
 *
 * @param version of the program
 * @param inputHash SHA-256 of scenario and record as this program writes them, 64 hexadecimal digits
 * @param date printed on it; empty for none, since no clock is read
 */
public record Provenance(String version, String inputHash, Optional<LocalDate> date) {
    public Provenance {
        if (!inputHash.matches("[0-9a-f]{64}"))
            throw new IllegalArgumentException("a SHA-256 has 64 hexadecimal digits");
    }
}
