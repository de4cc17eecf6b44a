package evenfall.wire;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import net.sf.marineapi.nmea.parser.SentenceFactory;
import net.sf.marineapi.nmea.sentence.RMCSentence;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * One RMC from bytes to status, UTC, position, speed and course, beside a library by others that is given the same line and asked for
 * the same. Both check the checksum.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class SentenceBenchmark {
    private final String line =
            SentenceStreamTest.signed("GPRMC,120000.00,A,5212.3456,N,00112.3456,E,010.70,090.0,251126,,,A");
    private final byte[] bytes = (line + "\r\n").getBytes(StandardCharsets.US_ASCII);
    private final Reader reader = new Reader();
    private final SentenceStream stream = new SentenceStream(reader);
    private final SentenceFactory factory = SentenceFactory.getInstance();

    private static final class Reader implements SentenceHandler {
        private double sum;

        @Override
        public void onRmc(Rmc rmc) {
            sum = (rmc.hasFix() ? 1 : 0)
                    + rmc.utcEpochMs()
                    + rmc.latitudeDeg()
                    + rmc.longitudeDeg()
                    + rmc.speedMps()
                    + rmc.courseDeg();
        }
    }

    @Benchmark
    public double ours() {
        stream.accept(bytes, 0, bytes.length);
        return reader.sum;
    }

    @Benchmark
    public void marineApi(Blackhole sink) {
        RMCSentence rmc = (RMCSentence) factory.createParser(line);
        sink.consume(rmc.getStatus());
        sink.consume(rmc.getTime());
        sink.consume(rmc.getDate());
        sink.consume(rmc.getPosition());
        sink.consume(rmc.getSpeed());
        sink.consume(rmc.getCourse());
    }
}
