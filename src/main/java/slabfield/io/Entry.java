package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import slabfield.model.ImpossibleValue;
import slabfield.model.Point;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.wording.Nearest;

/**
 * One object of a scenario file while it is read. Whatever is wrong is noted and reading goes on with a stand-in;
 * {@link #make} then makes nothing.
 */
final class Entry {
    private static final int LONGEST_LIST = 1000;
    private static final int MOST_CORNERS = 2000;
    /** No plan and no pipe is longer [m]. */
    private static final double LONGEST = 1e5;

    private final FileReading reading;
    private final String pointer;
    private final ObjectNode node;
    private final ObjectKind kind;
    private final int problemsBefore;
    private final boolean isObject;

    Entry(FileReading reading, String pointer, JsonNode node, ObjectKind kind) {
        this.reading = reading;
        this.pointer = pointer;
        this.kind = kind;
        this.problemsBefore = reading.count();
        this.node = node.isObject() ? (ObjectNode) node : JsonNodeFactory.instance.objectNode();
        this.isObject = node.isObject();
        if (isObject) checkKeys();
        else reading.add(pointer, shown(node) + " must be an object { } with " + quoted(kind.keys(), " and "));
    }

    private void checkKeys() {
        node.properties().stream()
                .map(Map.Entry::getKey)
                .filter(key -> !kind.keys().contains(key))
                .forEach(key -> problem(
                        key,
                        title() + " has no key \"" + FileProblem.shortened(key) + "\"; "
                                + Nearest.hint(key, kind.keys())));
        for (String key : kind.required()) if (!node.has(key)) problemHere(title() + " needs \"" + key + "\"");
    }

    /** How messages call it: its kind and, where it has one, its name. */
    String title() {
        JsonNode id = node.path("id");
        return id.isTextual() ? kind.noun() + " \"" + FileProblem.shortened(id.asText()) + "\"" : kind.noun();
    }

    boolean has(String key) {
        return node.has(key);
    }

    JsonNode get(String key) {
        return node.path(key);
    }

    FileReading reading() {
        return reading;
    }

    String pointer(String key) {
        return pointer + "/" + JsonTree.escaped(key);
    }

    void problem(String key, String message) {
        reading.add(pointer(key), message);
    }

    /** Notes a problem of the entry as a whole; once is enough where it is not even an object. */
    void problemHere(String message) {
        if (isObject) reading.add(pointer, message);
    }

    /** What is made of this entry; empty where anything in it is wrong. */
    <T> Optional<T> make(Supplier<T> maker) {
        if (reading.count() > problemsBefore) return Optional.empty();
        try {
            return Optional.of(maker.get());
        } catch (ImpossibleValue e) {
            impossible(e);
            return Optional.empty();
        }
    }

    /** Notes an impossible value at its key, here or in an object just below, or else at this entry. */
    private void impossible(ImpossibleValue e) {
        String place = Stream.concat(
                        Stream.of("/" + e.part()),
                        node.properties().stream().map(m -> "/" + JsonTree.escaped(m.getKey()) + "/" + e.part()))
                .filter(p -> !node.at(p).isMissingNode())
                .findFirst()
                .orElse("");
        JsonNode value = node.at(place);
        String who = value.isValueNode() ? shown(value) : title() + ": \"" + e.part() + "\"";
        reading.add(pointer + place, who + " " + e.reason());
    }

    /** The one of these keys that is there; a problem where there is none or more than one. */
    Optional<String> oneOf(String... keys) {
        List<String> given = Arrays.stream(keys).filter(node::has).toList();
        if (given.isEmpty()) problemHere(title() + " needs " + quoted(List.of(keys), " or "));
        if (given.size() > 1)
            problem(given.get(1), title() + " gives " + quoted(given, " and ") + "; keep one of them");
        return given.size() == 1 ? Optional.of(given.get(0)) : Optional.empty();
    }

    /** Refuses a key that has no meaning here. */
    void onlyIf(boolean meaningful, String key, String when) {
        if (node.has(key) && !meaningful) problem(key, "\"" + key + "\" counts only " + when + "; leave it out");
    }

    String text(String key) {
        return text(key, "");
    }

    String text(String key, String fallback) {
        if (!node.has(key)) return fallback;
        if (node.get(key).isTextual()) return node.get(key).asText();
        problem(key, shown(node.get(key)) + " must be text between double quotes");
        return fallback;
    }

