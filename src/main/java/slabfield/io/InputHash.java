package slabfield.io;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import slabfield.model.Scenario;
import slabfield.safety.JobRecord;

/** Tells inputs apart by SHA-256 of what they mean, so that spaces and the order of keys do not count. */
public final class InputHash {
    private InputHash() {}

    /** Of a scenario and its record, as this program writes them; 64 hexadecimal digits. */
    public static String of(Scenario scenario, JobRecord record) {
        return of(ScenarioWriter.toJson(scenario) + '\0' + RecordFile.toJson(record));
    }

    /** Of a text. */
    public static String of(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
