package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;

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
                    sent.add(new Sent(topic, new String(payload, StandardCharsets.UTF_8), retained, delivery)));

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
