package evenfall.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.awaitility.Awaitility;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A subscriber to everything, from the moment it is made. */
final class Ear implements AutoCloseable, MqttCallback {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final List<Heard> all = new ArrayList<>();
    private final MqttClient client;

    /**
     * @param retained whether it was kept by the broker from before the subscription
     */
    record Heard(String topic, String payload, boolean retained) {
        JsonNode json() {
            try {
                return JSON.readTree(payload);
            } catch (Exception e) {
                throw new AssertionError("not JSON: " + payload, e);
            }
        }

        boolean is(String topicEnd, String state) {
            return topic.endsWith(topicEnd)
                    && (state.isEmpty()
                            ? payload.isEmpty()
                            : !payload.isEmpty()
                                    && json().path("state").asText().equals(state));
        }
    }

    Ear(int port) throws MqttException {
        client = new MqttClient("tcp://127.0.0.1:" + port, MqttClient.generateClientId(), new MemoryPersistence());
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMaxInflight(100);
        client.setCallback(this);
        client.connect(options);
        client.subscribe("evenfall/#", 1);
    }

    void retain(String topic, String payload) throws MqttException {
        client.publish(topic, payload.getBytes(StandardCharsets.UTF_8), 1, true);
    }

    Heard await(Predicate<Heard> wanted) {
        return Awaitility.await().atMost(java.time.Duration.ofSeconds(20)).until(() -> first(wanted), h -> h != null);
    }

    Heard awaitState(String topicEnd, String state) {
        return await(heard -> heard.is(topicEnd, state));
    }

    private synchronized Heard first(Predicate<Heard> wanted) {
        return all.stream().filter(wanted).findFirst().orElse(null);
    }

    synchronized List<Heard> all() {
        return List.copyOf(all);
    }

    synchronized void forget() {
        all.clear();
    }

    @Override
    public synchronized void messageArrived(String topic, MqttMessage message) {
        all.add(new Heard(topic, new String(message.getPayload(), StandardCharsets.UTF_8), message.isRetained()));
    }

    @Override
    public void connectionLost(Throwable cause) {}

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {}

    @Override
    public void close() throws MqttException {
        if (client.isConnected()) {
            client.disconnectForcibly(0, 500, false);
        }
        client.close(true);
    }
}
