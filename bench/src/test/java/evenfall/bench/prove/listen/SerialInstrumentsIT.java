package evenfall.bench.prove.listen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Step;
import evenfall.sim.feed.VirtualPort;
import evenfall.sim.wire.HubSentences;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Instruments on a pseudo-terminal, at whose other end a hub speaks. */
class SerialInstrumentsIT {
    /** A hub that counts a thousand pulses over a second, a second after it begins, and sees one board. */
    private static final class Hub implements AutoCloseable {
        private final HubSentences sentences = new HubSentences();
        private final VirtualPort port;
        private final CountDownLatch stop = new CountDownLatch(1);
        private final CountDownLatch flowed = new CountDownLatch(1);
        private final Thread thread = new Thread(this::speak, "hub");

        Hub(VirtualPort port) {
            this.port = port;
            thread.start();
        }

        private void speak() {
            try {
                // 32 bits run over in the middle, as they may.
                long before = 4_294_967_000L;
                long beginUs = 4_294_000_000L;
                for (int i = 0; !stop.await(50, TimeUnit.MILLISECONDS); i++) {
                    long us = 50_000L * i;
                    long pulses = Math.max(0, Math.min(1000, (us - 1_000_000) / 1000));
                    long edgeUs = us < 1_000_000 ? -5_000_000 : Math.min(us, 2_000_000);
                    port.write(sentences.flow(wrap(beginUs + us), wrap(before + pulses), wrap(beginUs + edgeUs)));
                    port.write(sentences.heights(wrap(beginUs + us), new long[] {2912, HubSentences.UNKNOWN}));
                    if (i % 20 == 0) {
                        port.write(sentences.air(wrap(beginUs + us), 1450));
                        port.write(sentences.hub(wrap(beginUs + us), 4, 1));
                    }
                    if (us > 2_600_000) {
                        flowed.countDown();
                    }
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }

        private static long wrap(long value) {
            return Math.floorMod(value, 1L << 32);
        }

        @Override
        public void close() {
            stop.countDown();
            try {
                thread.join();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private static SerialInstruments at(VirtualPort port) {
        return new SerialInstruments(Optional.empty(), port.path().toString(), 115_200);
    }

    @Test
    void pulsesBetweenTwoStandstillsAreCountedAcrossAWrap() throws Exception {
        try (VirtualPort port = VirtualPort.open();
                Hub hub = new Hub(port);
                Session session = at(port).start(Step.Counting.FLOW)) {
            assertThat(hub.flowed.await(10, TimeUnit.SECONDS)).isTrue();
            Recording.Count count = (Recording.Count) session.finish();
            assertThat(count.pulses()).isEqualTo(1000);
            assertThat(count.seconds()).isCloseTo(0.95, within(0.1));
            assertThat(count.runningAtStart()).isFalse();
            assertThat(count.runningAtEnd()).isFalse();
            assertThat(count.restarted()).isFalse();
        }
    }

    @Test
    void echoesAndAirAreHeard() throws Exception {
        try (VirtualPort port = VirtualPort.open();
                Hub hub = new Hub(port);
                Session session = at(port).start(new Step.Echoing(1, true))) {
            assertThat(hub.flowed.await(10, TimeUnit.SECONDS)).isTrue();
            session.mark();
            Recording.Echoes echoes = (Recording.Echoes) session.finish();
            assertThat(echoes.airC()).isEqualTo(14.5);
            assertThat(echoes.sensors()).isEqualTo(2);
            assertThat(echoes.of(0)).hasSizeGreaterThan(10).containsOnly(2912L);
            assertThat(echoes.of(1)).containsOnlyNulls();
            assertThat(echoes.markS()).isPositive();
        }
    }

    @Test
    void aPortThatIsAbsentBusyOrSilentIsSaidInOneLine() throws Exception {
        SerialInstruments absent = new SerialInstruments(Optional.empty(), "/dev/no-such-port", 115_200);
        assertThatThrownBy(() -> absent.start(Step.Counting.FLOW))
                .isInstanceOf(PortTroubleException.class)
                .hasMessage("there is no /dev/no-such-port");
        try (VirtualPort port = VirtualPort.open();
                Hub hub = new Hub(port)) {
            // Serial libraries and this tool lock a port in the same way.
            Process other = new ProcessBuilder(
                            "flock", "-x", port.path().toString(), "sh", "-c", "echo locked; exec cat")
                    .start();
            assertThat(other.inputReader().readLine()).isEqualTo("locked");
            try {
                assertThatThrownBy(() -> at(port).start(Step.Counting.FLOW))
                        .isInstanceOf(PortTroubleException.class)
                        .hasMessageContaining("in use by another program");
            } finally {
                other.outputWriter().close();
                other.waitFor();
            }
            try (Session freed = at(port).start(new Step.Listening(port.path().toString(), 115_200, 1))) {
                assertThat(hub.flowed.await(10, TimeUnit.SECONDS)).isTrue();
                Recording.Line line = (Recording.Line) freed.finish();
                assertThat(line.kinds())
                        .isNotEmpty()
                        .extracting(Recording.KindHeard::fromHub)
                        .containsOnly(true);
                assertThat(line.bootCount()).isEqualTo(4);
            }
        }
        try (VirtualPort port = VirtualPort.open()) {
            assertThatThrownBy(() -> at(port).start(Step.Counting.FLOW))
                    .isInstanceOf(PortTroubleException.class)
                    .hasMessageContaining("no flow pulses ($PEVFQ) within 4 s");
        }
    }
}
