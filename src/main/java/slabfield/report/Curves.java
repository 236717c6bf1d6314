package slabfield.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.advice.Suggestion;
import slabfield.equipment.FanRanking;
import slabfield.equipment.Sizing;
import slabfield.equipment.SystemCurves;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.Charts;
import slabfield.figure.Figure;
import slabfield.figure.MapStyle;
import slabfield.model.House;
import slabfield.model.Scenario;
import slabfield.quantity.Unit;
import slabfield.readings.Comparison;

/** Charts made of what sizing, advice and comparison found. */
public final class Curves {
    private Curves() {}

    /** Readings of a stage over their predictions; empty where no hole has both. */
    public static Optional<Figure> parity(String name, Comparison comparison, MapStyle look) {
        List<Charts.Pair> pairs = comparison.holes().stream()
                .filter(h -> h.difference().isPresent())
                .map(h -> new Charts.Pair(
                        h.hole(), h.predicted().getAsDouble(), h.measured().getAsDouble(), h.band()))
                .toList();
        return pairs.isEmpty() ? Optional.empty() : Optional.of(Charts.parity(name, comparison.stage(), pairs, look));
    }

    /** The chosen fan against pipe and slab in its first place; empty where no fan could be solved. */
    public static Optional<Figure> system(Sizing sizing, MapStyle look) {
        return sizing.chosen()
                .flatMap(chosen -> SystemCurves.of(chosen, Progress.NONE))
                .map(c -> Charts.system(sizing.scenario().name(), c, look));
    }

    /** Options of fans and of advice: vacuum at the weakest place against the air drawn from the room. */
    public static Figure roomAir(Scenario scenario, Result.Solved base, List<Suggestion> advice, MapStyle look) {
        List<Charts.Choice> choices = new ArrayList<>();
        choices.add(new Charts.Choice(
                "as drawn", base.flows().fromRoom(), base.coverage().weakest()));
        for (Suggestion s : advice)
            choices.add(new Charts.Choice(
                    s.measure().words(), s.flowsAfter().fromRoom(), s.after().weakest()));
        return Charts.frontier(
                scenario.name(),
                choices,
                Charts.Price.ROOM_AIR,
                scenario.target().vacuum(),
                look);
    }

    /** Fans tried: vacuum held against their power; empty where no power is known. */
    public static Optional<Figure> power(Sizing sizing, MapStyle look) {
        List<Charts.Choice> choices = sizing.ranking().fans().stream()
                .filter(r -> r.watts().isPresent())
                .map(r -> new Charts.Choice(
                        r.fan().offer().id(), r.watts().getAsDouble(), r.drawn().vacuum()))
                .toList();
        if (choices.isEmpty()) return Optional.empty();
        return Optional.of(Charts.frontier(
                sizing.scenario().name(),
                choices,
                Charts.Price.POWER,
                sizing.scenario().target().vacuum(),
                look));
    }

    /** The vacuum through the year and on the worst day; empty where the climate is not known. */
    public static Optional<Figure> season(Sizing sizing, Unit degrees, MapStyle look) {
        if (sizing.season().isEmpty()) return Optional.empty();
        List<Charts.Season> bins = sizing.season().stream()
                .map(p -> new Charts.Season(
                        degrees.fromSi(p.bin().outdoorTemperature()),
                        p.bin().duration() / 3600,
                        p.held().vacuum()))
                .toList();
        Optional<House.DesignDay> day = sizing.scenario().house().designDay();
        List<Charts.Season> worst = day.isEmpty()
                ? List.of()
                : sizing.chosen()
                        .flatMap(FanRanking.Ranked::worstDay)
                        .map(h -> List.of(
                                new Charts.Season(degrees.fromSi(day.get().outdoorTemperature()), 0, h.vacuum())))
                        .orElse(List.of());
        return Optional.of(Charts.season(
                sizing.scenario().name(),
                bins,
                degrees.symbol(),
                worst,
                sizing.scenario().target().vacuum(),
                look));
    }
}