    /** A word out of a list, each with what it stands for. */
    <T> T word(String key, Map<String, T> words, T fallback) {
        if (!node.has(key)) return fallback;
        String word = node.get(key).isTextual() ? node.get(key).asText() : "";
        if (words.containsKey(word)) return words.get(word);
        problem(
                key,
                shown(node.get(key)) + " is not one of the words for \"" + key + "\"; "
                        + Nearest.hint(word, words.keySet()));
        return fallback;
    }

    boolean truth(String key, boolean fallback) {
        if (!node.has(key)) return fallback;
        if (node.get(key).isBoolean()) return node.get(key).asBoolean();
        problem(key, shown(node.get(key)) + " must be true or false, without quotes");
        return fallback;
    }

    double number(String key, double fallback) {
        if (!node.has(key)) return fallback;
        if (node.get(key).isNumber() && Double.isFinite(node.get(key).asDouble()))
            return node.get(key).asDouble() + 0.0;
        problem(key, shown(node.get(key)) + " must be a plain number, without quotes");
        return fallback;
    }

    int whole(String key, int fallback) {
        if (!node.has(key)) return fallback;
        if (node.get(key).isInt()) return node.get(key).asInt();
        problem(key, shown(node.get(key)) + " must be a whole number, without quotes");
        return fallback;
    }

    /** A quantity that must be there; NaN where it is not or cannot be read. */
    double quantity(String key, Dimension dimension) {
        return quantity(key, dimension, Double.NaN);
    }

    double quantity(String key, Dimension dimension, double fallback) {
        return node.has(key) ? quantity(pointer(key), node.get(key), dimension).orElse(fallback) : fallback;
    }

    OptionalDouble optional(String key, Dimension dimension) {
        return node.has(key) ? quantity(pointer(key), node.get(key), dimension) : OptionalDouble.empty();
    }

    private OptionalDouble quantity(String place, JsonNode value, Dimension dimension) {
        try {
            if (!value.isTextual() && !value.isNumber())
                throw new ImpossibleValue(
                        shown(value),
                        "must be " + dimension.words() + " with its unit, such as \""
                                + dimension.examples().get(0) + "\"");
            double si = Quantity.parse(value.asText(), dimension);
            if (dimension == Dimension.LENGTH && Math.abs(si) > LONGEST)
                throw new ImpossibleValue(shown(value), "is longer than 100 km");
            return OptionalDouble.of(si);
        } catch (NotAQuantity | ImpossibleValue e) {
            reading.add(place, e.getMessage());
            return OptionalDouble.empty();
        }
    }

    /** A fraction as a number from 0 to 1 or as text such as "95 %"; NaN where it cannot be read. */
    double fraction(String key) {
        return get(key).isNumber() ? number(key, Double.NaN) : quantity(key, Dimension.FRACTION);
    }

    /** Pairs such as [["0 cfm", "1.5 inH2O"], ...]; each pair holds SI values, NaN where one cannot be read. */
    List<double[]> pairs(String key, Dimension first, Dimension second) {
        List<double[]> pairs = new ArrayList<>();
        if (!isList(key, LONGEST_LIST)) return pairs;
        for (JsonNode pair : node.get(key)) {
            String place = pointer(key) + "/" + pairs.size();
            boolean two = pair.isArray() && pair.size() == 2;
            if (!two)
                reading.add(
                        place,
                        shown(pair) + " must be a pair such as [\""
                                + first.examples().get(0) + "\", \""
                                + second.examples().get(0).replace("-", "") + "\"]");
            pairs.add(new double[] {
                two ? quantity(place + "/0", pair.get(0), first).orElse(Double.NaN) : Double.NaN,
                two ? quantity(place + "/1", pair.get(1), second).orElse(Double.NaN) : Double.NaN
            });
        }
        return pairs;
    }

    /** Quantities of one kind; NaN where one cannot be read. */
    List<Double> quantities(String key, Dimension dimension) {
        List<Double> values = new ArrayList<>();
        if (!isList(key, LONGEST_LIST)) return values;
        for (JsonNode value : node.get(key))
            values.add(quantity(pointer(key) + "/" + values.size(), value, dimension)
                    .orElse(Double.NaN));
        return values;
    }

    /** A place on the plan, to the nanometre; the origin where it is missing or cannot be read. */
    Point point(String key) {
        return node.has(key) ? point(pointer(key), node.get(key)) : new Point(0, 0);
    }

