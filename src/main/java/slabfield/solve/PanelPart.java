package slabfield.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The panels of a {@link PanelPattern}, dealt out so that parts can be worked on at the same time: whole subtrees of the elimination
 * tree go to one of two parts, and what lies above them is left to the part that has these two below it (subtree-to-subcube
 * mapping; George, Liu and Ng 1989, Parallel Comput. 10, from memory). How they are dealt out follows from the pattern alone.
 */
final class PanelPart {
    /** A part whose multiplications are fewer, or fewer than this share of all, is not divided. */
    private static final double LEAST = 4e5;

    private static final double LEAST_SHARE = 0.15;

    /** Parts to be done before this one; null for none. */
    final PanelPart first;

    final PanelPart second;
    /** Own panels, rising. */
    final int[] panels;
    /** Counts the parts from 0. */
    final int number;

    private PanelPart(PanelPart first, PanelPart second, int[] panels, int number) {
        this.first = first;
        this.second = second;
        this.panels = panels;
        this.number = number;
    }

    /** The parts of one pattern. */
    static final class Division {
        final PanelPart top;
        final int parts;
        /** For each panel how many of its rows belong to panels of its own part; these come first. */
        final int[] inside;
        /** Number of each column that belongs to a part with others below it; -1 for the rest. */
        final int[] shared;

        final int sharedColumns;

        Division(PanelPattern pattern) {
            Dealer dealer = new Dealer(pattern);
            List<Integer> roots = new ArrayList<>();
            for (int p = 0; p < pattern.parent.length; p++) {
                if (pattern.parent[p] < 0) {
                    roots.add(p);
                }
            }
            top = dealer.deal(roots);
            parts = dealer.count;
            int[] partOf = new int[pattern.rows.length];
            shared = new int[pattern.size];
            Arrays.fill(shared, -1);
            sharedColumns = note(top, pattern, partOf, 0);
            inside = new int[partOf.length];
            for (int p = 0; p < partOf.length; p++) {
                int[] rows = pattern.rows[p];
                int r = rows.length;
                while (partOf[pattern.panelOf[rows[r - 1]]] != partOf[p]) {
                    r--;
                }
                inside[p] = r;
            }
        }

        private int note(PanelPart part, PanelPattern pattern, int[] partOf, int before) {
            int count = before;
            for (int p : part.panels) {
                partOf[p] = part.number;
                for (int c = pattern.begin[p]; part.first != null && c < pattern.begin[p + 1]; c++) {
                    shared[c] = count++;
                }
            }
            return part.first == null
                    ? count
                    : note(part.second, pattern, partOf, note(part.first, pattern, partOf, count));
        }
    }

    private static final class Dealer {
        private final PanelPattern pattern;
        private final int[][] children;
        /** Multiplications in each panel's subtree, and first panel of it. */
        private final double[] work;

        private final int[] low;
        private double all;
        private int count;

        Dealer(PanelPattern pattern) {
            this.pattern = pattern;
            children = pattern.children();
            int n = pattern.rows.length;
            work = new double[n];
            low = new int[n];
            for (int p = 0; p < n; p++) {
                low[p] = p;
                double tall = pattern.rows[p].length;
                for (int c = pattern.begin[p]; c < pattern.begin[p + 1]; c++, tall--) {
                    work[p] += tall * tall / 2;
                }
                for (int c : children[p]) {
                    work[p] += work[c];
                    low[p] = Math.min(low[p], low[c]);
                }
                if (pattern.parent[p] < 0) {
                    all += work[p];
                }
            }
        }

        private double sum(List<Integer> roots) {
            return roots.stream().mapToDouble(p -> work[p]).sum();
        }

        PanelPart deal(List<Integer> roots) {
            double whole = sum(roots);
            List<Integer> above = new ArrayList<>();
            List<Integer> under = new ArrayList<>(roots);
            Comparator<Integer> lightFirst =
                    Comparator.comparingDouble((Integer p) -> work[p]).thenComparing(p -> p);
            while (whole > Math.max(LEAST, LEAST_SHARE * all)) {
                if (under.isEmpty()) {
                    return leaf(roots);
                }
                int heaviest = under.stream().max(lightFirst).orElseThrow();
                if (work[heaviest] <= sum(under) / 2 && under.size() > 1) {
                    return divide(above, under, lightFirst);
                }
                under.remove((Integer) heaviest);
                above.add(heaviest);
                for (int c : children[heaviest]) {
                    under.add(c);
                }
                if (under.size() > 1 && balanced(under, lightFirst)) {
                    return divide(above, under, lightFirst);
                }
            }
            return leaf(roots);
        }

        /** True where the heaviest subtree has at most three fifths of the work of all. */
        private boolean balanced(List<Integer> under, Comparator<Integer> lightFirst) {
            return work[under.stream().max(lightFirst).orElseThrow()] <= 0.6 * sum(under);
        }

        private PanelPart divide(List<Integer> above, List<Integer> under, Comparator<Integer> lightFirst) {
            under.sort(lightFirst.reversed());
            List<Integer> a = new ArrayList<>();
            List<Integer> b = new ArrayList<>();
            for (int p : under) {
                (sum(a) <= sum(b) ? a : b).add(p);
            }
            PanelPart one = deal(a);
            PanelPart two = deal(b);
            int[] own = above.stream().mapToInt(p -> p).sorted().toArray();
            return new PanelPart(one, two, own, count++);
        }

        private PanelPart leaf(List<Integer> roots) {
            int[] own = roots.stream()
                    .sorted()
                    .flatMapToInt(p -> java.util.stream.IntStream.rangeClosed(low[p], p))
                    .toArray();
            return new PanelPart(null, null, own, count++);
        }
    }
}
