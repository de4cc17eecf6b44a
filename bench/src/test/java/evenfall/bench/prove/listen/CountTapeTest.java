package evenfall.bench.prove.listen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Step;
import evenfall.sim.chance.Chance;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.Scene;
import evenfall.sim.wire.HubSentences;
import evenfall.sim.wire.Uart;
import evenfall.wire.SentenceStream;
import org.junit.jupiter.api.Test;

class CountTapeTest {
    private final HubSentences hub = new HubSentences();

    private static void hear(CountTape tape, SentenceStream stream, double timeS, byte[] bytes) {
        tape.now(timeS);
        stream.accept(bytes, 0, bytes.length);
    }

    /** Stands, drives 100 m at 5 m/s with a ramp at either end, stands. */
    private static final class Run implements Scene {
        double mps;
        double m;

        void at(double timeS) {
            double drive = Math.min(timeS - 2, 24 - timeS);
            mps = Math.max(0, Math.min(5, 2.5 * drive));
        }

        @Override
        public double heightAtM(double rightM) {
            return 1;
        }

        @Override
        public double pressurePa() {
            return 0;
        }

        @Override
        public long sectionMask() {
            return 0;
        }

        @Override
        public double airC() {
            return 15;
        }

        @Override
        public double speedMps() {
            return mps;
        }

        @Override
        public double xM() {
            return m;
        }
    }

    @Test
    void aReceiversSpeedsAddUpToTheDistance() {
        for (long seed = 1; seed <= 20; seed++) {
            CountTape tape = new CountTape(Step.Counting.RECEIVER);
            SentenceStream stream = new SentenceStream(tape);
            GnssReceiver receiver = new GnssReceiver(
                    GnssReceiver.Spec.usual(),
                    new Uart("gnss", 115_200, (us, port, bytes) -> hear(tape, stream, us * 1e-6, bytes)),
                    Chance.stream(seed, "receiver"));
            Run run = new Run();
            for (long us = 0; us <= 27_000_000; us += 5_000) {
                run.at(us * 1e-6);
                run.m += run.mps * 0.005;
                receiver.at(us, run);
            }
            Recording.Count count = (Recording.Count) tape.recording(27.1);
            assertThat(run.m).isCloseTo(100, within(0.1));
            // 200 speeds of 0.03 m/s noise, a tenth of a second each, scatter by 4 cm; ends below walking pace are cut.
            assertThat(count.metres()).as("seed %d", seed).isCloseTo(run.m, within(0.2));
            assertThat(count.runningAtStart()).isFalse();
            assertThat(count.runningAtEnd()).isFalse();
        }
    }

    @Test
    void aHubThatStartsAnewOrFallsSilentIsNoticed() {
        CountTape tape = new CountTape(Step.Counting.FLOW);
        SentenceStream stream = new SentenceStream(tape);
        hear(tape, stream, 0.0, hub.hub(900, 4, 1));
        hear(tape, stream, 0.1, hub.flow(1_000_000, 50, 100_000));
        hear(tape, stream, 0.2, hub.flow(1_100_000, 60, 1_090_000));
        hear(tape, stream, 1.7, hub.flow(2_600_000, 80, 1_500_000));
        Recording.Count sound = (Recording.Count) tape.recording(1.8);
        assertThat(sound).isEqualTo(new Recording.Count(30L, null, 0.41, false, false, false, 1.5));
        hear(tape, stream, 1.9, hub.hub(1_000, 5, 1));
        assertThat(((Recording.Count) tape.recording(2)).restarted()).isTrue();
    }

    @Test
    void pulsesAtTheBeginOrTheEndAreNoticed() {
        CountTape tape = new CountTape(Step.Counting.WHEEL);
        SentenceStream stream = new SentenceStream(tape);
        hear(tape, stream, 0.1, hub.flow(1_000_000, 7, 990_000));
        assertThat(tape.heard()).as("flow is not the wheel").isFalse();
        hear(tape, stream, 0.1, hub.wheel(1_000_000, 50, 990_000));
        hear(tape, stream, 0.2, hub.wheel(1_100_000, 60, 1_090_000));
        Recording.Count count = (Recording.Count) tape.recording(0.3);
        assertThat(count.runningAtStart()).isTrue();
        assertThat(count.runningAtEnd()).isTrue();
        assertThat(tape.atRest()).isFalse();
    }

    @Test
    void anEdgeAMomentAfterTheHubsTickIsARunningMeter() {
        CountTape tape = new CountTape(Step.Counting.FLOW);
        SentenceStream stream = new SentenceStream(tape);
        for (int i = 1; i <= 3; i++) {
            byte[] bytes = sentence("PEVFQ," + i * 100_000 + "," + i * 10 + "," + (i * 100_000 + 700));
            stream.accept(bytes, 0, bytes.length);
            assertThat(tape.soFar()).endsWith("running");
        }
        byte[] later = sentence("PEVFQ,900000,30,300700");
        stream.accept(later, 0, later.length);
        assertThat(tape.soFar()).isEqualTo("20 pulses, at rest");
    }

    private static byte[] sentence(String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        return String.format("$%s*%02X\r\n", body, sum).getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    }
}
