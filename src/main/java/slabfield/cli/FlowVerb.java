package slabfield.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import slabfield.law.AirState;
import slabfield.model.NominalPipe;
import slabfield.quantity.Unit;
import slabfield.readings.LogLinearTraverse;
import slabfield.readings.PipeFlow;

/** Turns a pitot or velocity reading into a flow. */
@Command(
        name = "flow",
        mixinStandardHelpOptions = true,
        header = "Turns a velocity or velocity pressure read in a pipe into a flow, with its uncertainty.",
        description =
                "%nOne reading counts as taken on the pipe's axis; several velocity pressures, given one after the other,"
                        + " as a traverse.%n",
        footerHeading = "%nExample: 12 Pa on the axis of a 3 in pipe at 1600 m:%n",
        footer = "  slabfield flow --nominal \"3 in\" --velocity-pressure \"12 Pa\" --altitude \"1600 m\"")
final class FlowVerb implements Callable<Integer> {
    private static final double USUAL_STEP = 0.1;

    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Option(names = "--nominal", paramLabel = "SIZE", description = "Schedule 40 pipe: 2 in, 3 in, 4 in or 6 in.")
    private Optional<String> nominal = Optional.empty();

    @Option(
            names = "--diameter",
            paramLabel = "LENGTH",
            converter = LengthReader.class,
            description = "Inside diameter, in place of --nominal.")
    private Optional<Double> diameter = Optional.empty();

    @Option(
            names = "--velocity-pressure",
            paramLabel = "PRESSURE",
            converter = QuantityOption.OfPressure.class,
            description = "As the pitot tube shows it; again for each place of a traverse.")
    private List<Double> pressures = List.of();

    @Option(
            names = "--velocity",
            paramLabel = "SPEED",
            converter = QuantityOption.OfSpeed.class,
            description = "On the axis, from an anemometer that shows true velocity.")
    private Optional<Double> velocity = Optional.empty();

    @Option(
            names = "--meter-step",
            paramLabel = "PRESSURE",
            converter = QuantityOption.OfPressure.class,
            description = "Smallest step of the meter's display (0.1 Pa).")
    private Optional<Double> step = Optional.empty();

    @Option(
            names = "--temperature",
            paramLabel = "TEMP",
            converter = QuantityOption.OfTemperature.class,
            description = "Of the air in the pipe (20 C).")
    private Optional<Double> temperature = Optional.empty();

    @Option(
            names = "--altitude",
            paramLabel = "LENGTH",
            converter = LengthReader.class,
            description = "Above the sea (0 m).")
    private Optional<Double> altitude = Optional.empty();

    @Override
    public Integer call() {
        double d = diameter();
        AirState air = air();
        if (pressures.isEmpty() == velocity.isEmpty())
            throw wrong("Give --velocity-pressure or --velocity, one of them.");
        if (pressures.stream().anyMatch(p -> !(p > 0))
                || velocity.filter(v -> !(v > 0)).isPresent())
            throw wrong("A velocity or velocity pressure is above 0.");
        if (step.filter(s -> !(s > 0)).isPresent()) throw wrong("--meter-step is above 0.");
        Page page = new Page().title("Flow of a pipe of " + show(d, Unit.MILLIMETRE, 1) + " inside");
        page.value("Air", Shown.plain(air.density(), 3) + " kg/m3");
        if (pressures.size() > 1) traverse(page, d, air);
        else axis(page, d, air);
        page.value("Readable from", flows(PipeFlow.leastReadable(step.orElse(USUAL_STEP), d, air)) + ", to about 5 %");
        page.text("Wanted before the reading: " + Shown.plain(PipeFlow.STRAIGHT_BEFORE, 1)
                + " diameters of straight pipe, behind it " + Shown.plain(PipeFlow.STRAIGHT_BEHIND, 1)
                + " (common practice).");
        face.out().print(page.cautioned());
        return Exit.FINE.code();
    }

    private void axis(Page page, double d, AirState air) {
        PipeFlow flow = velocity.map(v -> PipeFlow.fromCentre(v, d, air))
                .orElseGet(() -> PipeFlow.fromCentrePressure(pressures.get(0), step.orElse(USUAL_STEP), d, air));
        page.value("Flow", flows(flow.flow()));
        page.value("Between", flows(flow.least()) + " and " + flows(flow.most()));
        page.text(
                "The lower bound has the profile of a long straight pipe, the upper one 0.9 of the axis, as instruments' sheets"
                        + " have it. A traverse narrows this: " + places(d));
        double step0 = step.orElse(USUAL_STEP);
        if (velocity.isEmpty() && flow.flow() < PipeFlow.leastReadable(step0, d, air))
            page.text(
                    PipeFlow.testPipe(flow.flow(), step0, air)
                            .map(p -> "This is below what the meter can tell. Put in a test length of " + p.word()
                                    + " pipe.")
                            .orElse(
                                    "This is below what the meter can tell, in any of the pipes known here; take a finer meter."));
    }

    private void traverse(Page page, double d, AirState air) {
        page.value("Flow", flows(PipeFlow.fromTraverse(pressures, Math.PI / 4 * d * d, air)));
        page.value("Places", pressures.size() + "; the velocities are averaged, not the pressures");
        if (pressures.stream().anyMatch(p -> p < PipeFlow.READABLE_STEPS * step.orElse(USUAL_STEP)))
            page.text("At some places the velocity pressure is too low for the meter to tell.");
    }

    private static String places(double d) {
        LogLinearTraverse rule = LogLinearTraverse.SIX_PLACES;
        return "six places along each of two diameters at right angles, "
                + String.join(
                        ", ",
                        rule.places(d).stream()
                                .map(p -> Shown.plain(Unit.MILLIMETRE.fromSi(p), 0))
                                .toList())
                + " mm from the wall (log-linear rule, from memory).";
    }

    private static String flows(double flow) {
        return show(flow, Unit.CFM, 1) + " = " + show(flow, Unit.LITRE_PER_SECOND, 1) + " = "
                + show(flow, Unit.CUBIC_METRE_PER_HOUR, 0);
    }

    private static String show(double si, Unit unit, int decimals) {
        return Shown.plain(unit.fromSi(si), decimals) + " " + unit.symbol();
    }

    private double diameter() {
        if (nominal.isEmpty() == diameter.isEmpty()) throw wrong("Give --nominal or --diameter, one of them.");
        if (diameter.filter(d -> !(d > 0 && d < 2)).isPresent()) throw wrong("--diameter lies between 0 and 2 m.");
        return diameter.orElseGet(() -> List.of(NominalPipe.values()).stream()
                .filter(p -> p.word().equals(nominal.get().strip()))
                .findFirst()
                .orElseThrow(() -> wrong("--nominal \"" + nominal.get() + "\": there are 2 in, 3 in, 4 in and 6 in."))
                .insideDiameter());
    }

    private AirState air() {
        if (temperature.isEmpty() && altitude.isEmpty()) return AirState.STANDARD;
        double t = temperature.orElse(293.15), z = altitude.orElse(0.0);
        if (t < 223.15 || t > 333.15) throw wrong("--temperature lies between -50 C and 60 C.");
        if (z < -500 || z > 5000) throw wrong("--altitude lies between -500 m and 5000 m.");
        return AirState.of(t, z);
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