    List<Point> points(String key) {
        return isList(key, MOST_CORNERS) ? points(pointer(key), node.get(key)) : List.of();
    }

    List<List<Point>> outlines(String key) {
        List<List<Point>> outlines = new ArrayList<>();
        if (!isList(key, LONGEST_LIST)) return outlines;
        for (JsonNode outline : node.get(key)) {
            String place = pointer(key) + "/" + outlines.size();
            if (!outline.isArray() || outline.size() > MOST_CORNERS)
                reading.add(place, shown(outline) + " must be a list of at most " + MOST_CORNERS + " places [x, y]");
            outlines.add(outline.isArray() ? points(place, outline) : List.of());
        }
        return outlines;
    }

    private List<Point> points(String place, JsonNode list) {
        List<Point> points = new ArrayList<>();
        for (JsonNode each : list) points.add(point(place + "/" + points.size(), each));
        return points;
    }

    private Point point(String place, JsonNode pair) {
        if (pair.isArray()
                && pair.size() == 2
                && pair.get(0).isNumber()
                && pair.get(1).isNumber()) {
            double x = coordinate(pair.get(0).asDouble()),
                    y = coordinate(pair.get(1).asDouble());
            if (Math.abs(x) <= LONGEST && Math.abs(y) <= LONGEST) return new Point(x, y);
            reading.add(place, "a place on the plan lies within 100 km of its origin");
        } else
            reading.add(
                    place,
                    (pair.isArray() ? "a place" : shown(pair))
                            + " must be two plain numbers [x, y] in the file's lengthUnit, "
                            + reading.lengthUnit().symbol());
        return new Point(0, 0);
    }

    private double coordinate(double number) {
        return Coordinates.metres(number, reading.lengthUnit());
    }

    /** The entries of a list, each made in its turn; those that could not be made are left out. */
    <T> List<T> list(String key, ObjectKind what, Function<Entry, Optional<T>> maker) {
        List<T> made = new ArrayList<>();
        List<Integer> places = new ArrayList<>();
        if (isList(key, LONGEST_LIST))
            for (int i = 0; i < node.get(key).size(); i++) {
                Optional<T> item = maker.apply(
                        new Entry(reading, pointer(key) + "/" + i, node.get(key).get(i), what));
                item.ifPresent(made::add);
                if (item.isPresent()) places.add(i);
            }
        reading.kept(pointer(key), places);
        return made;
    }

    private boolean isList(String key, int longest) {
        if (!node.has(key)) return false;
        JsonNode list = node.get(key);
        if (!list.isArray()) problem(key, shown(list) + " must be a list [ ]");
        else if (list.size() > longest)
            problem(key, "the list has " + list.size() + " entries; at most " + longest + " are read");
        return list.isArray() && list.size() <= longest;
    }

    /** The object under a key; an empty one where there is none. */
    Entry entry(String key, ObjectKind what) {
        JsonNode inner = node.has(key) ? node.get(key) : JsonNodeFactory.instance.objectNode();
        return new Entry(reading, pointer(key), inner, what);
    }

    /** The members of an object whose keys are names of the user's; none where there is no such object. */
    Map<String, JsonNode> members(String key, String example) {
        Map<String, JsonNode> members = new LinkedHashMap<>();
        if (!node.has(key)) return members;
        if (node.get(key).isObject()) node.get(key).properties().forEach(m -> members.put(m.getKey(), m.getValue()));
        else problem(key, shown(node.get(key)) + " must give each name " + example);
        return members;
    }

    /** One of {@link #members} as an entry of its own. */
    Entry member(String key, String name, JsonNode value, ObjectKind what) {
        return new Entry(reading, pointer(key) + "/" + JsonTree.escaped(name), value, what);
    }

    static String shown(JsonNode value) {
        if (value.isArray()) return "a list";
        if (value.isObject()) return "an object { }";
        return value.isTextual() ? '"' + FileProblem.shortened(value.asText()) + '"' : value.asText();
    }

    private static String quoted(List<String> keys, String last) {
        List<String> quoted = keys.stream().map(k -> '"' + k + '"').toList();
        if (quoted.size() == 1) return quoted.get(0);
        return quoted.subList(0, quoted.size() - 1).stream().collect(Collectors.joining(", ", "", last))
                + quoted.get(quoted.size() - 1);
    }
}
