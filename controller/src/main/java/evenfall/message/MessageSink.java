package evenfall.message;

import evenfall.judge.Alert;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Turns the core's outputs into messages, in their order.
 *
 * <p>An alert topic retains its message while the alert stands. When it clears, the topic first carries one message that is
 * not retained and says so, for whoever listens; then an empty retained one, so that who comes later finds nothing.
 */
public final class MessageSink implements Outputs {
    /** Takes a retained message away. */
    private static final Payload NOTHING = Payload.of(new byte[0]);

    private final Messages messages;
    private final LedgerMessages ledger;
    private final Topics topics;
    private final Publisher publisher;
    private final JsonText json = new JsonText();
    private final Map<String, Alert> standing = new LinkedHashMap<>();

    /**
     * @param publisher gets every message, on the thread that brings the outputs
     */
    public MessageSink(Rig rig, Publisher publisher) {
        this.messages = new Messages(rig);
        this.ledger = new LedgerMessages(rig);
        this.topics = new Topics(rig.name());
        this.publisher = publisher;
    }

    @Override
    public void live(Live live) {
        json.begin();
        messages.live(json, live);
        json.end();
        publishWritten(topics.live(), Delivery.LATEST);
    }

    @Override
    public void cell(LedgerCell cell) {
        json.begin();
        ledger.cell(json, cell);
        json.end();
        publishWritten(topics.ledger(), Delivery.EVERY);
    }

    private void publishWritten(String topic, Delivery delivery) {
        Payload payload = json.payload();
        publisher.publish(topic, payload, false, delivery);
        payload.over();
    }

    @Override
    public void pass(PassSummary pass) {
        publisher.publish(topics.pass(), Payload.of(ledger.pass(pass)), false, Delivery.EVERY);
    }

    @Override
    public void raised(Alert alert) {
        standing.put(topics.alert(alert), alert);
        publisher.publish(topics.alert(alert), Payload.of(messages.raised(alert)), true, Delivery.EVERY);
    }

    @Override
    public void acknowledged(Alert alert, long atUs) {
        publisher.publish(
                topics.acknowledged(),
                Payload.of(messages.acknowledged(alert.kind().word(), alert.place(), atUs)),
                false,
                Delivery.EVERY);
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        standing.remove(topics.alert(alert));
        takeAway(topics.alert(alert), messages.cleared(alert, clearedUs));
    }

    /**
     * Nobody watches any longer: what still stands ends, so that no topic goes on retaining an alert that nothing would clear.
     *
     * @param atUs event time, µs
     */
    public void end(long atUs) {
        standing.forEach((topic, alert) -> takeAway(topic, messages.ended(alert, atUs)));
        standing.clear();
    }

    private void takeAway(String topic, byte[] lastWord) {
        publisher.publish(topic, Payload.of(lastWord), false, Delivery.EVERY);
        publisher.publish(topic, NOTHING, true, Delivery.EVERY);
    }
}
