package slabfield.quantity;

import java.util.List;

/** A kind of physical quantity. */
public enum Dimension {
    PRESSURE("a pressure", "-250 Pa", "-1 inH2O"),
    FLOW("a flow", "80 cfm", "38 L/s"),
    LENGTH("a length", "4 in", "0.1 m"),
    AREA("an area", "40 in2", "0.03 m2"),
    VOLUME("a volume", "1 ft3", "30 L"),
    PERMEABILITY("a permeability", "2e-8 m2"),
    PER_LENGTH("a number per length", "1600 1/m"),
    AREA_PER_LENGTH("an area per length", "20 cm2/m"),
    LEAKANCE("a leakance", "1e-7 m/s/Pa"),
    CONDUCTANCE("a conductance", "1e-3 m3/s/Pa"),
    CONDUCTANCE_PER_LENGTH("a conductance per length", "1e-4 m3/s/Pa/m"),
    CONDUCTANCE_TIMES_LENGTH("a conductance times length", "1e-3 m4/s/Pa"),
    LEAK_COEFFICIENT("a leak coefficient", "1e-4 m3/s/Pa^n"),
    TEMPERATURE("a temperature", "12 C", "54 F"),
    SPEED("a speed", "4 m/s", "800 fpm"),
    POWER("a power", "60 W"),
    ENERGY("an energy", "10 kWh", "36 MJ"),
    DENSITY("a density", "1.204 kg/m3", "0.075 lb/ft3"),
    DURATION("a duration", "240 h", "10 d"),
    DEGREE_DAYS("degree days", "3000 K d", "5400 F d"),
    FRACTION("a fraction", "95 %");

    private final String words;
    private final List<String> examples;

    Dimension(String words, String... examples) {
        this.words = words;
        this.examples = List.of(examples);
    }

    /** Name with its article, such as "a length". */
    public String words() {
        return words;
    }

    /** Quantities of this kind as a user writes them. */
    public List<String> examples() {
        return examples;
    }

    /** The examples as part of a sentence, each in quotes. */
    String instance() {
        return "for instance "
                + String.join(" or ", examples.stream().map(e -> '"' + e + '"').toList());
    }
}
