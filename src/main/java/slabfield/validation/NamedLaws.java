package slabfield.validation;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import slabfield.equipment.FanCurves;
import slabfield.equipment.HousePressure;
import slabfield.equipment.YearlyCost;
import slabfield.law.AirProperties;
import slabfield.law.AirState;
import slabfield.law.Conductance;
import slabfield.law.FanAndPipe;
import slabfield.law.FlowLaw;
import slabfield.law.Forchheimer;
import slabfield.law.InSeries;
import slabfield.law.Orifice;
import slabfield.law.PipeFriction;
import slabfield.law.Pitot;
import slabfield.law.PowerLaw;
import slabfield.law.QuadraticResistance;
import slabfield.law.StackEffect;
import slabfield.law.TileFriction;
import slabfield.model.House;
import slabfield.model.Source;
import slabfield.readings.PipeFlow;

/** The laws that a case can call by name, with their arguments by name, all in SI. Air is standard unless given. */
final class NamedLaws {
    private static final Map<String, ToDoubleFunction<Arguments>> LAWS = new TreeMap<>();

    static {
        air();
        house();
        equipment();
        pipes();
        layer();
        flowLaw("conductance", a -> new Conductance(a.get("conductance")));
        flowLaw(
                "orifice",
                a -> Orifice.of(a.get("area"), a.get("dischargeCoefficient"), a.density())
                        .behind(a.or("series", 0)));
        flowLaw("power law", a -> new PowerLaw(a.get("coefficient"), a.get("exponent"), 0).behind(a.or("series", 0)));
        flowLaw(
                "crack",
                a -> QuadraticResistance.crack(
                                a.get("width"),
                                a.get("depth"),
                                a.get("length"),
                                (int) a.or("bends", 0),
                                a.viscosity(),
                                a.density())
                        .behind(a.or("series", 0)));
        flowLaw("quadratic resistance", a -> new QuadraticResistance(a.get("linear"), a.get("quadratic")));
        flowLaw(
                "tile friction",
                a -> TileFriction.corrugated(
                        a.get("diameter"), a.get("manning"), a.get("length"), a.viscosity(), a.density()));
        flowLaw(
                "in series",
                a -> new InSeries(
                        new QuadraticResistance(a.get("linear"), a.get("quadratic")),
                        new PowerLaw(a.get("coefficient"), a.get("exponent"), 0)));
        flowLaw("fan and pipe", NamedLaws::fan);
    }

    private NamedLaws() {}

    /** Names of all laws. */
    static List<String> names() {
        return List.copyOf(LAWS.keySet());
    }

    /**
     * Calls a law.
     *
     * @throws CaseProblem where there is no such law, or an argument is missing, left over or impossible
     */
    static double call(String name, Map<String, Double> arguments) throws CaseProblem {
        ToDoubleFunction<Arguments> law = LAWS.get(name);
        if (law == null)
            throw new CaseProblem("there is no law \"" + name + "\"; there are " + String.join(", ", names()));
        Arguments given = new Arguments(arguments);
        try {
            double value = law.applyAsDouble(given);
            given.refuseLeftOver();
            return value;
        } catch (IllegalArgumentException e) {
            throw new CaseProblem(name + ": " + e.getMessage());
        }
    }

    private static void air() {
        LAWS.put("air density", a -> AirProperties.density(a.get("pressure"), a.get("temperature")));
        LAWS.put("air viscosity", a -> AirProperties.viscosity(a.get("temperature")));
        LAWS.put("air pressure at altitude", a -> AirProperties.pressureAtAltitude(a.get("altitude")));
        LAWS.put(
                "air density at altitude",
                a -> AirState.of(a.get("temperature"), a.get("altitude")).density());
        LAWS.put("viscosity of standard air", a -> AirState.STANDARD.viscosity());
        LAWS.put("density of standard air", a -> AirState.STANDARD.density());
        LAWS.put("standard pressure at sea level", a -> AirProperties.SEA_LEVEL_PRESSURE);
    }

    private static void house() {
        LAWS.put(
                "stack pressure",
                a -> StackEffect.pressureDifference(
                        a.get("indoor"),
                        a.get("outdoor"),
                        a.get("height"),
                        a.or("pressure", AirProperties.SEA_LEVEL_PRESSURE)));
        LAWS.put("pitot velocity", a -> Pitot.velocity(a.get("velocityPressure"), a.density()));
        LAWS.put("pitot flow", a -> Pitot.flow(a.get("velocityPressure"), a.get("area"), a.density()));
    }

    private static void equipment() {
        LAWS.put("depressurization by exhaust", a -> HousePressure.depressurization(door(a), a.get("flow")));
        LAWS.put(
                "leakage for a limit", a -> HousePressure.leakageFor(a.get("exponent"), a.get("flow"), a.get("limit")));
        LAWS.put("wind pressure", a -> HousePressure.wind(a.get("coefficient"), a.density(), a.get("speed")));
        LAWS.put("heat of a year", a -> YearlyCost.heat(a.density(), a.get("flow"), a.get("heatingSum")));
        LAWS.put("added in quadrature", a -> YearlyCost.addedInQuadrature(a.get("natural"), a.get("exhaust")));
        LAWS.put("energy of a year", a -> a.get("power") * YearlyCost.YEAR);
        LAWS.put("mean over centre velocity", a -> PipeFlow.developedFactor(a.get("reynolds")));
        LAWS.put(
                "velocity pressure of a flow",
                a -> PipeFlow.velocityPressure(
                        a.get("flow"), a.get("diameter"), new AirState(a.viscosity(), a.density())));
        LAWS.put(
                "fan rise at another speed",
                a -> FanCurves.rise(FanCurves.atSpeed(curve(a), a.get("ratio")), a.get("flow")));
        LAWS.put(
                "fan rise in other air",
                a -> FanCurves.rise(
                        FanCurves.atDensity(curve(a), a.get("fromDensity"), a.get("toDensity")), a.get("flow")));
    }

