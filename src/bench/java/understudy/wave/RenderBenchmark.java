package understudy.wave;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;

/** Nanoseconds a frame, all outputs of a shipped pattern together; real time at 48 kHz is 20 833. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class RenderBenchmark {
    private static final int BLOCK = 4096;

    @Param({"crank-60-2-hall", "crank-60-2-vr", "crank-36-1-cam-1-hall", "wheel-speeds-four-44-vr", "knock-86mm", "sine"})
    public String pattern;

    private Renderer renderer;
    private double[][] volts;

    @Setup
    public void open() {
        Pattern loaded = PatternLibrary.open().find(pattern).value().orElseThrow();
        renderer = new Renderer(loaded, 48_000, 50, new AtomicReference<>(Renderer.startingHand(loaded)));
        volts = new double[renderer.channels()][BLOCK];
    }

    @Benchmark
    @OperationsPerInvocation(BLOCK)
    public double[][] render() {
        renderer.render(volts, BLOCK);
        return volts;
    }
}
