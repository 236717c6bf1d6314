package slabfield.network;

import java.util.List;
import slabfield.field.*;
import slabfield.model.*;

public class Scratch {
    public static void main(String[] a) {
        // rectangle by images: T=1.104972e-4, lambda=3
        double k = 2e-8, h = 0.1, T = k * h / 1.81e-5;
        for (double lam : new double[] {1.5, 3})
            for (double dx : new double[] {0.2, 0.1, 0.05}) {
                double g = T / (lam * lam), Q = 0.01;
                Scenario s = Houses.house(List.of(Houses.rectangle("r", 0, 0, 10, 8)), Fill.of(h, k, 0), g, List.of(Houses.flow("S", 2.5, 3, 0.05, Q)), dx);
                long t0 = System.nanoTime();
                Result r = SlabSolver.solve(s, Progress.NONE);
                long t1 = System.nanoTime();
                System.out.println(r.convergence() + " ms " + (t1 - t0) / 1e6);
                if (r instanceof Result.Solved v) {
                    double f = -2 * Math.PI * T / Q;
                    for (double[] p : new double[][] {{4.5, 3}, {7.5, 3}, {2.5, 6}, {5, 4}, {0.05, 0.05}})
                        System.out.printf(" %.6f", f * v.field().at(p[0], p[1]).getAsDouble());
                    System.out.println(" pit " + v.suctions() + " " + v.flows());
                }
            }
        // disk N1, N5
        for (double rw : new double[] {0.05,0.15})
        for (double[] c : new double[][] {{2e-8, 0, 1e-6}, {1e-7, 1000, 2e-6}})
            for (double dx : new double[] {0.2, 0.1, 0.05}) {
                Scenario s = Houses.house(List.of(Houses.ring("r", 6, 120)), Fill.of(0.1, c[0], c[1]), c[2], List.of(Houses.pressure("S", 0.013, 0.021, rw, -250)), dx);
                long t0 = System.nanoTime();
                Result r = SlabSolver.solve(s, Progress.NONE);
                long t1 = System.nanoTime();
                System.out.println(rw+" "+dx + " " + r.convergence() + " ms " + (t1 - t0) / 1e6);
                if (r instanceof Result.Solved v) {
                    System.out.printf("Q %.6e ", v.suctions().get(0).flow());
                    for (double p : new double[] {0.5, 1, 2, 3, 4, 5}) System.out.printf(" %.4f", v.field().at(p+0.013, 0.021).getAsDouble());
                    System.out.println();
                }
            }
    }
}
