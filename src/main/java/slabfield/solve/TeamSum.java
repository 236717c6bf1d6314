package slabfield.solve;

/** Sums over a team: each worker gives its part and all get the same total. */
final class TeamSum {
    private static final int APART = 16;
    /** Two take turns, so that a worker may give its next part while another still reads. */
    private final double[][] parts;

    private final int[] turn;
    private final Workers team;

    TeamSum(Workers team) {
        this.team = team;
        parts = new double[2][APART * team.count()];
        turn = new int[APART * team.count()];
    }

    /** Every worker calls this; returns when all have. */
    double total(int me, double part) {
        double[] all = parts[turn[APART * me]++ & 1];
        all[APART * me] = part;
        team.await(me);
        double sum = 0;
        for (int w = 0; w < team.count(); w++) {
            sum += all[APART * w];
        }
        return sum;
    }
}
