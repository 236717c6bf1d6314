package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What a batch keeps of each house it finished, in a small file beside its results, which is written last: a house whose file
 * is there, and has the key of its present input, need not be done again.
 */
public final class BatchFile {
    static final String HEADER =
            "house,status,weakestVacuum_Pa,areaMeeting_fraction,exhaust_m3_per_s,fromRoom_m3_per_s,holesMeeting,holes,fit,reason";

    private static final String END = "\r\n";

    private BatchFile() {}

    /** How a house ended. */
    public enum Status {
        SOLVED("solved"),
        NOT_SOLVED("not solved"),
        UNREADABLE("cannot be read");

        private final String words;

        Status(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One house.
     *
     * @param name of its results
     * @param key of input, program and options; 64 hexadecimal digits, empty where the file could not be read
     * @param weakest vacuum, NaN where there is none [Pa]
     * @param meeting part of the area that meets the target, NaN where there is none
     * @param exhaust NaN where there is none [m3/s]
     * @param fromRoom NaN where there is none [m3/s]
     * @param holesMeeting number of holes predicted to meet the target
     * @param holes number of holes
     * @param fit what fitting to readings gave, in words; empty where it was not asked for
     * @param reason why it is not solved or cannot be read; empty where it is solved
     */
    public record Row(
            String name,
            String key,
            Status status,
            double weakest,
            double meeting,
            double exhaust,
            double fromRoom,
            int holesMeeting,
            int holes,
            String fit,
            String reason) {
        /** A house without a result. */
        public static Row without(String name, String key, Status status, String reason) {
            return new Row(name, key, status, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0, 0, "", reason);
        }
    }

    /** Where the file of a house stands. */
    public static Path of(Path folder, String name) {
        return folder.resolve(name + ".done.json");
    }

    public static void write(Path folder, Row row) throws IOException {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put(OwnFile.KEY, OwnFile.NAME)
                .put("house", row.name())
                .put("key", row.key())
                .put("status", row.status().words());
        number(root, "weakestVacuum_Pa", row.weakest());
        number(root, "areaMeeting_fraction", row.meeting());
        number(root, "exhaust_m3_per_s", row.exhaust());
        number(root, "fromRoom_m3_per_s", row.fromRoom());
        root.put("holesMeeting", row.holesMeeting())
                .put("holes", row.holes())
                .put("fit", row.fit())
                .put("reason", row.reason());
        SafeFile.write(of(folder, row.name()), JsonText.of(root).getBytes(StandardCharsets.UTF_8));
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) node.put(key, value);
        else node.putNull(key);
    }

    /** The row of a house that is finished with this key; empty where it is not, or its file is broken. */
    public static Optional<Row> finished(Path folder, String name, String key) {
        try {
            JsonNode root = new ObjectMapper().readTree(Files.readString(of(folder, name)));
            if (!root.path("key").asText().equals(key)
                    || !root.path("house").asText().equals(name)) return Optional.empty();
            for (Status status : List.of(Status.SOLVED, Status.NOT_SOLVED))
                if (status.words().equals(root.path("status").asText()))
                    return Optional.of(new Row(
                            name,
                            key,
                            status,
                            root.path("weakestVacuum_Pa").asDouble(Double.NaN),
                            root.path("areaMeeting_fraction").asDouble(Double.NaN),
                            root.path("exhaust_m3_per_s").asDouble(Double.NaN),
                            root.path("fromRoom_m3_per_s").asDouble(Double.NaN),
                            root.path("holesMeeting").asInt(),
                            root.path("holes").asInt(),
                            root.path("fit").asText(),
                            root.path("reason").asText()));
            return Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** All rows as a table: RFC 4180, SI. */
    public static String summary(List<Row> rows) {
        StringBuilder text = new StringBuilder(HEADER).append(END);
        for (Row r : rows)
            text.append(String.join(
                            ",",
                            CsvCell.of(r.name()),
                            r.status().words(),
                            cell(r.weakest()),
                            cell(r.meeting()),
                            cell(r.exhaust()),
                            cell(r.fromRoom()),
                            String.valueOf(r.holesMeeting()),
                            String.valueOf(r.holes()),
                            CsvCell.of(r.fit()),
                            CsvCell.of(r.reason())))
                    .append(END);
        return text.toString();
    }

    private static String cell(double value) {
        return Double.isFinite(value) ? String.valueOf(value) : "";
    }
}
