package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import slabfield.desktop.drawing.Typed;
import slabfield.model.DrainTile;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;

/** Properties of a suction point: its pit, its tile and what draws. */
final class SuctionProperties {
    private static final String PRESSURE = "held pressure";
    private static final String FLOW = "held flow";
    private static final String FAN = "fan and pipe";
    private static final double USUAL_PRESSURE = -250;
    private static final double USUAL_FLOW = 0.02;

    private SuctionProperties() {}

    static List<Property> of(Scenario scenario, String id, Units units) {
        SuctionPoint point = scenario.suctionPoint(id).orElseThrow();
        List<Property> list = new ArrayList<>();
        list.add(new Property(
                "Pit radius",
                "Of the hollow below the slab; 5 cm (2 in) is the core alone.",
                List.of(),
                units.length(point.pit().radius()),
                (s, text) -> s.withSuctionPoint(
                        id,
                        p -> new SuctionPoint(
                                p.id(),
                                p.at(),
                                p.tile(),
                                new SuctionPoint.Pit(
                                        Typed.length(text, units.length().get())),
                                p.source(),
                                p.openWhenOff()))));
        List<String> tiles = new ArrayList<>(List.of("none"));
        scenario.drainTiles().stream().map(DrainTile::id).forEach(tiles::add);
        list.add(new Property(
                "Teed into tile",
                "The drain tile that it draws from, if one.",
                tiles,
                point.tile().orElse("none"),
                (s, word) -> s.withSuctionPoint(
                        id,
                        p -> new SuctionPoint(
                                p.id(),
                                p.at(),
                                word.equals("none") ? Optional.empty() : Optional.of(word),
                                p.pit(),
                                p.source(),
                                p.openWhenOff()))));
        List<String> draws = point.source() instanceof Source.Pressure || point.source() instanceof Source.Flow
                ? List.of(PRESSURE, FLOW)
                : List.of(PRESSURE, FLOW, FAN);
        list.add(new Property(
                "Drawn by",
                "A pressure or a flow that is held, or a fan behind its pipe.",
                draws,
                word(point.source()),
                (s, word) -> s.withSuctionPoint(
                        id,
                        p -> word.equals(word(p.source()))
                                ? p
                                : p.drawnBy(
                                        word.equals(FLOW)
                                                ? new Source.Flow(USUAL_FLOW)
                                                : new Source.Pressure(USUAL_PRESSURE)))));
        if (point.source() instanceof Source.Pressure held)
            list.add(new Property(
                    "Pressure",
                    "Below the room is negative; a number alone has the unit shown.",
                    List.of(),
                    units.exactPressure(held.pressure()),
                    (s, text) -> s.withSuctionPoint(
                            id,
                            p -> p.drawnBy(new Source.Pressure(quantity(
                                    text,
                                    Dimension.PRESSURE,
                                    units.pressure().get().symbol()))))));
        if (point.source() instanceof Source.Flow held)
            list.add(new Property(
                    "Flow",
                    "A number alone has the unit shown.",
                    List.of(),
                    units.flow(held.flow()),
                    (s, text) -> s.withSuctionPoint(
                            id,
                            p -> p.drawnBy(new Source.Flow(quantity(
                                    text, Dimension.FLOW, units.flow().get().symbol()))))));
        if (point.source() instanceof Source.Fan fan) {
            DuctProperties duct = new DuctProperties("", units);
            duct.fan(
                    fan.curve(),
                    (s, change) -> fan(s, id, f -> new Source.Fan(change.apply(f.curve()), f.run(), f.discharge())));
            duct.run(
                    fan.run(),
                    (s, change) -> fan(s, id, f -> new Source.Fan(f.curve(), change.apply(f.run()), f.discharge())));
            list.addAll(duct.list());
        }
        if (point.source() instanceof Source.Branch branch) list.addAll(branch(scenario, id, branch, units));
        return list;
    }

    private static Scenario fan(Scenario s, String id, UnaryOperator<Source.Fan> change) {
        return s.withSuctionPoint(id, p -> p.source() instanceof Source.Fan fan ? p.drawnBy(change.apply(fan)) : p);
    }

    /** The pipe of the branch, then the riser that it joins: what is changed there counts for all its branches. */
    private static List<Property> branch(Scenario scenario, String id, Source.Branch branch, Units units) {
        DuctProperties own = new DuctProperties("", units), common = new DuctProperties("Riser ", units);
        own.run(
                branch.run(),
                (s, change) -> s.withSuctionPoint(
                        id,
                        p -> p.source() instanceof Source.Branch b
                                ? p.drawnBy(new Source.Branch(b.riser(), change.apply(b.run())))
                                : p));
        scenario.equipment().riser(branch.riser()).ifPresent(riser -> {
            common.fan(
                    riser.curve(),
                    (s, change) -> riser(
                            s, riser.id(), r -> new Riser(r.id(), change.apply(r.curve()), r.run(), r.discharge())));
            common.run(
                    riser.run(),
                    (s, change) -> riser(
                            s, riser.id(), r -> new Riser(r.id(), r.curve(), change.apply(r.run()), r.discharge())));
        });
        return Stream.concat(own.list().stream(), common.list().stream()).toList();
    }

    private static Scenario riser(Scenario s, String id, UnaryOperator<Riser> change) {
        return s.withEquipment(
                s.equipment().withRisers(Properties.with(s.equipment().risers(), Riser::id, id, change)));
    }

    private static String word(Source source) {
        if (source instanceof Source.Pressure) return PRESSURE;
        return source instanceof Source.Flow ? FLOW : FAN;
    }

    static double quantity(String text, Dimension kind, String unit) {
        boolean bare = text.strip().matches("[+\u2212-]?[\\d.,]+");
        return Quantity.parse(bare ? text.strip() + " " + unit : text, kind);
    }
}
