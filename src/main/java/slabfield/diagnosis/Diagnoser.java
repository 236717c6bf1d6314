package slabfield.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import slabfield.field.Progress;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.InertialNotDrawn;
import slabfield.fit.Interval;
import slabfield.fit.NoiseModel;
import slabfield.fit.NotFitted;
import slabfield.fit.Observation;
import slabfield.model.Scenario;

/**
 * Weighs what could be wrong with a house. Each explanation is a changed house with unknowns, fitted to all readings of all
 * stages together; its weight is its prior probability times its evidence p(readings | explanation), by Laplace's
 * approximation, which charges every explanation for the room that its unknowns give it. The house as drawn has half of the
 * prior probability, the causes that the drawing allows share the other half evenly. Of leaks, the drawn openings have half; all other explanations of a cause share evenly.
 * Explanations of one cause at many places are first looked at without a fit, and the most promising ones are fitted.
 */
public final class Diagnoser {
    /** Probability from which a cause is told: four to one against all others. */
    public static final double TOLD = 0.8;

    /**
     * Errors by which explanations are weighed. Beside the pit too the model is no better than where the suction has fallen to 1/e: cells
     * are coarse, and a cause is tried at a few places of which none is quite the true one.
     */
    static final NoiseModel NOISE = new NoiseModel(NoiseModel.USUAL.fallShare(), NoiseModel.USUAL.flowShare(), 1);

    /** Mean squared residual beyond which even the best explanation is no explanation. */
    static final double UNEXPLAINED = 5;

    private static final double DRAWN = 0.5;
    private static final int FITTED_PER_CAUSE = 2;
    private static final int CELLS = 500;

    private final Scenario house;
    private final List<Explanation> all;
    private final Steps steps;

    private Diagnoser(Scenario house, Progress progress) {
        this.house = house;
        all = Explanations.of(house);
        Collection<List<Explanation>> causes = byCause().values();
        steps = new Steps(
                progress,
                causes.stream().mapToInt(this::looks).sum(),
                causes.stream().mapToInt(this::fits).sum());
    }

    /** A progress that is also told which explanation is fitted now. */
    public interface Watch extends Progress {
        /**
         * A fit begins.
         *
         * @param number from 1
         * @param of number of fits in all
         * @param explanation that is fitted
         */
        void fitting(int number, int of, Explanation explanation);
    }

    /**
     * Diagnoses.
     *
     * @param drawn the house with its stages and readings
     * @param progress told of each explanation that is looked at or fitted, asked whether to go on; a {@link Watch} is also told
     *     which one is fitted
     * @throws NotFitted where there are too few readings, or the house as drawn has no solution
     * @throws CancellationException where somebody asked to stop
     */
    public static Diagnosis diagnose(Scenario drawn, Progress progress) throws NotFitted {
        return new Diagnoser(InertialNotDrawn.usual(drawn).withCellSize(cell(drawn)), progress).weigh();
    }

    /** Cells on which explanations are weighed: many solves, and no reading knows more than that [m]. */
    static double cell(Scenario drawn) {
        DoubleSummaryStatistics x = new DoubleSummaryStatistics(), y = new DoubleSummaryStatistics();
        drawn.slabs().stream().flatMap(s -> s.outline().stream()).forEach(p -> {
            x.accept(p.x());
            y.accept(p.y());
        });
        double box = (x.getMax() - x.getMin()) * (y.getMax() - y.getMin());
        return Math.max(drawn.cellSize(), Math.sqrt(box / CELLS));
    }

    private record Tried(Explanation explanation, Fitted fitted, double logWeight) {}

    private Diagnosis weigh() throws NotFitted {
        steps.fitting(all.get(0));
        Fitted drawn = HouseFit.fit(house, all.get(0).unknowns(), NOISE, steps.stopOnly());
        steps.fitted();
        List<Explanation> worth = new ArrayList<>();
        for (List<Explanation> same : byCause().values())
            if (same.get(0).cause() != Cause.AS_DRAWN) worth.addAll(promising(same, drawn));
        Map<Cause, List<Tried>> tried = new EnumMap<>(Cause.class);
        tried.put(Cause.AS_DRAWN, List.of(tried(all.get(0), drawn)));
        worth.parallelStream()
                .map(e -> fit(e).map(f -> tried(e, f)))
                .toList()
                .forEach(fitted -> fitted.ifPresent(
                        t -> tried.computeIfAbsent(t.explanation().cause(), c -> new ArrayList<>())
                                .add(t)));
        return answer(tried, drawn);
    }

