package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Scenario;
import slabfield.model.Target;
import slabfield.quantity.Dimension;

/** What is chosen, with all that can be changed about it; the house as a whole where nothing is. */
public final class Inspector {
    static final String NAME = "Name";

    private final Document document;
    private final Selection selection;
    private final Units units;

    Inspector(Document document, Selection selection, Units units) {
        this.document = document;
        this.selection = selection;
        this.units = units;
    }

    /** What the properties are of, in the user's words. */
    public String title() {
        List<Item> items = selection.items().get();
        return items.isEmpty() ? "The house" : items.size() == 1 ? items.get(0).title() : items.size() + " things";
    }

    /** The properties of what is chosen: of several things those that all of them have. */
    public List<Property> properties() {
        Scenario scenario = document.scenario().get();
        List<Item> items = selection.items().get();
        if (items.isEmpty()) return house(scenario);
        List<List<Property>> each =
                items.stream().map(i -> Properties.of(scenario, i, units)).toList();
        if (each.size() == 1) return each.get(0);
        List<Property> common = new ArrayList<>();
        for (Property first : each.get(0)) {
            List<Property> same = each.stream()
                    .flatMap(list -> list.stream()
                            .filter(p -> p.label().equals(first.label())
                                    && p.choices().equals(first.choices())))
                    .toList();
            if (same.size() == items.size() && !first.label().equals(NAME)) common.add(merged(same));
        }
        return common;
    }

    private static Property merged(List<Property> same) {
        Property first = same.get(0);
        boolean alike = same.stream().allMatch(p -> p.value().equals(first.value()));
        return new Property(
                first.label(), first.help(), first.choices(), alike ? first.value() : Property.MIXED, (s, text) -> {
                    Scenario after = s;
                    for (Property p : same) after = p.change().of(after, text);
                    return after;
                });
    }

    private List<Property> house(Scenario scenario) {
        List<Property> list = new ArrayList<>();
        list.add(new Property(
                NAME, "What you call this house.", List.of(), scenario.name(), (s, text) -> s.withName(text.strip())));
        list.addAll(FillProperties.ofLayer(scenario, units));
        list.add(new Property(
                "Target vacuum",
                "Every place should have at least this; a positive number.",
                List.of(),
                units.exactPressure(scenario.target().vacuum()),
                (s, text) -> s.withTarget(new Target(
                        SuctionProperties.quantity(
                                text, Dimension.PRESSURE, units.pressure().get().symbol()),
                        "own choice"))));
        list.add(new Property(
                "Outdoors at floor",
                "Pressure outdoors at floor level, relative to the room.",
                List.of(),
                units.exactPressure(scenario.outdoorPressure()),
                (s, text) -> s.withOutdoorPressure(SuctionProperties.quantity(
                        text, Dimension.PRESSURE, units.pressure().get().symbol()))));
        list.add(new Property(
                "Grid cell",
                "Side of a cell of the solver's grid; smaller is finer and slower.",
                List.of(),
                units.length(scenario.cellSize()),
                (s, text) -> s.withCellSize(Typed.length(text, units.length().get()))));
        return list;
    }

    /**
     * Changes a property.
     *
     * @return what is wrong with the text, in words; empty where it was taken
     */
    public Optional<String> set(Property property, String text) {
        if (text.equals(property.value()) || text.equals(Property.MIXED)) return Optional.empty();
        try {
            Scenario after = property.change().of(document.scenario().get(), text);
            Optional<Item> named = property.label().equals(NAME) ? selection.single() : Optional.empty();
            document.edit(
                    Edit.of("change " + property.label().toLowerCase(Locale.ROOT) + " of " + title(), s -> after));
            named.ifPresent(i -> selection.set(List.of(Item.of(i.kind(), text.strip()))));
            return Optional.empty();
        } catch (IllegalArgumentException wrong) {
            String words = wrong.getMessage();
            return Optional.of(words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1));
        }
    }
}
