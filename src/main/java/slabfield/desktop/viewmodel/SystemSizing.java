package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import slabfield.equipment.FanRanking;
import slabfield.equipment.HousePressure;
import slabfield.equipment.Sizing;
import slabfield.equipment.SystemCurves;
import slabfield.field.Progress;
import slabfield.field.SystemCurve;
import slabfield.figure.Charts;
import slabfield.figure.Figure;
import slabfield.figure.MapStyle;
import slabfield.model.NominalPipe;
import slabfield.model.Scenario;

/** Ranks fans and compares pipes in the background. It changes nothing in the house. */
public final class SystemSizing {
    /** What sizes a system. */
    public interface Sizer {
        Sizing size(Scenario scenario, Progress progress);
    }

    /**
     * What was found.
     *
     * @param curve of the fan that was chosen; empty where none was
     */
    public record Sized(Sizing sizing, Optional<SystemCurve> curve) {
        static Sized of(Sizing sizing, Progress progress) {
            return new Sized(sizing, sizing.chosen().flatMap(fan -> SystemCurves.of(fan, progress.stopOnly())));
        }
    }

    private final Units units;
    private final HouseSearch<Sized> search;

    public SystemSizing(Document document, Units units, Sizer sizer, TaskRunner runner) {
        this.units = units;
        this.search = new HouseSearch<>(
                document,
                (s, p) -> Sized.of(sizer.size(s, counted(p, solves(s))), p),
                runner,
                new HouseSearch.Phrases(
                        "Each fan and each size of pipe is tried by solving the house with it; nothing is changed.",
                        "Trying fans and pipes in the whole network",
                        "sizing",
                        "Size again."),
                found -> summary(found.sizing()));
    }

    /** Sizing as the program does it. */
    static Sizing size(Scenario scenario, Progress progress) {
        return Sizing.of(scenario, Optional.empty(), progress);
    }

    private static String summary(Sizing sizing) {
        String tried = Words.count(sizing.ranking().fans().size(), "fan", "fans") + " and "
                + Words.count(
                        sizing.pipes().stream()
                                .filter(p -> p.size().isPresent())
                                .toList()
                                .size(),
                        "size of pipe",
                        "sizes of pipe")
                + " tried. Predicted, not measured.";
        return sizing.inventedOnly()
                ? tried + " The fans are invented: list your own under \"equipment\", \"fans\"."
                : tried;
    }

    /** Number of solves that a sizing reports: each fan as drawn and on the worst day, the pipes, the seasons. */
    static int solves(Scenario scenario) {
        int fans = Sizing.offers(scenario).size();
        boolean cold = HousePressure.missing(scenario.house()).isEmpty();
        int seasons = scenario.house().neutralLevel().isPresent()
                ? scenario.house().climate().bins().size()
                : 0;
        return (cold ? 2 : 1) * fans + NominalPipe.values().length + 2 + seasons;
    }

    /** One count over all parts of the work, each of which counts from the start. */
    private static Progress counted(Progress whole, int total) {
        AtomicInteger done = new AtomicInteger();
        return new Progress() {
            @Override
            public boolean isCancelled() {
                return whole.isCancelled();
            }

            @Override
            public void step(int part, int of, double residual) {
                whole.step(done.incrementAndGet(), total, residual);
            }
        };
    }

    /** How the sizing stands. */
    public HouseSearch<Sized> search() {
        return search;
    }

    /** Starts to size. */
    public void start() {
        search.start(
                "There is no suction point yet, so no pipe or fan can be sized. Draw one under \"suctionPoints\".");
    }

    /** What was found, in the units shown; empty before. */
    public List<SystemPart> parts() {
        return search.found()
                .get()
                .map(s -> new SystemPages(s.sizing(), units).parts())
                .orElse(List.of());
    }

    /** The outcome in a sentence or two; empty before. */
    public String headline() {
        return search.found().get().map(s -> headline(s.sizing())).orElse("");
    }

    /** The chosen fan's curve with that of the system, and where they meet; empty before, and where no fan was solved. */
    public Optional<Figure> curve(MapStyle look) {
        return search.found()
                .get()
                .flatMap(s ->
                        s.curve().map(c -> Charts.system(s.sizing().scenario().name(), c, look)));
    }

    private String headline(Sizing sizing) {
        String target = units.exactPressure(sizing.scenario().target().vacuum());
        if (sizing.chosen().isEmpty())
            return "No solve settled with these fans: "
                    + String.join(", ", sizing.ranking().unsolved()) + ". Look for values far outside the usual.";
        FanRanking.Ranked best = sizing.chosen().get();
        String name = "\u201c" + best.fan().offer().id() + "\u201d";
        String day = best.worstDay().isPresent() ? " on the worst day" : "";
        String least = best.watts().isPresent() ? "least power" : "least exhaust";
        String outcome = best.meets()
                ? name + " holds " + target + day + " with the " + least + "."
                : "No fan holds " + target + day + "; " + name + " comes nearest.";
        String unknown = best.worstDay().isPresent() ? "" : " The worst day is not known.";
        return outcome
                + unknown
                + sizing.heldDownTo()
                        .map(h -> " The target " + SystemPages.down(h, units) + ".")
                        .orElse("");
    }
}
