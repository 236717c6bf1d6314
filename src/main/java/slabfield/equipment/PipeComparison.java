package slabfield.equipment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.law.AirState;
import slabfield.model.NominalPipe;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Source.Pipe;
import slabfield.model.SuctionPoint;

/**
 * One system with every stretch of pipe in each nominal size, each solved as a whole, so that a pipe shows what it costs
 * at the slab.
 *
 * @param size of all stretches; empty for the pipes as drawn
 * @param solved the house with these pipes
 * @param held vacuum at the slab
 * @param lost vacuum that would be gained there without any loss in the pipes [Pa]
 * @param runs losses of each run, by suction point or riser
 */
public record PipeComparison(
        Optional<NominalPipe> size, Result.Solved solved, Held held, double lost, Map<String, List<PipeLosses>> runs) {

    /** Largest velocity in any stretch [m/s]. */
    public double fastest() {
        return runs.values().stream()
                .flatMap(List::stream)
                .mapToDouble(PipeLosses::velocity)
                .max()
                .orElse(0);
    }

    /** Largest loss of any run from pit to discharge or riser, and of any riser [Pa]. */
    public double largestLoss() {
        return runs.values().stream()
                .mapToDouble(run -> run.stream().mapToDouble(PipeLosses::total).sum())
                .max()
                .orElse(0);
    }

    /**
     * As drawn first, then by rising size; those that did not converge are left out.
     *
     * @param scenario with its fans in place
     */
    public static List<PipeComparison> of(Scenario scenario, Progress progress) {
        List<Optional<NominalPipe>> sizes = new ArrayList<>(List.of(Optional.empty()));
        for (NominalPipe each : NominalPipe.values()) sizes.add(Optional.of(each));
        List<Scenario> houses = new ArrayList<>();
        houses.add(FanPlacement.withPipes(scenario, PipeComparison::lossless));
        for (Optional<NominalPipe> size : sizes)
            houses.add(size.map(s -> FanPlacement.withPipes(scenario, p -> p.withDiameter(s.insideDiameter())))
                    .orElse(scenario));
        List<Optional<Result.Solved>> solved = Solves.all(houses, progress);
        double best = solved.get(0).map(s -> Held.of(s).vacuum()).orElse(Double.NaN);
        List<PipeComparison> out = new ArrayList<>();
        for (int i = 0; i < sizes.size(); i++) {
            Optional<NominalPipe> size = sizes.get(i);
            solved.get(i + 1).ifPresent(s -> {
                Held held = Held.of(s);
                out.add(new PipeComparison(size, s, held, best - held.vacuum(), runs(s)));
            });
        }
        return out;
    }

    /** A metre of the widest pipe: next to no loss, and no jump in the law. */
    private static Pipe lossless(Pipe pipe) {
        return new Pipe(1, 1, 0, 0, 0);
    }

    /** Losses of each run at the solved flows, by suction point, and by riser behind them. */
    public static Map<String, List<PipeLosses>> runs(Result.Solved solved) {
        AirState air = Solves.air(solved.scenario());
        Map<String, List<PipeLosses>> out = new LinkedHashMap<>();
        for (SuctionPoint s : solved.scenario().suctionPoints()) {
            List<Pipe> run = s.source() instanceof Source.Fan f
                    ? f.run()
                    : s.source() instanceof Source.Branch b ? b.run() : List.of();
            if (!run.isEmpty())
                out.put(
                        s.id(),
                        PipeLosses.of(run, solved.suction(s.id()).orElseThrow().flow(), air));
        }
        Map<String, Double> flows = FanPlacement.flows(solved);
        for (Riser r : solved.scenario().equipment().risers())
            if (flows.containsKey(r.id()) && !r.run().isEmpty())
                out.put("riser " + r.id(), PipeLosses.of(r.run(), flows.get(r.id()), air));
        return out;
    }
}
