package evenfall.sim.world;

import evenfall.sim.scenario.Scenario;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * How many seconds of field a second of one core simulates, with everything on: the score is times real time. Rough ground of class C,
 * the boom, plumbing, all streams and the ledger at 50 Hz, sensors and sentences. The cost, one over the score, grows in proportion
 * to outlets and to streams, over a part that depends on neither. Run the main method.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class WorldBenchmark {
    private static final int SECONDS = 120;

    @Param({"24", "48", "72", "96"})
    int outlets;

    @Param({"three-stream", "five-stream", "seven-stream"})
    String type;

    private Scenario scenario;
    private World world;

    @Setup(Level.Trial)
    public void read() {
        int perSection = outlets / 6;
        String sections = (perSection + ", ").repeat(5) + perSection;
        scenario = TestScenarios.scenario(TestScenarios.edit(
                TestScenarios.builtIn("level-field"),
                "seconds: 30",
                "seconds: " + SECONDS,
                "roughness: B",
                "roughness: C",
                "boom: wide-36",
                "boom: wide-36\n    boom_but: {half_width_m: " + 0.5 * 0.508 * outlets + "}",
                "outlets: 72",
                "outlets: " + outlets,
                "sections: [12, 12, 12, 12, 12, 12]",
                "sections: [" + sections + "]",
                "right_m: -17.0",
                "right_m: -6.0",
                "right_m: -9.0",
                "right_m: -3.0",
                "right_m: 9.0",
                "right_m: 3.0",
                "right_m: 17.0",
                "right_m: 6.0",
                "type: five-stream",
                "type: " + type));
    }

    @Setup(Level.Invocation)
    public void build() {
        world = new World(scenario, new TruthLog());
    }

    @Benchmark
    @OperationsPerInvocation(SECONDS)
    public double run() {
        long[] bytes = {0};
        world.run(emission -> bytes[0] += emission.bytes().length);
        return world.xM() + bytes[0];
    }

    /** @param args {@code 72 five-stream} for that one alone; all without */
    public static void main(String[] args) throws RunnerException {
        OptionsBuilder options = new OptionsBuilder();
        options.include(WorldBenchmark.class.getSimpleName());
        if (args.length == 2) {
            options.param("outlets", args[0]).param("type", args[1]);
        }
        new Runner(options.build()).run();
    }
}
