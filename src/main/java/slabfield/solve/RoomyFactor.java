package slabfield.solve;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A {@link PanelCholesky} factor whose analysis serves one matrix after another, as long as each has only nodes and couplings for
 * which there is room. Nodes that a matrix lacks stand alone meanwhile and change nothing.
 *
 * <p>Not safe for use by several threads at once.
 */
public final class RoomyFactor {
    private final SymmetricMatrix room;
    private final PanelCholesky factor;
    private final double[] work;
    /** Node of the room for each of the matrix's, and slot for each of its entries. */
    private int[] node = new int[0];

    private int[] slot = new int[0];
    private SymmetricMatrix matrix;
    private boolean[] taken;
    private boolean factored;

    /**
     * @param room pattern that holds those of all matrices to come; its values are overwritten
     * @param order every node of the room once, in the order of elimination
     */
    public RoomyFactor(SymmetricMatrix room, int[] order) {
        this.room = room;
        factor = new PanelCholesky(room, order);
        work = new double[room.size()];
    }

    /** A factor of one matrix, without room for more. */
    public static RoomyFactor exact(SymmetricMatrix matrix, int[] order) {
        RoomyFactor made = new RoomyFactor(matrix, order);
        int[] same = new int[matrix.size()];
        for (int i = 0; i < same.length; i++) {
            same[i] = i;
        }
        made.take(matrix, same);
        return made;
    }

    /**
     * Takes up another matrix.
     *
     * @param next whose values are read at each {@link #factor()}
     * @param nodeInRoom node of the room for each of its nodes, each at most once; -1 where there is none
     * @return false where there is no room for a node or a coupling; the matrix before stays
     */
    public boolean take(SymmetricMatrix next, int[] nodeInRoom) {
        int n = next.size();
        int[] slots = new int[next.entries()];
        boolean[] has = new boolean[room.size()];
        for (int i = 0; i < n; i++) {
            if (nodeInRoom[i] < 0) {
                return false;
            }
            slots[i] = nodeInRoom[i];
            has[nodeInRoom[i]] = true;
        }
        for (int i = 0; i < n; i++) {
            for (int k = next.first(i); k < next.first(i + 1); k++) {
                int s = room.find(nodeInRoom[i], nodeInRoom[next.column(k)]);
                if (s < 0) {
                    return false;
                }
                slots[n + k] = s;
            }
        }
        matrix = next;
        node = nodeInRoom.clone();
        slot = slots;
        taken = has;
        return true;
    }

    /**
     * Factors the matrix taken up last as its values now stand.
     *
     * @return empty when done; else a node at which it proves not positive definite
     */
    public OptionalInt factor() {
        if (matrix != room) {
            copy();
        }
        OptionalInt bad = factor.factor();
        factored = bad.isEmpty();
        return bad.isEmpty() ? bad : OptionalInt.of(nodeOf(bad.getAsInt()));
    }

    private void copy() {
        double[] to = room.values();
        double[] from = matrix.values();
        Arrays.fill(to, 0);
        double alone = usual(from);
        for (int i = 0; i < taken.length; i++) {
            to[i] = taken[i] ? 0 : alone;
        }
        for (int k = 0; k < slot.length; k++) {
            to[slot[k]] += from[k];
        }
    }

    /**
     * Geometric mean of the diagonal: what a node that stands alone gets, so that the factor still resembles one of the next
     * matrix, which may have it.
     */
    private double usual(double[] diagonal) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < node.length; i++) {
            if (diagonal[i] > 0) {
                sum += Math.log(diagonal[i]);
                count++;
            }
        }
        return count == 0 ? 1 : Math.exp(sum / count);
    }

    /** True where there is a factor, be it of the matrix taken up last or of one before. */
    boolean isFactored() {
        return factored;
    }

    /** The panels themselves, by the matrix's own nodes; empty where there is room for more than the one matrix. */
    public Optional<PanelCholesky> exactPanels() {
        return matrix == room ? Optional.of(factor) : Optional.empty();
    }

    private int nodeOf(int inRoom) {
        int i = 0;
        while (node[i] != inRoom) {
            i++;
        }
        return i;
    }

    /**
     * Solves with the factor at hand.
     *
     * @param rhs by node of the matrix, not modified unless it is x
     * @param x overwritten with the answer; may be the same array
     */
    public void solve(double[] rhs, double[] x) {
        Arrays.fill(work, 0);
        for (int i = 0; i < node.length; i++) {
            work[node[i]] = rhs[i];
        }
        factor.solve(work, work);
        for (int i = 0; i < node.length; i++) {
            x[i] = work[node[i]];
        }
    }
}
