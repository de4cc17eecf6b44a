package evenfall.replay;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.trace.TraceEvent;
import evenfall.trace.TraceSource;
import evenfall.trace.TraceWriter;
import evenfall.wire.Acknowledgement;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class TraceReplayTest {
    private static final String RMC = "$GPRMC,120000.00,A,5200.0000,N,00100.0000,E,010.70,090.0,251126,,,A*67\r\n";

    private Rig rig;
    private final List<String> sent = new ArrayList<>();

    @BeforeEach
    void readRig() throws Exception {
        rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
    }

    @Test
    void aTraceReadBackSaysTheSameAsTheEventsThemselves() throws Exception {
        List<TraceEvent> events = events();
        StringBuilder text = new StringBuilder();
        TraceWriter writer = new TraceWriter(text);
        for (TraceEvent event : events) {
            writer.write(event);
        }
        TraceReplay.Outcome direct = run(source(events));
        int messages = sent.size();
        byte[] bytes = text.toString().getBytes(StandardCharsets.US_ASCII);
        TraceReplay.Outcome read = run(TraceSource.open(new ByteArrayInputStream(bytes), "test")::next);

        assertThat(read).isEqualTo(direct);
        assertThat(read.messages()).isEqualTo(messages);
        assertThat(sent.subList(messages, 2 * messages)).isEqualTo(sent.subList(0, messages));
        assertThat(read.endUs()).isEqualTo(5_500_000);
        assertThat(read.wire().accepted()).isEqualTo(50);
        assertThat(sent).anyMatch(line -> line.contains("\"speed_mps\":{\"value\":5.505"));
    }

    @Test
    void aRecordingThatWasCutEndsWithItsLastEvent() throws Exception {
        List<TraceEvent> events = events();
        events.remove(events.size() - 1);
        TraceReplay.Outcome outcome = run(source(events));
        assertThat(outcome.endUs()).isEqualTo(5_000_000);
        assertThat(sent.get(sent.size() - 2)).contains("\"state\":\"ended\",\"at_s\":5.000");
    }

    @Test
    void anAcknowledgementIsAnInputLikeAnyOther() throws Exception {
        List<TraceEvent> events = events();
        String without = run(source(events)).digest();
        String silent = "sensor-silent";
        assertThat(sent).as("an alert stands").anyMatch(line -> line.contains("alert/" + silent + "/hub"));
        sent.clear();
        for (long timeUs : new long[] {1_010_000, 4_010_000, 4_500_000}) {
            events.add(new TraceEvent.Bytes(timeUs, "cab", Acknowledgement.sentence(silent, "hub")));
        }
        events.add(new TraceEvent.Bytes(4_510_000, "cab", Acknowledgement.sentence("wing-low", "left")));
        events.add(new TraceEvent.Bytes(4_520_000, "gnss", Acknowledgement.sentence(silent, "gnss")));
        events.sort(Comparator.comparingLong(TraceEvent::timeUs));
        StringBuilder text = new StringBuilder();
        TraceWriter writer = new TraceWriter(text);
        for (TraceEvent event : events) {
            writer.write(event);
        }
        TraceReplay.Outcome direct = run(source(events));
        assertThat(sent.stream().filter(line -> line.startsWith("evenfall/example-36/acknowledged")))
                .as("before it stands nothing follows, and once it is seen it is seen")
                .containsExactly(
                        "evenfall/example-36/acknowledged {\"kind\":\"sensor-silent\",\"place\":\"hub\",\"at_s\":4.010}");
        assertThat(direct.digest()).isNotEqualTo(without);
        assertThat(text).contains("\n4010000 cab $PEVFA,sensor-silent,hub*");
        byte[] bytes = text.toString().getBytes(StandardCharsets.US_ASCII);
        assertThat(run(TraceSource.open(new ByteArrayInputStream(bytes), "test")::next))
                .isEqualTo(direct);
    }

    @Test
    void oneOtherByteInIsAnotherDigestOut() throws Exception {
        List<TraceEvent> events = events();
        String before = run(source(events)).digest();
        events.set(
                3,
                new TraceEvent.Bytes(
                        events.get(3).timeUs(),
                        "gnss",
                        RMC.replace("010.70", "010.71").replace("*67", "*66").getBytes(StandardCharsets.US_ASCII)));
        assertThat(run(source(events)).digest()).isNotEqualTo(before);
    }

    private TraceReplay.Outcome run(TraceReplay.Source source) throws Exception {
        return TraceReplay.run(
                rig,
                source,
                (topic, payload, retained, delivery) ->
                        sent.add(topic + " " + new String(payload.bytes(), StandardCharsets.UTF_8)),
                new Unheard(),
                (timeUs, unexpected) -> {
                    throw new AssertionError("no fault is due", unexpected);
                });
    }

    private static TraceReplay.Source source(List<TraceEvent> events) {
        Iterator<TraceEvent> iterator = events.iterator();
        return () -> iterator.hasNext() ? iterator.next() : null;
    }

    private static List<TraceEvent> events() {
        List<TraceEvent> events = new ArrayList<>();
        events.add(new TraceEvent.PortFound(1000, "gnss"));
        for (int i = 1; i <= 50; i++) {
            events.add(new TraceEvent.Bytes(i * 100_000L, "gnss", RMC.getBytes(StandardCharsets.US_ASCII)));
        }
        events.add(new TraceEvent.End(5_500_000));
        return events;
    }

    private static final class Unheard implements Outputs {
        @Override
        public void live(Live live) {}

        @Override
        public void raised(Alert alert) {}

        @Override
        public void cleared(Alert alert, long clearedUs) {}
    }
}
