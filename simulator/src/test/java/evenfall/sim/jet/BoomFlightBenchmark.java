package evenfall.sim.jet;

import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.sim.chance.Chance;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
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
 * The landing of a whole boom over rough ground at a travel speed that creeps up, and the sharing among rows. One operation is
 * one moment of the boom; divide by outlets × streams for the cost of a stream. Run the main method.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class BoomFlightBenchmark {
    private static final int MOMENTS = 64;

    @Param({"36", "72", "144"})
    int outlets;

    @Param({"three-stream", "five-stream", "seven-stream"})
    String type;

    private final OutletStates[] states = new OutletStates[MOMENTS];
    private final double[] travelMps = new double[MOMENTS];
    private final double[] shares = new double[RowSpread.MOST_ROWS];
    private final double[] rows = new double[400];
    private BoomFlight boom;
    private Landings landings;

    @Setup
    public void setUp() {
        OutletType outlet = OutletCatalogue.builtIn(type).fitted(0.508);
        boom = new BoomFlight(new FlightTable(outlet, JetLiquid.of(Liquids.UAN_28), Air.AT_20C), outlets);
        landings = new Landings(outlets, boom.streams());
        Chance chance = Chance.stream(1, "benchmark");
        for (int m = 0; m < MOMENTS; m++) {
            travelMps[m] = 5.5 + 0.002 * m + 0.001 * chance.nextGaussian();
            OutletStates s = new OutletStates(outlets);
            double roll = 0.03 * chance.nextGaussian();
            for (int i = 0; i < outlets; i++) {
                double out = (i + 0.5) / outlets - 0.5;
                s.rightM()[i] = 0.508 * outlets * out;
                s.heightM()[i] = 0.5 + 0.3 * out * roll / 0.03 + 0.03 * chance.nextGaussian();
                s.speedFactor()[i] = 0.88 + 0.02 * out;
                s.quantity()[i] = 1e-6;
                s.rollRad()[i] = roll * (1 + 0.1 * out);
                s.upMps()[i] = 0.3 * out;
                s.forwardMps()[i] = 0.2 * out;
            }
            states[m] = s;
        }
    }

    @Benchmark
    @OperationsPerInvocation(MOMENTS)
    public double land() {
        double sum = 0;
        for (int m = 0; m < MOMENTS; m++) {
            boom.land(states[m], travelMps[m], landings);
            sum += landings.rightM()[0][0];
        }
        return sum;
    }

    @Benchmark
    @OperationsPerInvocation(MOMENTS)
    public double landAndShareAmongRows() {
        for (int m = 0; m < MOMENTS; m++) {
            boom.land(states[m], travelMps[m], landings);
            double perRow = 1 / 0.1905;
            for (int k = 0; k < landings.streams(); k++) {
                for (int i = 0; i < outlets; i++) {
                    double at = landings.rightM()[k][i] * perRow + 0.5 * rows.length;
                    double sigma = landings.sigmaM()[k][i] * perRow;
                    int first = RowSpread.firstRow(at, sigma);
                    int n = RowSpread.shares(at, sigma, shares);
                    double quantity = landings.quantity()[k][i];
                    for (int j = 0; j < n; j++) {
                        rows[first + j] += quantity * shares[j];
                    }
                }
            }
        }
        return rows[0];
    }

    public static void main(String[] args) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(BoomFlightBenchmark.class.getSimpleName())
                        .build())
                .run();
    }
}
