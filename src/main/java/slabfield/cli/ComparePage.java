package slabfield.cli;

import java.util.List;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.readings.Band;
import slabfield.readings.Comparison;

/** Readings against predictions, as text. */
final class ComparePage {
    private final Scenario scenario;
    private final List<CompareVerb.Compared> stages;
    private final Shown shown;

    ComparePage(Scenario scenario, List<CompareVerb.Compared> stages, Shown shown) {
        this.scenario = scenario;
        this.stages = stages;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(scenario.name());
        for (CompareVerb.Compared one : stages) {
            page.part(title(one.stage()));
            one.comparison()
                    .ifPresentOrElse(
                            c -> stage(page, c), () -> page.text("Not solved; there is nothing to compare with."));
        }
        page.part(Page.SIGN);
        page.text(
                "Difference = measured - predicted, of fan on minus fan off where both were read. Within the band they"
                        + " count as equal: twice the root of the summed squares of meter step, unrest and "
                        + Shown.percent(Band.USUAL.modelShare())
                        + " of the prediction, which is an assumption. \"Can't tell\": the band is as wide as the prediction. Chi-square per"
                        + " reading: about 1 where meter and unrest alone explain the differences.");
        return page.cautioned();
    }

    private static String title(Stage stage) {
        String kind = stage.id().equals(stage.kind().words())
                ? ""
                : " (" + stage.kind().words() + ")";
        return "Stage \"" + stage.id() + "\"" + kind + (stage.time().isEmpty() ? "" : ", " + stage.time());
    }

    private void stage(Page page, Comparison c) {
        String unit = shown.pressureUnit().symbol();
        if (!c.holes().isEmpty()) {
            Table table = new Table(
                    Table.words("hole"),
                    Table.number("off, " + unit),
                    Table.number("on"),
                    Table.number("predicted"),
                    Table.number("difference"),
                    Table.number("band +/-"),
                    Table.words("verdict"));
            for (Comparison.HoleComparison h : c.holes())
                table.row(
                        h.hole(),
                        shown.pressure(h.measuredOff()),
                        shown.pressure(h.measured()),
                        shown.pressure(h.predicted()),
                        shown.pressure(h.difference()),
                        shown.pressure(h.band()),
                        h.verdict().words());
            page.table(table);
        }
        if (!c.systems().isEmpty()) systems(page, c.systems());
        if (c.bias().isPresent())
            page.text("Over all holes: bias " + shown.pressure(c.bias()) + " " + unit + ", scatter "
                    + shown.pressure(c.scatter()) + " " + unit + ", chi-square per reading "
                    + Shown.plain(c.fit().chiSquare().getAsDouble(), 1) + ".");
        page.list(c.remarks());
    }

    private void systems(Page page, List<Comparison.SystemComparison> systems) {
        String pressure = shown.pressureUnit().symbol();
        Table table = new Table(
                Table.words("suction point"),
                Table.number("measured"),
                Table.number("predicted"),
                Table.number("band +/-"),
                Table.words("verdict"));
        for (Comparison.SystemComparison s : systems) {
            s.flowRead()
                    .ifPresent(f -> table.row(
                            s.suctionPoint() + ", flow " + shown.flowUnit().symbol(),
                            f.belowMeter() ? "< " + shown.flow(2 * f.flow()) : shown.flow(f.flow()),
                            shown.flow(s.predictedFlow()),
                            shown.flow(s.flowBand()),
                            s.flowVerdict().words()));
            if (s.measuredPressure().isPresent())
                table.row(
                        s.suctionPoint() + ", suction " + pressure,
                        shown.pressure(s.measuredPressure()),
                        shown.pressure(s.predictedPressure()),
                        shown.pressure(s.pressureBand()),
                        s.pressureVerdict().words());
        }
        page.table(table);
    }
}
