package slabfield.cli;

import java.util.Locale;
import java.util.stream.Collectors;
import slabfield.model.Scenario;
import slabfield.siting.HoleLayout;
import slabfield.siting.NextHole;

/** Where to drill next, as text. */
record NextHolePage(Scenario scenario, NextHole next, Shown shown) {
    String text() {
        Page page = new Page().title(scenario.name());
        page.value(
                "Odds",
                Shown.percent(next.meets()) + " that the weakest place meets "
                        + shown.givenPressure(scenario.target().vacuum()) + ", "
                        + next.basis().words() + " (" + next.houses()
                        + " plausible houses)");
        page.value(
                "Doubt",
                bits(next.doubtNow()) + " of 1 bit about pass or fail, " + shown.pressureText(next.scatterNow())
                        + " about the vacuum at the weakest place");
        if (next.places().isEmpty())
            page.part("There is no place left to drill: all of the slab is kept from drilling or too close"
                    + " to something.");
        else places(page);
        layout(page);
        return page.cautioned();
    }

    private static String bits(double bits) {
        return String.format(Locale.ROOT, "%.2f", bits);
    }

    private void places(Page page) {
        Table table = new Table(
                Table.number("#"),
                Table.words("place"),
                Table.number("doubt left, bit"),
                Table.number("scatter left"),
                Table.words("pressure expected there"),
                Table.words("also mends"));
        int rank = 0;
        for (NextHole.Place p : next.places())
            table.row(
                    String.valueOf(++rank),
                    shown.place(p.at()),
                    bits(p.doubtLeft()),
                    shown.pressure(p.scatterLeft()),
                    shown.pressure(p.pressure().low()) + " to "
                            + shown.pressure(p.pressure().high()),
                    p.mends().stream().map(m -> rule(m.rule())).distinct().collect(Collectors.joining(", ")));
        page.part("Best places for the next hole, each by itself; pressures in "
                        + shown.pressureUnit().symbol())
                .table(table);
        if (next.tellsNothing()) page.text("No single hole would tell much more than is known now.");
        else if (next.settled())
            page.text(
                    "Pass or fail is as good as settled, so the places are ranked by what they tell of the vacuum itself.");
        page.text(Page.SIGN);
    }

    private void layout(Page page) {
        if (next.shortfalls().isEmpty()) {
            page.part("The drawn holes keep the least layout.");
            return;
        }
        page.part("What the drawn holes lack by the least layout (ANSI/AARST SGM-SF 2017, 13.3.3, and a near hole):")
                .list(next.shortfalls().stream()
                        .map(s -> s.words()
                                + s.around()
                                        .map(p -> " Try around " + shown.place(p) + ".")
                                        .orElse(""))
                        .toList());
    }

    private static String rule(HoleLayout.Rule rule) {
        return rule.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
