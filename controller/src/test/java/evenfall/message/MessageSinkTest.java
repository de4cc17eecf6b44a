package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.sense.Unknown;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MessageSinkTest {
    private record Sent(String topic, String payload, boolean retained, Delivery delivery) {}

    private final List<Sent> sent = new ArrayList<>();
    private final MessageSink sink = new MessageSink(
            Examples.RIG,
            (topic, payload, retained, delivery) ->
                    sent.add(new Sent(topic, new String(payload.bytes(), StandardCharsets.UTF_8), retained, delivery)));

    @Test
    void anAlertIsRetainedWhileItStandsAndItsEndIsSaidBeforeItIsTakenAway() {
        sink.raised(Examples.WING_LOW);
        sink.live(Examples.known(12_400_000));
        sink.cleared(Examples.WING_LOW, 15_000_000);

        String topic = "evenfall/example-36/alert/wing-low/left";
        assertThat(sent).extracting(Sent::topic).containsExactly(topic, "evenfall/example-36/live", topic, topic);
        assertThat(sent).extracting(Sent::retained).containsExactly(true, false, false, true);
        assertThat(sent)
                .extracting(Sent::delivery)
                .containsExactly(Delivery.EVERY, Delivery.LATEST, Delivery.EVERY, Delivery.EVERY);
        assertThat(sent.get(2).payload()).contains("\"state\":\"cleared\"");
        assertThat(sent.get(3).payload()).isEmpty();
    }

    @Test
    void whatWasTakenOfOneMessageIsNotTouchedByTheNext() {
        List<byte[]> kept = new ArrayList<>();
        List<Payload> payloads = new ArrayList<>();
        MessageSink taken = new MessageSink(Examples.RIG, (topic, payload, retained, delivery) -> {
            payloads.add(payload);
            if (payloads.size() != 2) {
                kept.add(payload.bytes());
                assertThat(payload.bytes()).as("one copy for all").isSameAs(kept.get(kept.size() - 1));
            }
        });
        taken.live(Examples.known(12_400_000));
        byte[] before = kept.get(0).clone();
        taken.live(Examples.known(12_600_000));
        taken.live(Examples.unknown(Unknown.SILENT, 0));

        assertThat(kept.get(0)).isEqualTo(before).isEqualTo(payloads.get(0).bytes());
        assertThat(new String(before, StandardCharsets.UTF_8)).startsWith("{\"at_s\":12.400,");
        assertThat(new String(kept.get(1), StandardCharsets.UTF_8)).contains("\"why\":\"silent\"");
        assertThatThrownBy(payloads.get(1)::bytes)
                .as("nobody asked for the second while it was published")
                .isInstanceOf(IllegalStateException.class);
    }

    @Test
    void atTheEndOnlyWhatStillStandsIsTakenAwayInTheOrderInWhichItRose() {
        sink.raised(Examples.WING_LOW);
        sink.raised(Examples.SILENT);
        sink.cleared(Examples.WING_LOW, 15_000_000);
        sink.raised(Examples.WING_LOW);
        sent.clear();

        sink.end(20_000_000);
        sink.end(21_000_000);

        assertThat(sent)
                .extracting(Sent::topic)
                .containsExactly(
                        "evenfall/example-36/alert/sensor-silent/gnss",
                        "evenfall/example-36/alert/sensor-silent/gnss",
                        "evenfall/example-36/alert/wing-low/left",
                        "evenfall/example-36/alert/wing-low/left");
        assertThat(sent.get(0).payload())
                .contains("\"state\":\"ended\",\"at_s\":20.000")
                .contains("\"cleared_s\":null");
        assertThat(sent.get(1)).isEqualTo(new Sent(sent.get(0).topic(), "", true, Delivery.EVERY));
    }
}
