package slabfield.solve;

import java.util.Arrays;
import slabfield.solve.SymmetricMatrix.Neighbours;

/**
 * Orders a small part of a graph by eliminating the node with the fewest neighbours first. Neighbours outside the part
 * are counted but never eliminated, as they come later anyway (Tinney and Walker 1967, Proc. IEEE 55, scheme 2).
 */
final class MinimumDegree {
    private final Neighbours graph;
    /** Place of a node in the part at hand plus its rim, or -1. */
    private final int[] place;

    MinimumDegree(Neighbours graph, int nodes) {
        this.graph = graph;
        place = new int[nodes];
        Arrays.fill(place, -1);
    }

    /** Reorders {@code node[begin..end)}. */
    void order(int[] node, int begin, int end) {
        int inside = end - begin;
        int[] members = Arrays.copyOfRange(node, begin, end);
        int[] rim = rim(members);
        int words = (inside + rim.length + 63) / 64;
        long[][] joined = new long[inside][words];
        for (int i = 0; i < inside; i++) {
            for (int k = graph.from()[members[i]]; k < graph.from()[members[i] + 1]; k++) {
                set(joined[i], place[graph.node()[k]]);
            }
        }
        for (int i : members) {
            place[i] = -1;
        }
        for (int i : rim) {
            place[i] = -1;
        }
        eliminate(joined, members, node, begin);
    }

    private int[] rim(int[] members) {
        for (int i = 0; i < members.length; i++) {
            place[members[i]] = i;
        }
        int[] rim = new int[16];
        int count = 0;
        for (int i : members) {
            for (int k = graph.from()[i]; k < graph.from()[i + 1]; k++) {
                int other = graph.node()[k];
                if (place[other] < 0) {
                    if (count == rim.length) {
                        rim = Arrays.copyOf(rim, 2 * count);
                    }
                    place[other] = members.length + count;
                    rim[count++] = other;
                }
            }
        }
        return Arrays.copyOf(rim, count);
    }

    private static void eliminate(long[][] joined, int[] members, int[] node, int begin) {
        boolean[] gone = new boolean[members.length];
        int[] degree = new int[members.length];
        for (int i = 0; i < members.length; i++) {
            degree[i] = count(joined[i]);
        }
        for (int step = 0; step < members.length; step++) {
            int least = -1;
            for (int i = 0; i < members.length; i++) {
                if (!gone[i] && (least < 0 || degree[i] < degree[least])) {
                    least = i;
                }
            }
            gone[least] = true;
            node[begin + step] = members[least];
            for (int i = 0; i < members.length; i++) {
                if (!gone[i] && isSet(joined[least], i)) {
                    for (int w = 0; w < joined[i].length; w++) {
                        joined[i][w] |= joined[least][w];
                    }
                    unset(joined[i], least);
                    unset(joined[i], i);
                    degree[i] = count(joined[i]);
                }
            }
        }
    }

    private static void set(long[] bits, int i) {
        bits[i >> 6] |= 1L << i;
    }

    private static void unset(long[] bits, int i) {
        bits[i >> 6] &= ~(1L << i);
    }

    private static boolean isSet(long[] bits, int i) {
        return (bits[i >> 6] >> i & 1) != 0;
    }

    private static int count(long[] bits) {
        int sum = 0;
        for (long word : bits) {
            sum += Long.bitCount(word);
        }
        return sum;
    }
}