    private Tried tried(Explanation e, Fitted fitted) {
        return new Tried(e, fitted, Math.log(prior(e, all)) + fitted.logEvidence());
    }

    /** Prior probability of one of all explanations. */
    static double prior(Explanation e, List<Explanation> all) {
        if (e.cause() == Cause.AS_DRAWN) return DRAWN;
        long causes = all.stream()
                .map(Explanation::cause)
                .filter(c -> c != Cause.AS_DRAWN)
                .distinct()
                .count();
        double same = all.stream()
                .filter(o -> o.cause() == e.cause())
                .mapToDouble(Explanation::share)
                .sum();
        return (1 - DRAWN) / causes * e.share() / same;
    }

    private Map<Cause, List<Explanation>> byCause() {
        Map<Cause, List<Explanation>> out = new EnumMap<>(Cause.class);
        for (Explanation e : all)
            out.computeIfAbsent(e.cause(), c -> new ArrayList<>()).add(e);
        return out;
    }

    private Optional<Fitted> fit(Explanation e) {
        steps.fitting(e);
        try {
            return Optional.of(HouseFit.fit(e.house(), e.unknowns(), NOISE, steps.stopOnly()));
        } catch (NotFitted unsolved) {
            return Optional.empty();
        } finally {
            steps.fitted();
        }
    }

    /**
     * Explanations of one cause that are worth a fit: the nearest of those that change something drawn, and of those that add
     * something.
     */
    private List<Explanation> promising(List<Explanation> same, Fitted drawn) {
        if (same.size() <= FITTED_PER_CAUSE) return same;
        List<Explanation> out = new ArrayList<>(nearest(changing(same, true), drawn));
        out.addAll(nearest(changing(same, false), drawn));
        return out;
    }

    /** Those of one cause that change something drawn, or else add something. */
    private List<Explanation> changing(List<Explanation> same, boolean drawn) {
        return same.stream().filter(e -> (e.house() == house) == drawn).toList();
    }

    /** How many of one cause are looked at without a fit. */
    private int looks(List<Explanation> same) {
        if (same.size() <= FITTED_PER_CAUSE) return 0;
        return Stream.of(true, false)
                .mapToInt(drawn -> changing(same, drawn).size())
                .filter(n -> n > FITTED_PER_CAUSE)
                .sum();
    }

    /** How many of one cause are fitted, at most. */
    private int fits(List<Explanation> same) {
        if (same.size() <= FITTED_PER_CAUSE) return same.size();
        return Stream.of(true, false)
                .mapToInt(drawn ->
                        Math.min(FITTED_PER_CAUSE, changing(same, drawn).size()))
                .sum();
    }

    private List<Explanation> nearest(List<Explanation> some, Fitted drawn) {
        if (some.size() <= FITTED_PER_CAUSE) return some;
        Look look = new Look(drawn);
        Map<Explanation, Double> misfits = new ConcurrentHashMap<>();
        some.stream().parallel().forEach(e -> {
            steps.check();
            misfits.put(e, look.at(e));
            steps.looked();
        });
        return some.stream()
                .sorted(Comparator.comparingDouble(misfits::get))
                .filter(e -> misfits.get(e) < Double.POSITIVE_INFINITY)
                .limit(FITTED_PER_CAUSE)
                .toList();
    }

    private Diagnosis answer(Map<Cause, List<Tried>> tried, Fitted drawn) {
        double top = tried.values().stream()
                .flatMap(List::stream)
                .mapToDouble(Tried::logWeight)
                .max()
                .orElseThrow();
        double total = tried.values().stream()
                .flatMap(List::stream)
                .mapToDouble(t -> Math.exp(t.logWeight() - top))
                .sum();
        List<Diagnosis.Weighed> causes = new ArrayList<>();
        for (List<Tried> same : tried.values()) {
            Tried best = same.stream()
                    .max(Comparator.comparingDouble(Tried::logWeight))
                    .orElseThrow();
            double weight = same.stream()
                    .mapToDouble(t -> Math.exp(t.logWeight() - top))
                    .sum();
            causes.add(new Diagnosis.Weighed(
                    best.explanation(), best.fitted(), weight / total, speaks(best.fitted(), drawn)));
        }
        causes.sort(Comparator.comparingDouble(Diagnosis.Weighed::probability).reversed());
        return new Diagnosis(verdict(causes), causes, next(causes), notes(causes, drawn));
    }

