package evenfall.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.judge.Alert;
import evenfall.message.Delivery;
import evenfall.message.Payload;
import evenfall.message.Publisher;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.trace.TraceEvent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.LongPredicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Faults are brought about by a listener that throws where the test says so. */
class SteadyMonitorTest {
    private static final long S = 1_000_000;
    private static Rig rig;

    private final List<String> sent = new ArrayList<>();
    private final List<Long> restartsUs = new ArrayList<>();

    @BeforeAll
    static void readRig() throws Exception {
        rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
    }

    @Test
    void afterAFaultTheCoreGoesOnAndNoAlertIsLeftStanding() {
        SteadyMonitor core = core(timeUs -> timeUs == 5 * S);
        core.advanceTo(10 * S);

        assertThat(restartsUs).containsExactly(5 * S);
        assertThat(core.restarts()).isEqualTo(1);
        assertThat(lines("/live", "\"at_s\":4.800")).hasSize(1);
        assertThat(lines("/live", "\"at_s\":5.000"))
                .as("what the fault swallowed")
                .isEmpty();
        assertThat(lines("/live", "\"at_s\":5.200")).hasSize(1);
        assertThat(lines("/live", "")).hasSize(49);
        assertThat(lines("sensor-silent/hub", "\"state\":\"standing\"")).hasSize(2);
        assertThat(lines("sensor-silent/hub", "\"state\":\"ended\",\"at_s\":5.000"))
                .hasSize(1);
    }

    @Test
    void atTheEndNothingIsLeftStanding() {
        SteadyMonitor core = core(timeUs -> false);
        core.accept(new TraceEvent.End(4 * S));
        assertThat(lines("sensor-silent/hub", "\"state\":\"ended\",\"at_s\":4.000"))
                .hasSize(1);
        assertThat(sent.get(sent.size() - 1)).endsWith(" ");
    }

    @Test
    void faultsThatAreFarApartAreBorne() {
        SteadyMonitor core = core(timeUs -> timeUs % (13 * S) == 0);
        core.advanceTo(300 * S);
        assertThat(core.restarts()).isEqualTo(300 / 13);
    }

    @Test
    void aCoreThatFailsAgainAndAgainIsGivenUp() {
        SteadyMonitor core = core(timeUs -> timeUs % S == 0);
        assertThatThrownBy(() -> core.advanceTo(60 * S))
                .isInstanceOf(CoreBrokenException.class)
                .hasMessageContaining("6 times within a minute")
                .hasCauseInstanceOf(IllegalStateException.class);
        assertThat(restartsUs).containsExactly(S, 2 * S, 3 * S, 4 * S, 5 * S, 6 * S);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void howOftenTimeIsToldChangesNothingEvenWithFaults(long seed) {
        LongPredicate faults = timeUs -> timeUs % (7 * S) == 200_000;
        Random random = new Random(seed);
        List<TraceEvent> events = new ArrayList<>();
        long timeUs = 0;
        while (timeUs < 20 * S) {
            timeUs += random.nextInt(300_000);
            events.add(new TraceEvent.Bytes(timeUs, "hub", "$PEVF,X*00\r\n".getBytes(StandardCharsets.US_ASCII)));
        }
        SteadyMonitor often = core(faults);
        SteadyMonitor seldom = core(faults);
        long toldUs = 0;
        for (TraceEvent event : events) {
            while (toldUs < event.timeUs()) {
                often.advanceTo(toldUs);
                toldUs += random.nextInt(50_000);
            }
            often.accept(event);
            seldom.accept(event);
        }
        assertThat(often.digest()).as("seed %d", seed).isEqualTo(seldom.digest());
        assertThat(often.restarts()).isPositive();
        assertThat(often.wire().sentences()).as("counted over restarts").isEqualTo(events.size());
    }

    private SteadyMonitor core(LongPredicate faultAt) {
        Publisher publisher = (String topic, Payload payload, boolean retained, Delivery delivery) ->
                sent.add(topic + " " + new String(payload.bytes(), StandardCharsets.UTF_8));
        return new SteadyMonitor(rig, publisher, new Faulty(faultAt), (timeUs, unexpected) -> restartsUs.add(timeUs));
    }

    private List<String> lines(String topicEnd, String part) {
        return sent.stream()
                .filter(line -> line.substring(0, line.indexOf(' ')).endsWith(topicEnd) && line.contains(part))
                .toList();
    }

    private record Faulty(LongPredicate at) implements Outputs {
        @Override
        public void live(Live live) {
            if (at.test(live.timeUs())) {
                throw new IllegalStateException("brought about");
            }
        }

        @Override
        public void raised(Alert alert) {}

        @Override
        public void cleared(Alert alert, long clearedUs) {}
    }
}