    private static House.BlowerDoor door(Arguments a) {
        return new House.BlowerDoor(
                a.get("leakage"), a.or("pressure", House.BlowerDoor.USUAL_PRESSURE), a.get("exponent"));
    }

    private static Source.FanCurve curve(Arguments a) {
        return new Source.FanCurve(
                List.of(a.get("flow1"), a.get("flow2"), a.get("flow3")),
                List.of(a.get("rise1"), a.get("rise2"), a.get("rise3")));
    }

    private static void pipes() {
        LAWS.put("colebrook", a -> PipeFriction.colebrook(a.get("reynolds"), a.get("relativeRoughness")));
        LAWS.put("friction factor", a -> PipeFriction.frictionFactor(a.get("reynolds"), a.get("relativeRoughness")));
        LAWS.put(
                "pipe loss",
                a -> PipeFriction.pressureLoss(
                        a.get("flow"),
                        a.get("diameter"),
                        a.or("length", 0),
                        (int) a.or("ells", 0),
                        a.or("fittings", 0),
                        a.or("roughness", 0),
                        a.viscosity(),
                        a.density()));
        LAWS.put(
                "pipe loss slope",
                a -> PipeFriction.pressureLossSlope(
                        a.get("flow"),
                        a.get("diameter"),
                        a.or("length", 0),
                        (int) a.or("ells", 0),
                        a.or("fittings", 0),
                        a.or("roughness", 0),
                        a.viscosity(),
                        a.density()));
        LAWS.put(
                "friction factor from manning",
                a -> TileFriction.darcyFrictionFactor(a.get("manning"), a.get("diameter")));
        LAWS.put("fan rise", a -> fan(a).riseAt(a.get("flow")));
    }

    private static void layer() {
        LAWS.put(
                "forchheimer mobility ratio",
                a -> Forchheimer.mobilityRatio(
                        a.get("gradient"), a.get("permeability"), a.get("inertial"), a.viscosity(), a.density()));
        LAWS.put(
                "forchheimer mobility ratio slope",
                a -> Forchheimer.mobilityRatioSlope(
                        a.get("gradient"), a.get("permeability"), a.get("inertial"), a.viscosity(), a.density()));
        LAWS.put(
                "forchheimer radial drop",
                a -> Forchheimer.radialPressureDrop(
                        a.get("flow"),
                        a.get("inner"),
                        a.get("outer"),
                        a.get("thickness"),
                        a.get("permeability"),
                        a.get("inertial"),
                        a.viscosity(),
                        a.density()));
        LAWS.put("ergun permeability", a -> Forchheimer.ergunPermeability(a.get("diameter"), a.get("porosity")));
        LAWS.put("ergun inertial", a -> Forchheimer.ergunInertial(a.get("diameter"), a.get("porosity")));
        LAWS.put("ward inertial", a -> Forchheimer.wardInertial(a.get("permeability")));
    }

    private static void flowLaw(String name, java.util.function.Function<Arguments, FlowLaw> made) {
        LAWS.put(name + " flow", a -> made.apply(a).flow(a.get("difference")));
        LAWS.put(name + " slope", a -> made.apply(a).slope(a.get("difference")));
    }

    /** A fan with three points, and its pipe. */
    private static FanAndPipe fan(Arguments a) {
        return new FanAndPipe(
                new double[] {a.get("flow1"), a.get("flow2"), a.get("flow3")},
                new double[] {a.get("rise1"), a.get("rise2"), a.get("rise3")},
                a.get("diameter"),
                a.or("length", 0),
                (int) a.or("ells", 0),
                a.or("fittings", 0),
                a.or("roughness", 0),
                a.viscosity(),
                a.density());
    }

    /** Arguments of a call; remembers which were asked for. */
    private static final class Arguments {
        private final Map<String, Double> given;
        private final Map<String, Double> left;

        Arguments(Map<String, Double> given) {
            this.given = given;
            this.left = new TreeMap<>(given);
        }

        double get(String name) {
            left.remove(name);
            Double value = given.get(name);
            if (value == null) throw new IllegalArgumentException("needs \"" + name + "\"");
            return value;
        }

        double or(String name, double otherwise) {
            left.remove(name);
            return given.getOrDefault(name, otherwise);
        }

        double viscosity() {
            return or("viscosity", AirState.STANDARD.viscosity());
        }

        double density() {
            return or("density", AirState.STANDARD.density());
        }

        void refuseLeftOver() {
            if (!left.isEmpty()) throw new IllegalArgumentException("does not use " + String.join(", ", left.keySet()));
        }
    }
}
