package slabfield.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import slabfield.fit.Ensemble;
import slabfield.fit.Fitted;
import slabfield.fit.Identifiability;
import slabfield.fit.Interval;
import slabfield.fit.Observation;
import slabfield.fit.Outlook;
import slabfield.fit.Parameter;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** What a fit found, what it cannot know, and what to measure, as text. */
final class FitPage {
    private static final int DIGITS = 2;
    private static final double FAR = 2.5;
    /** Distance up to which the two ways to tell the doubt agree as well as 80 houses can tell. */
    private static final double LAPLACE_HOLDS = 0.5;

    private final Fitted fit;
    private final Identifiability known;
    private final Map<Integer, Interval> profiles;
    private final Optional<Ensemble> ensemble;
    private final Optional<Outlook> outlook;
    private final Shown shown;

    /**
     * Lays nothing out yet.
     *
     * @param profiles ranges of unknowns by moving each alone, by their places; none where nobody asked for them
     * @param ensemble of houses that explain the readings, if one was made
     * @param outlook of its members for the house as it is drawn
     */
    FitPage(
            Fitted fit,
            Identifiability known,
            Map<Integer, Interval> profiles,
            Optional<Ensemble> ensemble,
            Optional<Outlook> outlook,
            Shown shown) {
        this.fit = fit;
        this.known = known;
        this.profiles = profiles;
        this.ensemble = ensemble;
        this.outlook = outlook;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(fit.drawn().name());
        int readings = fit.observations().size();
        page.value(
                "Readings",
                readings + " numbers, explained to " + Shown.plain(Math.sqrt(fit.chiSquare() / readings), 1)
                        + " times what meter and model let expect");
        if (!fit.converged()) page.text("The search did not settle: the values below are the best so far.");
        found(page);
        if (!known.ratios().isEmpty() || !known.exchangeable().isEmpty())
            page.part("Known only together").list(together());
        if (!known.measure().isEmpty()) page.part("To know more").list(known.measure());
        if (!profiles.isEmpty()) moved(page);
        explained(page);
        outlook.ifPresent(o -> expected(page, o));
        return page.cautioned();
    }

    private void found(Page page) {
        Table table = new Table(
                Table.words("unknown"),
                Table.number("found"),
                Table.number("90 % range"),
                Table.number("as drawn"),
                Table.words("how it is known"));
        for (Identifiability.Finding f : known.findings()) {
            Parameter p = fit.parameters().get(f.parameter());
            if (!p.kind().sought()) continue;
            boolean number = f.standing() == Identifiability.Standing.FOUND;
            table.row(
                    p.words(),
                    number ? amount(p, fit.value(f.parameter())) : "-",
                    range(p, f.range()),
                    amount(p, p.prior().median()),
                    f.standing().words());
        }
        page.part("What the readings say").table(table);
        page.text("A number is given only where the readings fix it to a factor of "
                + Shown.plain(Identifiability.NUMBER, 0)
                + " either way; elsewhere the range alone counts. Leaks are multiples of what is drawn.");
    }

    private void moved(Page page) {
        Table table = new Table(Table.words("unknown"), Table.number("90 % range"));
        profiles.forEach((j, i) -> table.row(
                fit.parameters().get(j).words(), range(fit.parameters().get(j), i)));
        page.part("Each unknown moved alone, all others fitted anew").table(table);
    }

    private List<String> together() {
        List<String> ratios = known.ratios().stream()
                .map(r -> {
                    Parameter a = fit.parameters().get(r.first()),
                            b = fit.parameters().get(r.second());
                    double drawn = a.prior().median() / b.prior().median();
                    return capital(a.words()) + " over " + b.words() + " is " + plain(r.value() / drawn) + " ("
                            + plain(r.range().low() / drawn) + " to "
                            + plain(r.range().high() / drawn)
                            + ") times what is drawn; neither is known by itself.";
                })
                .toList();
        List<String> groups = known.exchangeable().stream()
                .map(g -> "Explain the same readings, so that more of one means less of another: "
                        + String.join(
                                "; ",
                                g.members().stream()
                                        .map(j -> fit.parameters().get(j).words())
                                        .toList()) + ".")
                .toList();
        return Stream.concat(ratios.stream(), groups.stream()).toList();
    }

    private void explained(Page page) {
        Table table = new Table(
                Table.words("stage"),
                Table.words("place"),
                Table.words("what"),
                Table.number("measured"),
                Table.number("fitted"),
                Table.number("off by"));
        boolean far = false;
        for (Fitted.Residual r : fit.residuals()) {
            Observation o = r.observation();
            boolean flow = o.what() == Observation.What.FLOW;
            far |= Math.abs(r.deviations()) > FAR;
            table.row(
                    o.stage(),
                    o.place(),
                    o.what().words(),
                    flow ? shown.flowText(o.measured()) : shown.pressureText(o.measured()),
                    flow ? shown.flowText(r.predicted()) : shown.pressureText(r.predicted()),
                    Shown.plain(r.deviations(), 1) + (Math.abs(r.deviations()) > FAR ? " !" : ""));
        }
        page.part("Readings and the fitted house").table(table);
        page.text("Off by: measured minus fitted, in standard deviations of meter, unrest and model. " + Page.SIGN);
        if (far)
            page.text(
                    "Readings marked ! are not explained by any values of the unknowns: look at these holes again, or for"
                            + " something that is not drawn.");
    }

    private void expected(Page page, Outlook o) {
        double target = fit.drawn().target().vacuum();
        page.part("As drawn, in " + o.forecasts().size() + " houses that explain the readings");
        page.value(
                "Weakest vacuum",
                shown.pressureText(o.weakest().median()) + " ("
                        + pressures(o.weakest().interval(0.9)) + ")");
        page.value(
                "Meets everywhere",
                Shown.percent(o.chanceThatAllMeet(target)) + " likely, for " + shown.givenPressure(target));
        page.value(
                "Exhaust",
                shown.flowText(o.exhaust().median()) + " ("
                        + shown.flow(o.exhaust().interval(0.9).low()) + " to "
                        + shown.flow(o.exhaust().interval(0.9).high()) + ")");
        ensemble.filter(e -> e.distanceFromLaplace() > LAPLACE_HOLDS)
                .ifPresent(e -> page.text(
                        "The ranges of the unknowns above are rough: the houses lie otherwise than a bell curve."));
    }

    private String pressures(Interval i) {
        return shown.pressure(i.low()) + " to " + shown.pressure(i.high());
    }

    private String range(Parameter p, Interval i) {
        return amount(p, i.low()) + " to " + amount(p, i.high());
    }

    private String amount(Parameter p, double value) {
        return switch (p.kind()) {
            case PERMEABILITY, BARRIER -> Quantity.format(value, Unit.SQUARE_METRE_OF_PERMEABILITY, DIGITS);
            case INERTIAL -> Quantity.format(value, Unit.PER_METRE, DIGITS);
            case SOIL -> Quantity.format(value, Unit.METRE_PER_SECOND_PASCAL, DIGITS);
            case LEAK, TILE, EXPONENT, INERTIAL_NOT_DRAWN, FILL_BESIDE -> plain(value);
            case LEFT_BY_SEAL -> Shown.percent(Math.min(1, value));
            case GAP, PIT -> shown.smallLength(value);
            case OUTDOORS -> shown.pressureText(value);
        };
    }

    private static String plain(double value) {
        return new BigDecimal(value).round(new MathContext(DIGITS)).toString();
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
