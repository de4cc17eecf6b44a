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
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How many seconds of recording one core replays in a second: a trace of an hour with 80 sentences a second, from its text through
 * decoding, senses and judgement to the digest of every message. A machine of 72 five-stream outlets with five height sensors on
 * ground that moves all of them; the score is times real time. With
 * the collector that the desk and the board run with.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class ReplayBenchmark implements Outputs {
    private static final int SECONDS = 3600;

    private Rig rig;
    private byte[] trace;

    @Setup
    public void write() throws Exception {
        rig = RigFile.read(Path.of("controller", "docs", "example-rig.yaml"));
        trace = InventedTrace.of(rig, SECONDS).getBytes(StandardCharsets.US_ASCII);
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
