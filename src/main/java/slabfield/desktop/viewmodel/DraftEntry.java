package slabfield.desktop.viewmodel;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.safety.Answer;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;

/** A draft test while it is typed in. */
public final class DraftEntry {
    private final StringProperty appliance = new SimpleStringProperty("");
    private final ObjectProperty<Optional<Boolean>> fanRunning = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<DraftTest.Outcome>> outcome = new SimpleObjectProperty<>(Optional.empty());
    private final Map<DraftStep, ObjectProperty<Optional<Answer>>> steps = new EnumMap<>(DraftStep.class);
    private final StringProperty housePressure = new SimpleStringProperty("");
    private final StringProperty draft = new SimpleStringProperty("");
    private final StringProperty spillage = new SimpleStringProperty("");
    private final StringProperty carbonMonoxide = new SimpleStringProperty("");
    private final StringProperty note = new SimpleStringProperty("");

    DraftEntry() {
        for (DraftStep step : DraftStep.values()) steps.put(step, new SimpleObjectProperty<>(Optional.empty()));
    }

    public StringProperty appliance() {
        return appliance;
    }

    /** Whether the radon fan ran; empty while not said. */
    public ObjectProperty<Optional<Boolean>> fanRunning() {
        return fanRunning;
    }

    /** As the person judged; empty while not said. */
    public ObjectProperty<Optional<DraftTest.Outcome>> outcome() {
        return outcome;
    }

    /** Answer to a step; empty while it is unanswered. */
    public ObjectProperty<Optional<Answer>> step(DraftStep step) {
        return steps.get(step);
    }

    /** Room against outdoors, with its unit, or blank. */
    public StringProperty housePressure() {
        return housePressure;
    }

    /** Flue against room, with its unit, or blank. */
    public StringProperty draft() {
        return draft;
    }

    /** How long it spilled, with its unit, or blank. */
    public StringProperty spillage() {
        return spillage;
    }

    /** In the flue in parts per million, or blank. */
    public StringProperty carbonMonoxide() {
        return carbonMonoxide;
    }

    public StringProperty note() {
        return note;
    }

    private List<StringProperty> texts() {
        return List.of(appliance, housePressure, draft, spillage, carbonMonoxide, note);
    }

    /** True where something was entered that is not recorded. */
    public boolean isBegun() {
        return texts().stream().anyMatch(t -> !t.get().isBlank())
                || fanRunning.get().isPresent()
                || outcome.get().isPresent()
                || steps.values().stream().anyMatch(s -> s.get().isPresent());
    }

    /** Empties it. */
    public void clear() {
        texts().forEach(t -> t.set(""));
        fanRunning.set(Optional.empty());
        outcome.set(Optional.empty());
        steps.values().forEach(s -> s.set(Optional.empty()));
    }

    /** All that keeps it from being recorded; empty where nothing does. */
    List<String> problems() {
        List<String> out = new ArrayList<>();
        if (appliance.get().isBlank()) out.add("Appliance: say which one was tested.");
        if (fanRunning.get().isEmpty()) out.add("Radon fan: say whether it ran.");
        if (outcome.get().isEmpty()) out.add("Outcome: say whether it passed or failed, as you judged it.");
        quantity("House pressure", housePressure, Dimension.PRESSURE, out);
        quantity("Draft", draft, Dimension.PRESSURE, out);
        quantity("Spillage", spillage, Dimension.DURATION, out).ifPresent(t -> {
            if (t < 0) out.add("Spillage: a time is not below 0.");
        });
        monoxide(out);
        return out;
    }

    /** The test, where there are no {@link #problems}. */
    DraftTest test(String by, LocalDateTime time) {
        List<String> none = new ArrayList<>();
        Map<DraftStep, Answer> answers = new EnumMap<>(DraftStep.class);
        steps.forEach((step, answer) -> answer.get().ifPresent(a -> answers.put(step, a)));
        return new DraftTest(
                appliance.get().strip(),
                fanRunning.get().orElseThrow(),
                outcome.get().orElseThrow(),
                answers,
                plain(quantity("", housePressure, Dimension.PRESSURE, none)),
                plain(quantity("", draft, Dimension.PRESSURE, none)),
                plain(quantity("", spillage, Dimension.DURATION, none)),
                plain(monoxide(none)),
                by,
                time,
                note.get().strip());
    }

    private static Optional<Double> quantity(
            String name, StringProperty text, Dimension dimension, List<String> problems) {
        if (text.get().isBlank()) return Optional.empty();
        try {
            return Optional.of(Quantity.parse(text.get().strip(), dimension));
        } catch (NotAQuantity e) {
            problems.add(name + ": " + e.getMessage());
            return Optional.empty();
        }
    }

    private Optional<Double> monoxide(List<String> problems) {
        if (carbonMonoxide.get().isBlank()) return Optional.empty();
        try {
            double ppm = Double.parseDouble(carbonMonoxide.get().strip().replaceFirst("\\s*ppm$", ""));
            if (ppm >= 0 && Double.isFinite(ppm)) return Optional.of(ppm);
        } catch (NumberFormatException e) {
            problems.add("Carbon monoxide: \"" + carbonMonoxide.get() + "\" is not a plain number of ppm.");
            return Optional.empty();
        }
        problems.add("Carbon monoxide: a number of ppm is not below 0.");
        return Optional.empty();
    }

    private static OptionalDouble plain(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
