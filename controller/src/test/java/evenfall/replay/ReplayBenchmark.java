package evenfall.replay;

import evenfall.judge.Alert;
import evenfall.liquid.Orifice;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.HeightSense;
import evenfall.trace.TraceSource;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
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
 * How many seconds of recording one core replays in a second: a trace of ten minutes with 80 sentences a second, from its text through
 * decoding, senses and judgement to the digest of every message. A machine of 72 five-stream outlets with five height sensors on
 * ground that moves all of them; the score is times real time.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
public class ReplayBenchmark implements Outputs {
    private static final int SECONDS = 600;
    static final int SENTENCES_PER_S = 80;

    private Rig rig;
    private byte[] trace;

    @Setup
    public void write() throws Exception {
        rig = RigFile.read(Path.of("controller", "docs", "example-rig.yaml"));
        trace = trace(rig).getBytes(StandardCharsets.US_ASCII);
    }

    private static String trace(Rig rig) {
        Random random = new Random(7);
        double[] heightM = {0.5, 0.5, 0.5, 0.5, 0.5};
        StringBuilder out = new StringBuilder();
        double speedMps = 5.5;
        double pulses = 0;
        int sentences = 0;
        for (long ms = 50; ms <= SECONDS * 1000L; ms += 50) {
            long us = ms * 1000;
            double flowM3ps = rig.target().rateM() * speedMps * rig.boom().widthM();
            double hz = flowM3ps * rig.sensors().flow().orElseThrow().pulsesPerM3();
            pulses += hz * 0.05;
            StringBuilder echoes = new StringBuilder("PEVFH," + us);
            for (int i = 0; i < heightM.length; i++) {
                heightM[i] += 0.1 * (0.5 - heightM[i]) + 0.02 * random.nextGaussian();
                echoes.append(',').append(Math.round(2e6 * (heightM[i] + 0.1) / HeightSense.soundMps(10)));
            }
            sentences += say(out, us, "hub", echoes.toString());
            if (ms % 100 == 0) {
                long whole = (long) Math.floor(pulses);
                sentences += say(
                        out,
                        us,
                        "hub",
                        "PEVFQ," + us + "," + whole + "," + (us - Math.round((pulses - whole) / hz * 1e6)));
                Orifice orifice = rig.outlet().orifice();
                double pressurePa = orifice.pressurePa(
                        flowM3ps / rig.boom().outlets(), rig.liquid().specificGravity());
                sentences += say(out, us, "hub", "PEVFP," + us + "," + Math.round(4000 + 0.016 * pressurePa));
                sentences += say(out, us, "hub", "PEVFS," + us + ",3F");
                String time =
                        String.format(Locale.ROOT, "12%02d%02d.%02d", ms / 60_000 % 60, ms / 1000 % 60, ms / 10 % 100);
                String knots = String.format(Locale.ROOT, "%.3f", speedMps * 3600 / 1852);
                sentences += say(
                        out, us, "gnss", "GPRMC," + time + ",A,5200.0000,N,00100.0000,E," + knots + ",90.0,251126,,,A");
                sentences += say(out, us, "gnss", "GPVTG,90.0,T,,M," + knots + ",N,19.8,K,A");
                sentences +=
                        say(out, us, "gnss", "GPGGA," + time + ",5200.0000,N,00100.0000,E,1,12,0.8,80.0,M,47.0,M,,");
            }
        }
        if (sentences != SENTENCES_PER_S * SECONDS) {
            throw new IllegalStateException(sentences + " sentences");
        }
        return out.append(SECONDS * 1_000_000L).append(" - end\n").toString();
    }

    private static int say(StringBuilder out, long us, String port, String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        out.append(us).append(' ').append(port).append(" $").append(body);
        out.append(String.format(Locale.ROOT, "*%02X%n", sum));
        return 1;
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
