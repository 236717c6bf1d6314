package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Air;
import slabfield.model.Display;
import slabfield.model.FanOffer;
import slabfield.model.Fill;
import slabfield.model.House;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;

/** A small basement for tests: 8 m by 6 m of stone, an open joint, soil, one hole far from the suction point. */
final class Basements {
    static final double CFM = 4.719474432e-4;
    static final double INCH = 0.0254;

    private Basements() {}

    static Scenario of(Source source) {
        return of(List.of(point("S1", 1.5, 3, source)));
    }

    static Scenario of(List<SuctionPoint> points) {
        Slab slab = new Slab(
                "slab",
                List.of(new Point(0, 0), new Point(8, 0), new Point(8, 6), new Point(0, 6)),
                List.of(),
                0.1,
                true);
        Opening joint = new Opening(
                "joint",
                OpeningKind.JOINT,
                new Opening.Perimeter("slab"),
                new Opening.Crack(0.0005, 0),
                Seal.of(SealState.OPEN));
        return new Scenario(
                "house",
                "",
                "",
                Display.SI,
                List.of(slab),
                new Layer(Fill.of(0.1, 2e-8, 0), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(joint),
                1e-6,
                0,
                Air.STANDARD,
                points,
                List.of(new TestHole("T1", new Point(7.5, 5.5), "")),
                List.of(),
                Target.COMMON_PRACTICE,
                0.25);
    }

    static SuctionPoint point(String id, double x, double y, Source source) {
        return new SuctionPoint(id, new Point(x, y), Optional.empty(), new SuctionPoint.Pit(0.2), source, false);
    }

    static Source.FanCurve curve(double shutOff, double freeFlow) {
        List<Double> flows = new ArrayList<>(), rises = new ArrayList<>();
        for (int i = 0; i <= 20; i++) {
            flows.add(freeFlow * i / 20);
            rises.add(shutOff * (1 - i * i / 400.0));
        }
        return new Source.FanCurve(flows, rises);
    }

    static FanOffer offer(String id, double shutOff, double freeFlow, double watts) {
        Source.FanCurve curve = curve(shutOff, freeFlow);
        return new FanOffer(
                id,
                curve,
                watts > 0 ? curve.flows().stream().map(q -> watts).toList() : List.of(),
                FanOffer.STANDARD_DENSITY,
                OptionalDouble.empty(),
                FanOffer.Arrangement.SINGLE,
                false);
    }

    static Source fan(double shutOff, double freeFlow) {
        return new Source.Fan(curve(shutOff, freeFlow), pipe(), 0);
    }

    static Source.Pipe pipe() {
        return new Source.Pipe(4.026 * INCH, 9, 3, 1.5, 1.5e-6);
    }

    /** 1500 cfm at 50 Pa, neutral level 3.5 m up, a design day of -15 C with 4 m/s of wind, 200 cfm of exhausts. */
    static House house() {
        return new House(
                293.15,
                OptionalDouble.of(3.5),
                Optional.of(new House.BlowerDoor(1500 * CFM, 50, 0.65)),
                OptionalDouble.of(100 * CFM),
                List.of(new House.Exhaust("dryer", 150 * CFM), new House.Exhaust("bath", 50 * CFM)),
                Optional.of(new House.DesignDay(258.15, 4, House.DesignDay.USUAL_COEFFICIENT)),
                new House.Climate(
                        List.of(new House.Bin(263.15, 240 * 3600.0), new House.Bin(283.15, 3000 * 3600.0)),
                        OptionalDouble.empty(),
                        House.Climate.USUAL_BALANCE),
                List.of(new House.Limit(2, "a test's"), new House.Limit(5, "another's")),
                Optional.of(new House.Heating("electricity", 1, 0.1, "kWh", 3.6e6)),
                Optional.of(new House.Tariff("XYZ", 0.2)));
    }
}
