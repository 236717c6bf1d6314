package slabfield.cli;

import java.util.Locale;
import slabfield.model.Scenario;
import slabfield.siting.LeakMap;

/** Where a leak may be, as text. */
record LeakMapPage(Scenario scenario, LeakMap map, Shown shown) {
    String text() {
        Page page = new Page().title(scenario.name());
        page.value("Readings", map.readings() + " used");
        page.value("Best gain", number(map.bestGain()) + "; from " + number(LeakMap.LEAST) + " it is worth a look");
        if (map.readingsSay()) places(page);
        else page.part("The readings do not say: no single leak that is not drawn explains them much better.");
        page.text("If there is just one leak more, it lies with 90 % in the likeliest "
                + Shown.percent(map.region() / map.area())
                + " of the slab. Check with smoke, or cover the spot and read again.");
        return page.cautioned();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private void places(Page page) {
        Table table = new Table(
                Table.number("#"),
                Table.words("place"),
                Table.number("gain"),
                Table.number("air let in"),
                Table.words("drawn opening within 1 m"));
        int rank = 0;
        for (LeakMap.Place p : map.places())
            table.row(
                    String.valueOf(++rank),
                    shown.place(p.at()),
                    number(p.gain()),
                    shown.flow(p.flow()),
                    p.nearest().orElse("-"));
        page.part("Likely places, best first; air in " + shown.flowUnit().symbol() + " during the first stage")
                .table(table);
        page.text("Gain: natural logarithm of how much more likely the readings are with the leak than without.");
    }
}
