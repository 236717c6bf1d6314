package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import slabfield.model.Source;

/**
 * What the readings of a fit can tell apart and what not. A number is given only for an unknown that is known to a factor
 * of two either way with 90 % probability and of which the readings, not its prior, say so. Of the others it is asked
 * whether their ratio is known that well, or whether one can stand in for the other.
 *
 * @param findings one for each unknown, in the fit's order
 * @param ratios what is known of pairs that are not known each
 * @param exchangeable groups of which only the sum of their effects is known
 * @param directions of the scaled sensitivities, the best known first
 * @param measure what to read to know more, in plain sentences
 */
public record Identifiability(
        List<Finding> findings,
        List<Ratio> ratios,
        List<Group> exchangeable,
        List<Direction> directions,
        List<String> measure) {
    /** Probability of all ranges. */
    public static final double PROBABILITY = 0.9;
    /** Factor either way to which a number must be known; a choice. */
    public static final double NUMBER = 2;

    private static final double OUTER = 1.6449;
    /** Part of the prior's standard deviation below which the readings have said something. */
    private static final double SAID = 0.7;
    /** The same above which they have said nothing. */
    private static final double UNSEEN = 0.9;
    /** Correlation below which one unknown stands in for another. */
    private static final double EXCHANGED = -0.7;

    /** How an unknown is known. */
    public enum Standing {
        FOUND("found"),
        RANGE("only a range"),
        COMBINED("only together with another"),
        UNSEEN("not seen by the readings");

        private final String words;

        Standing(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * An unknown.
     *
     * @param parameter its place in the fit
     * @param standing how it is known; only where it is found may its value be called a number
     * @param range that holds it with 90 % probability, in its unit
     */
    public record Finding(int parameter, Standing standing, Interval range) {}

    /**
     * Two unknowns of which the first over the second is known.
     *
     * @param value first over second, each in its unit
     * @param range that holds it with 90 % probability
     */
    public record Ratio(int first, int second, double value, Interval range) {}

    /** Unknowns that the readings mistake for each other, at least two, rising. */
    public record Group(List<Integer> members) {}

    /**
     * A combination of all unknowns.
     *
     * @param gain singular value: how many times better the readings know it than the priors did
     * @param weights of the unknowns, in standard deviations of their priors, of length one
     */
    public record Direction(double gain, double[] weights) {}

    /** Looks at a fit. */
    public static Identifiability of(Fitted fit) {
        return new Looking(fit).told();
    }

    /** A look at one fit. */
    private record Looking(Fitted fit, double[][] covariance, List<Parameter> parameters) {
        Looking(Fitted fit) {
            this(fit, fit.covariance(), fit.parameters());
        }

        Identifiability told() {
            int n = parameters.size();
            List<Integer> open =
                    IntStream.range(0, n).filter(j -> !found(j)).boxed().toList();
            List<Ratio> ratios = new ArrayList<>();
            List<Set<Integer>> mistaken = new ArrayList<>();
            for (int a : open)
                for (int b : open) {
                    if (a == b || !logarithmic(a) || !logarithmic(b)) continue;
                    if (a > b && knownRatio(a, b)) ratios.add(ratio(a, b));
                    if (a < b
                            && sought(a)
                            && sought(b)
                            && !knownRatio(a, b)
                            && !unseen(a)
                            && !unseen(b)
                            && correlation(a, b) < EXCHANGED) join(mistaken, a, b);
                }
            List<Ratio> kept = chained(ratios);
            List<Group> groups =
                    mistaken.stream().map(g -> new Group(List.copyOf(g))).toList();
            List<Finding> findings = IntStream.range(0, n)
                    .mapToObj(j -> new Finding(j, standing(j, kept, groups), fit.interval(j, PROBABILITY)))
                    .toList();
            return new Identifiability(findings, kept, groups, directions(), measure(findings, kept, groups));
        }

        /** Puts two unknowns into one group, with all that were in a group with either. */
        private static void join(List<Set<Integer>> groups, int a, int b) {
            Set<Integer> joined = new TreeSet<>(Set.of(a, b));
            for (Set<Integer> g : groups) if (g.contains(a) || g.contains(b)) joined.addAll(g);
            groups.removeIf(joined::containsAll);
            groups.add(joined);
        }

        /** Ratios to the first unknown of each chain: the others follow. */
        private static List<Ratio> chained(List<Ratio> ratios) {
            List<Ratio> kept = new ArrayList<>();
            for (Ratio r : ratios) if (kept.stream().noneMatch(k -> k.first() == r.first())) kept.add(r);
            return kept;
        }

        private boolean logarithmic(int j) {
            return parameters.get(j).prior().scale() == Prior.Scale.LOGARITHMIC;
        }

        private double spread(int j) {
            return logarithmic(j) ? Math.log(parameters.get(j).prior().spread()) : 1;
        }

        private boolean found(int j) {
            double left = Math.sqrt(covariance[j][j]);
            return left <= SAID && (!logarithmic(j) || OUTER * left * spread(j) <= Math.log(NUMBER));
        }

        /** True where the readings would say next to nothing of it even if all others were known. */
        private boolean unseen(int j) {
            double gain = 0;
            for (double[] row : fit.scaledSensitivities()) gain += row[j] * row[j];
            return 1 / Math.sqrt(1 + gain) > UNSEEN;
        }

        private double correlation(int a, int b) {
            return covariance[a][b] / Math.sqrt(covariance[a][a] * covariance[b][b]);
        }

        private double ratioDeviation(int a, int b) {
            double sa = spread(a), sb = spread(b);
            double v = sa * sa * covariance[a][a] + sb * sb * covariance[b][b] - 2 * sa * sb * covariance[a][b];
            return Math.sqrt(Math.max(0, v));
        }

        private boolean knownRatio(int a, int b) {
            boolean both = parameters.get(a).kind().conducts()
                    && parameters.get(b).kind().conducts();
            double before = Math.hypot(spread(a), spread(b));
            double now = ratioDeviation(a, b);
            return both && OUTER * now <= Math.log(NUMBER) && now <= SAID * before;
        }

        private Ratio ratio(int a, int b) {
            double value = fit.value(a) / fit.value(b), half = Math.exp(OUTER * ratioDeviation(a, b));
            return new Ratio(a, b, value, new Interval(value / half, value * half));
        }

        private Standing standing(int j, List<Ratio> ratios, List<Group> groups) {
            if (found(j)) return Standing.FOUND;
            if (unseen(j)) return Standing.UNSEEN;
            boolean combined = ratios.stream().anyMatch(r -> r.first() == j || r.second() == j)
                    || groups.stream().anyMatch(g -> g.members().contains(j));
            return combined ? Standing.COMBINED : Standing.RANGE;
        }

        private List<Direction> directions() {
            double[][] s = fit.scaledSensitivities();
            int n = parameters.size();
            double[][] tall = new double[Math.max(s.length, n)][n];
            for (int i = 0; i < s.length; i++) tall[i] = s[i];
            SingularValueDecomposition d = new SingularValueDecomposition(new Array2DRowRealMatrix(tall));
            return IntStream.range(0, n)
                    .mapToObj(i ->
                            new Direction(d.getSingularValues()[i], d.getV().getColumn(i)))
                    .toList();
        }

        private List<String> measure(List<Finding> findings, List<Ratio> ratios, List<Group> groups) {
            List<String> out = new ArrayList<>();
            boolean unsure = findings.stream()
                    .filter(this::sought)
                    .anyMatch(f -> f.standing() == Standing.RANGE || f.standing() == Standing.COMBINED);
            if ((unsure || !ratios.isEmpty()) && !flowKnown())
                out.add(
                        "Measure the flow at the suction point: without it a leaky slab and a tight fill read the same.");
            else if (unsure && groups.isEmpty())
                out.add(
                        "Read more holes, some within a step or two of the suction point and some at the far corners: holes that lie"
                                + " together tell the same thing twice.");
            for (Group g : groups)
                out.add("Cover one at a time and read the holes and the flow again: "
                        + String.join("; ", g.members().stream().map(this::bare).toList())
                        + ". That tells them apart.");
            List<String> beside = findings.stream()
                    .filter(f -> f.standing() == Standing.RANGE || f.standing() == Standing.COMBINED)
                    .filter(f ->
                            parameters.stream().anyMatch(p -> FillBeside.goTogether(parameters.get(f.parameter()), p)))
                    .map(f -> bare(f.parameter()))
                    .toList();
            if (!beside.isEmpty())
                out.add(
                        "Read a hole right beside the opening, for nowhere else are a leak and the fill around it told apart: "
                                + String.join("; ", beside) + ".");
            for (Finding f : findings)
                if (f.standing() == Standing.UNSEEN && sought(f))
                    out.add("No reading depends on " + bare(f.parameter())
                            + (placed(f) ? ": read a hole near it, or leave it" : ": leave it") + " as assumed.");
            return out;
        }

        /** True for what lies at one place, near which a hole can be read. */
        private boolean placed(Finding f) {
            Parameter.Kind kind = parameters.get(f.parameter()).kind();
            return kind != Parameter.Kind.OUTDOORS && kind != Parameter.Kind.SOIL && kind != Parameter.Kind.INERTIAL;
        }

        private boolean sought(Finding f) {
            return sought(f.parameter());
        }

        private boolean sought(int j) {
            return parameters.get(j).kind().sought();
        }

        private String bare(int j) {
            return parameters.get(j).words();
        }

        private boolean flowKnown() {
            return fit.observations().stream().anyMatch(o -> o.what() == Observation.What.FLOW)
                    || fit.drawn().stages().stream()
                            .anyMatch(s -> fit.drawn().during(s).suctionPoints().stream()
                                    .anyMatch(p -> p.source() instanceof Source.Flow));
        }
    }
}
