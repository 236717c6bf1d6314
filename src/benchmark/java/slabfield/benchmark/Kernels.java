package slabfield.benchmark;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The kernels behind a drag on an N x N grid, in milliseconds. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class Kernels {
    @Param({"128", "256"})
    public int side;

    private DragKernel kernel;
    private int step;

    @Setup
    public void lay() {
        kernel = new DragKernel(side);
        kernel.keepAround(side / 3);
        kernel.keepAround(side / 3 + 1);
        kernel.moveTo(side / 3);
        kernel.keepUnit(side / 3);
    }

    @Benchmark
    public double[] moveByACellFromKeptResponses() {
        return kernel.moveTo(side / 3 + ++step % 2);
    }

    @Benchmark
    public double[] changeStrengthAlone() {
        return kernel.strengthen(++step % 2 == 0 ? 1 : -1);
    }

    @Benchmark
    public double[] solveWithKeptFactor() {
        return kernel.solveOnce();
    }

    @Benchmark
    public void factorAnew() {
        kernel.refactor();
    }
}
