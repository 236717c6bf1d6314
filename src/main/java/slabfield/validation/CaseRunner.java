package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;

/** Runs a case: its claims, its control, and on demand the same on coarser and finer grids. */
public final class CaseRunner {
    /** Cells of the refinement, in parts of the case's own. */
    private static final double[] FACTORS = {2, 1, 0.5};

    private CaseRunner() {}

    /**
     * Runs a case.
     *
     * @param refine whether to solve it on other grids too, for its report
     */
    public static Outcome run(ValidationCase of, boolean refine) {
        try {
            List<Claim> claims = of.claims();
            Values values = new Values(of.tree(), 1);
            Map<String, Double> accepted = Baseline.read(of.folder());
            List<Outcome.Check> checks = new ArrayList<>();
            for (Claim c : claims) checks.add(new Outcome.Check(c, ours(values, c), baseline(accepted, c)));
            List<Outcome.Refined> refined = refine && of.solves() ? refined(of, claims, values) : List.of();
            return new Outcome(of, checks, Optional.empty(), values.imbalance(), control(of), refined);
        } catch (CaseProblem e) {
            Outcome.Control none = new Outcome.Control(0, 0, Optional.of("the case itself cannot be run"));
            return new Outcome(of, List.of(), Optional.of(e.getMessage()), Double.NaN, none, List.of());
        }
    }

    private static double ours(Values values, Claim claim) throws CaseProblem {
        return values.of(claim.value()) / claim.unitSize();
    }

    private static OptionalDouble baseline(Map<String, Double> accepted, Claim claim) {
        Double value = accepted.get(claim.name());
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The perturbed case's values, held against the sources and tolerances of the case as it is. */
    private static Outcome.Control control(ValidationCase of) throws CaseProblem {
        List<Claim> claims = of.claims();
        try {
            ValidationCase changed = of.perturbed();
            List<Claim> perturbed = changed.claims();
            Values values = new Values(changed.tree(), 1);
            int red = 0;
            for (int i = 0; i < claims.size(); i++) if (!claims.get(i).agrees(ours(values, perturbed.get(i)))) red++;
            return new Outcome.Control(red, claims.size(), Optional.empty());
        } catch (CaseProblem e) {
            return new Outcome.Control(0, claims.size(), Optional.of(e.getMessage()));
        }
    }

    private static List<Outcome.Refined> refined(ValidationCase of, List<Claim> claims, Values own) throws CaseProblem {
        List<Outcome.Refined> out = new ArrayList<>();
        for (double factor : FACTORS) {
            Values values = factor == 1 ? own : new Values(of.tree(), factor);
            List<Double> numbers = new ArrayList<>();
            for (Claim c : claims) numbers.add(isSolved(c.value()) ? ours(values, c) : Double.NaN);
            double cell = values.solved().values().stream()
                    .mapToDouble(CaseRunner::cell)
                    .max()
                    .orElse(Double.NaN);
            out.add(new Outcome.Refined(factor, cell, numbers));
        }
        return out;
    }

    private static boolean isSolved(JsonNode value) {
        return Values.isSolved(value);
    }

    private static double cell(Result.Solved solved) {
        return Math.max(solved.field().grid().width(), solved.field().grid().height());
    }
}
