package evenfall.bench.broker;

import evenfall.bench.received.Message;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;

/** Listens at a broker to what a rig says, and notes when each message arrived. */
public final class BrokerListener implements AutoCloseable {
    /** More than ten hours of a talkative rig; what comes after is counted, not kept. */
    static final int MOST_MESSAGES = 200_000;

    private static final int AT_LEAST_ONCE = 1;
    private static final int PATIENCE_S = 5;

    private final MqttClient client;
    private final LongSupplier clockUs;
    private final Consumer<Message> listener;
    private final List<Message> messages = new ArrayList<>();
    private long dropped;
    private @Nullable String lost;

    private BrokerListener(MqttClient client, LongSupplier clockUs, Consumer<Message> listener) {
        this.client = client;
        this.clockUs = clockUs;
        this.listener = listener;
    }

    /**
     * @param filter topics to hear
     * @param clockUs the clock by which arrivals are noted, µs
     * @param listener hears each message too, at once, on a thread of its own; must not wait
     * @throws IOException when nobody answers at the address
     */
    public static BrokerListener open(
            String host, int port, String filter, LongSupplier clockUs, Consumer<Message> listener) throws IOException {
        String address = host + ":" + port;
        try {
            MqttClient client =
                    new MqttClient("tcp://" + address, "evenfall-bench-" + UUID.randomUUID(), new MemoryPersistence());
            client.setTimeToWait(PATIENCE_S * 1000L);
            BrokerListener opened = new BrokerListener(client, clockUs, listener);
            client.setCallback(opened.new Callback());
            MqttConnectOptions options = new MqttConnectOptions();
            options.setCleanSession(true);
            options.setConnectionTimeout(PATIENCE_S);
            client.connect(options);
            client.subscribe(filter, AT_LEAST_ONCE);
            return opened;
        } catch (MqttException e) {
            throw new IOException("no MQTT broker answers at " + address + " (" + reason(e) + ")", e);
        }
    }

    private static String reason(MqttException e) {
        Throwable cause = e.getCause();
        String said = cause == null ? e.getMessage() : cause.getMessage();
        return said == null ? "reason " + e.getReasonCode() : said;
    }

    private final class Callback implements MqttCallback {
        @Override
        public void connectionLost(Throwable cause) {
            synchronized (messages) {
                lost = cause.getMessage() == null ? "no reason given" : cause.getMessage();
            }
        }

        @Override
        public void messageArrived(String topic, MqttMessage message) {
            Message heard =
                    new Message(clockUs.getAsLong(), topic, new String(message.getPayload(), StandardCharsets.UTF_8));
            synchronized (messages) {
                if (messages.size() < MOST_MESSAGES) {
                    messages.add(heard);
                } else {
                    dropped++;
                }
            }
            listener.accept(heard);
        }

        @Override
        public void deliveryComplete(IMqttDeliveryToken token) {
            // Nothing is ever sent from here.
        }
    }

    /** What arrived so far, in order. */
    public List<Message> messages() {
        synchronized (messages) {
            return List.copyOf(messages);
        }
    }

    /** How many arrived after the list was full. */
    public long dropped() {
        synchronized (messages) {
            return dropped;
        }
    }

    /** Why the connection was lost; null while it holds. */
    public @Nullable String lost() {
        synchronized (messages) {
            return lost;
        }
    }

    @Override
    public void close() {
        try {
            if (client.isConnected()) {
                client.disconnectForcibly(200, 500);
            }
            client.close(true);
        } catch (MqttException e) {
            // Everything heard is in the list already; a broker that is gone cannot be told goodbye.
            lost = reason(e);
        }
    }
}
