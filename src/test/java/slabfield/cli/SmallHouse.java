package slabfield.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The text of a scenario that solves in no time. */
final class SmallHouse {
    static final String TEXT = """
            { "slabfield": 1, "name": "Small house", "lengthUnit": "m", "cell": "50 cm",
              "slabs": [ { "id": "floor", "outline": [[0, 0], [6, 0], [6, 4], [0, 4]] } ],
              "layer": { "fill": "mixed", "thickness": "10 cm" },
              "openings": [
                { "id": "joint", "kind": "joint", "perimeterOf": "floor", "width": "1 mm" },
                { "id": "pipe", "kind": "penetration", "at": [5, 1], "area": "10 cm2" } ],
              "soil": { "leakance": "1e-7 m/s/Pa" }, "house": { "pressureOutdoorsAtFloor": "2 Pa" },
              "suctionPoints": [ { "id": "S1", "at": [2, 2], "source": { "pressure": "-200 Pa" } } ],
              "testHoles": [ { "id": "T1", "at": [4, 2] }, { "id": "T2", "at": [5.5, 3.5] } ],
              "stages": [
                { "id": "first look", "kind": "communication test",
                  "readings": [ { "hole": "T1", "fanOff": "0.4 Pa", "fanOn": "-7 Pa" }, { "hole": "T2", "fanOn": "40 Pa" } ],
                  "system": [ { "suctionPoint": "S1", "flow": "4 L/s", "riser": "-200 Pa" } ] },
                { "id": "after sealing", "kind": "after sealing", "openings": { "joint": "sealed" },
                  "readings": [ { "hole": "T1", "fanOn": "-90 Pa" } ] },
                { "id": "no readings", "kind": "later visit" } ] }
            """;

    /** A fan that draws a flow from a slab without any leak: there is no answer. */
    static final String AIRTIGHT = TEXT.replaceAll(
                    "(?s)\"openings\": \\[.*?\"soil\": \\{ \"leakance\": \"1e-7 m/s/Pa\" \\},", "")
            .replace("\"openings\": { \"joint\": \"sealed\" },", "")
            .replace("{ \"pressure\": \"-200 Pa\" }", "{ \"flow\": \"5 L/s\" }");

    private SmallHouse() {}

    static String in(Path folder) throws IOException {
        return put(folder, "house.json", TEXT);
    }

    static String put(Path folder, String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }
}
