package evenfall.replay;

import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.trace.TraceSource;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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

/**
 * How many seconds of recording one core replays in a second: a trace of an hour with 80 sentences a second, from its text through
 * decoding, senses and judgement to the digest of every message; the score is times real time. Two machines: the example rig, a boom of 36 m
 * with 72 five-stream outlets and five height sensors; and what a box is more often fitted to, an older one of 24 m with 48 three-stream outlets
 * and three height sensors. With the collector that the desk and the board run with.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class ReplayBenchmark implements Outputs {
    private static final int SECONDS = 3600;

    /** Width of the boom, m. */
    @Param({"36", "24"})
    private int boomM;

    private Rig rig;
    private byte[] trace;

    @Setup
    public void write() throws Exception {
        Path example = Path.of("controller", "docs", "example-rig.yaml");
        rig = boomM == 36 ? RigFile.read(example) : older(Files.readString(example));
        trace = InventedTrace.of(rig, SECONDS).getBytes(StandardCharsets.US_ASCII);
    }

    private static Rig older(String example) throws Exception {
        String text = example.replace("outlets: 72", "outlets: 48")
                .replace("[12, 12, 12, 12, 12, 12]", "[8, 8, 8, 8, 8, 8]")
                .replace("hinge_m: 6.0", "hinge_m: 3.0")
                .replace("type: five-stream", "type: three-stream")
                .replaceAll(".*name: (left|right)-mid.*\n", "")
                .replace("17.0", "11.5");
        Rig rig = RigFile.parse("older.yaml", text, Path.of("."));
        if (rig.boom().outlets() != 48 || rig.sensors().heights().size() != 3) {
            throw new IllegalStateException("the example rig is written otherwise now");
        }
        return rig;
    }

    @Benchmark
    @OperationsPerInvocation(SECONDS)
    public String replay() throws IOException {
        TraceSource source = TraceSource.open(new ByteArrayInputStream(trace), "benchmark");
        return TraceReplay.run(
                        rig, source::next, (topic, payload, retained, delivery) -> {}, this, (timeUs, unexpected) -> {
                            throw new IllegalStateException(unexpected);
                        })
                .digest();
    }

    @Override
    public void live(Live live) {
        // The messages are what counts.
    }

    @Override
    public void raised(Alert alert) {
        // The messages are what counts.
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        // The messages are what counts.
    }
}
