package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.model.Layer;
import slabfield.model.Scenario;

/** Reads scenario files, as docs/scenario-format.md describes them, and says everything that is wrong with one at once. */
public final class ScenarioReader {
    /** Version of the format that is read and written. */
    public static final int VERSION = 1;

    /** Nothing longer is read [byte]. */
    public static final int LARGEST_FILE = 8 * 1024 * 1024;

    /** Memory that a solve takes for each cell of fill without, and with, an inertial part [byte]; LoadTest solves halls in no more. */
    private static final long BYTES_PER_CELL = 600;

    private static final long BYTES_PER_INERTIAL_CELL = 1050;
    /** Memory that the program takes whatever the house [byte]. */
    private static final long BYTES_IN_ANY_CASE = 16 << 20;

    private ScenarioReader() {}

    /** The keys that each kind of object in a file may have, by the object's name in the schema. */
    public static Map<String, List<String>> keys() {
        Map<String, List<String>> keys = new LinkedHashMap<>();
        for (FileObject each : FileObject.values()) keys.put(each.schemaName(), each.keys());
        return keys;
    }

    /**
     * Reads a file.
     *
     * @throws ScenarioProblems where it is not there, cannot be read, or holds anything wrong
     */
    public static Scenario read(Path file) throws ScenarioProblems {
        return read(text(file), file.toString());
    }

    /**
     * The text of a file.
     *
     * @throws ScenarioProblems where it is not there, too large or not text
     */
    public static String text(Path file) throws ScenarioProblems {
        String name = file.toString();
        try {
            if (Files.isDirectory(file)) throw whole(name, "this is a folder, not a scenario file");
            if (Files.size(file) > LARGEST_FILE)
                throw whole(name, "the file is larger than 8 MB, which no scenario is");
            byte[] bytes = Files.readAllBytes(file);
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (NoSuchFileException e) {
            throw whole(name, "there is no such file; check its name and folder");
        } catch (CharacterCodingException e) {
            throw whole(name, "the file is not UTF-8 text; save it again with that encoding");
        } catch (IOException e) {
            throw whole(name, "the file cannot be read; check that you may open it");
        }
    }

    /**
     * Reads the text of a file.
     *
     * @param name of the file, for messages
     * @throws ScenarioProblems where it holds anything wrong
     */
    public static Scenario read(String text, String name) throws ScenarioProblems {
        return read(text, name, MostCells.ofThisComputer(), false);
    }

    /**
     * Numbers of grid cells that fit into memory.
     *
     * @param linear where no fill has an inertial part
     * @param inertial where one has
     */
    record MostCells(long linear, long inertial) {
        static MostCells ofThisComputer() {
            long memory = Runtime.getRuntime().maxMemory() - BYTES_IN_ANY_CASE;
            return new MostCells(memory / BYTES_PER_CELL, memory / BYTES_PER_INERTIAL_CELL);
        }

        long in(Layer layer) {
            return layer.isInertial() ? inertial : linear;
        }
    }

    /** Number of grid cells over such a layer that this computer's memory takes, estimated. */
    public static long mostCells(Layer layer) {
        return MostCells.ofThisComputer().in(layer);
    }

    /**
     * Reads the text of a file that somebody is still drawing: every thing in it is sound by itself, but they may stand to
     * each other as they cannot in a house that is solved.
     *
     * @param name of the file, for messages
     * @throws ScenarioProblems where it holds anything else that is wrong
     */
    public static Scenario readUnfinished(String text, String name) throws ScenarioProblems {
        return read(text, name, MostCells.ofThisComputer(), true);
    }

    static Scenario read(String text, String name, long mostCells) throws ScenarioProblems {
        return read(text, name, new MostCells(mostCells, mostCells), false);
    }

    private static Scenario read(String text, String name, MostCells mostCells, boolean unfinished)
            throws ScenarioProblems {
        if (text.length() > LARGEST_FILE) throw whole(name, "the file is larger than 8 MB, which no scenario is");
        JsonTree tree = JsonTree.parse(text.startsWith("\ufeff") ? text.substring(1) : text, name);
        FileReading reading = new FileReading(name, tree);
        version(reading, tree.root());
        reading.throwIfAny();
        if (tree.root() instanceof ObjectNode root && root.has("slabfield")) Migration.apply(root);
        Optional<Scenario> scenario =
                HouseReader.house(new Entry(reading, "", tree.root(), FileObject.SCENARIO), mostCells, unfinished);
        reading.throwIfAny();
        return scenario.orElseThrow();
    }

    private static ScenarioProblems whole(String name, String message) {
        return new ScenarioProblems(name, List.of(new FileProblem(name, 0, "", message)));
    }

    private static void version(FileReading reading, JsonNode root) {
        JsonNode version = root.path("slabfield");
        if (!root.isObject()) reading.add("", "a scenario file is one object { }; this is " + Entry.shown(root));
        else if (version.isMissingNode()) return;
        else if (!version.isInt() || version.asInt() < VERSION && !Migration.knows(version.asInt()))
            reading.add("/slabfield", Entry.shown(version) + " is no version of the format; write " + VERSION);
        else if (version.asInt() > VERSION)
            reading.add(
                    "/slabfield",
                    "the file is written in version " + version.asInt()
                            + " of the format, and this program reads version " + VERSION + "; get a newer Slabfield");
    }
}
