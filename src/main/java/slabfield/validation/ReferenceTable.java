package slabfield.validation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The source's numbers in the source's units: comma-separated, the first column naming the row; lines that begin with #
 * are remarks.
 *
 * @param rows by name, in the file's order, each with its cells by column
 */
record ReferenceTable(Map<String, Map<String, String>> rows) {
    static ReferenceTable read(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file).stream()
                .filter(l -> !l.isBlank() && !l.startsWith("#"))
                .toList();
        Map<String, Map<String, String>> rows = new LinkedHashMap<>();
        if (lines.isEmpty()) return new ReferenceTable(rows);
        String[] head = lines.get(0).split(",", -1);
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < Math.min(head.length, cells.length); i++) row.put(head[i].strip(), cells[i].strip());
            rows.put(cells[0].strip(), row);
        }
        return new ReferenceTable(rows);
    }

    /**
     * The number at a place.
     *
     * @param place row and column as "row/column"
     */
    Optional<Double> number(String place) {
        int slash = place.lastIndexOf('/');
        if (slash < 0) return Optional.empty();
        String cell = rows.getOrDefault(place.substring(0, slash), Map.of()).get(place.substring(slash + 1));
        return cell == null ? Optional.empty() : parse(cell);
    }

    private static Optional<Double> parse(String cell) {
        try {
            return Optional.of(Double.valueOf(cell));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