    private static Diagnosis.Answer verdict(List<Diagnosis.Weighed> causes) {
        Diagnosis.Weighed first = causes.get(0);
        if (meanSquare(first.fitted()) > UNEXPLAINED || first.probability() < TOLD) return Diagnosis.Answer.CANNOT_TELL;
        return first.cause() == Cause.AS_DRAWN ? Diagnosis.Answer.AS_DRAWN : Diagnosis.Answer.TOLD;
    }

    private static double meanSquare(Fitted fitted) {
        return fitted.chiSquare() / fitted.observations().size();
    }

    /** The reading that comes nearer by the most, in half squares of standard deviations. */
    private static Optional<Diagnosis.Speaks> speaks(Fitted cause, Fitted drawn) {
        List<Fitted.Residual> with = cause.residuals(), without = drawn.residuals();
        double most = 0.5;
        Optional<Diagnosis.Speaks> best = Optional.empty();
        for (int i = 0; i < with.size() && cause != drawn; i++) {
            double a = with.get(i).deviations(), b = without.get(i).deviations(), gain = (b * b - a * a) / 2;
            if (gain <= most) continue;
            most = gain;
            best = Optional.of(new Diagnosis.Speaks(
                    with.get(i).observation(),
                    with.get(i).predicted(),
                    without.get(i).predicted()));
        }
        return best;
    }

    private Optional<NextCheck> next(List<Diagnosis.Weighed> causes) {
        if (causes.size() < 2) return Optional.empty();
        return NextChecks.between(house, causes.get(0).fitted(), causes.get(1).fitted());
    }

    private static List<String> notes(List<Diagnosis.Weighed> causes, Fitted drawn) {
        List<String> notes = new ArrayList<>();
        boolean flow = drawn.observations().stream().anyMatch(o -> o.what() == Observation.What.FLOW);
        if (!flow)
            notes.add(
                    "No flow was measured. Without it a leaky slab and tight fill look alike; measure the flow before anything"
                            + " is built on this.");
        if (meanSquare(causes.get(0).fitted()) > UNEXPLAINED)
            notes.add(
                    "None of the explanations fits the readings. Look at the readings themselves first, and at the checklist.");
        leaksBeyondDrawn(causes.get(0)).ifPresent(notes::add);
        boolean tops = causes.stream().anyMatch(c -> c.cause() == Cause.WALL_TOPS && c.probability() > 0.05);
        boolean joint = causes.stream().anyMatch(c -> c.cause() == Cause.LEAK && c.probability() > 0.05);
        if (tops && joint)
            notes.add(
                    "A leaking joint and open block tops look alike from below the slab. Cover the tops for a while, or read the"
                            + " pressure in the wall.");
        return notes;
    }

    /** A house as drawn whose leaks are all far larger than drawn is hardly as drawn, and the readings may not tell which one is. */
    private static Optional<String> leaksBeyondDrawn(Diagnosis.Weighed first) {
        Fitted fitted = first.fitted();
        int leaks = fitted.indexOf(Explanations.ALL_LEAKS);
        if (first.cause() != Cause.AS_DRAWN || leaks < 0 || fitted.value(leaks) < Explanations.LEAKS)
            return Optional.empty();
        Interval range = fitted.interval(leaks, 0.9);
        return Optional.of(String.format(
                Locale.ROOT,
                "The house as drawn explains the readings only with all leaks together %.1f times what is drawn (90 %% range: %.1f"
                        + " to %.1f). One opening that leaks far more looks the same: cover them one at a time, and read the holes and"
                        + " the flow again.",
                fitted.value(leaks),
                range.low(),
                range.high()));
    }
}
