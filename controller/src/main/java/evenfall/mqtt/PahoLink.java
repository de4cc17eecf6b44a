package evenfall.mqtt;

import evenfall.rig.Rig;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;

/** A connection by Eclipse Paho: a new client for each, with its buffer, its persistence and its reconnecting off. */
final class PahoLink implements BrokerLink {
    /** The broker publishes the last will after one and a half times this without a sign of life. */
    private static final int KEEP_ALIVE_S = 5;

    private static final int CONNECT_S = 3;
    private static final long ANSWER_MS = 4000;
    private static final long PART_MS = 500;
    private static final long ABANDON_MS = 1000;
    /** Room beside the outbox's window for the newest message, a subscription, and acknowledgements that are a little late. */
    private static final int ROOM = 10;

    private final MqttAsyncClient client;
    private final Events events;

    private PahoLink(MqttAsyncClient client, Events events) {
        this.client = client;
        this.events = events;
    }

    static BrokerLink dial(Rig.Broker broker, String clientId, String willTopic, byte[] will, int window, Events events)
            throws LinkException {
        String host = broker.host().contains(":") ? "[" + broker.host() + "]" : broker.host();
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
        options.setCleanSession(true);
        options.setAutomaticReconnect(false);
        options.setKeepAliveInterval(KEEP_ALIVE_S);
        options.setConnectionTimeout(CONNECT_S);
        options.setMaxInflight(window + ROOM);
        options.setWill(willTopic, will, 1, true);
        PahoLink link = null;
        try {
            MqttAsyncClient client =
                    new MqttAsyncClient("tcp://" + host + ":" + broker.port(), clientId, new MemoryPersistence());
            link = new PahoLink(client, events);
            client.setCallback(link.new Callback());
            client.connect(options).waitForCompletion(ANSWER_MS);
            return link;
        } catch (MqttException | IllegalArgumentException e) {
            if (link != null) {
                link.abandon();
            }
            throw new LinkException(reason(e));
        }
    }

    @Override
    public boolean send(long id, String topic, byte[] payload, boolean retained, int qos) throws LinkException {
        MqttMessage message = new MqttMessage(payload);
        message.setQos(qos);
        message.setRetained(retained);
        try {
            client.publish(topic, message, null, new Delivery(id));
            return true;
        } catch (MqttException e) {
            if (e.getReasonCode() == MqttException.REASON_CODE_MAX_INFLIGHT) {
                return false;
            }
            throw new LinkException(reason(e));
        }
    }

    @Override
    public void subscribe(String filter) throws LinkException {
        try {
            client.subscribe(filter, 1);
        } catch (MqttException e) {
            throw new LinkException(reason(e));
        }
    }

    @Override
    public void unsubscribe(String filter) throws LinkException {
        try {
            client.unsubscribe(filter);
        } catch (MqttException e) {
            throw new LinkException(reason(e));
        }
    }

    @Override
    public void part() {
        try {
            client.disconnect(0).waitForCompletion(PART_MS);
            client.close(true);
        } catch (MqttException e) {
            abandon();
        }
    }

    /** On a thread of its own: closing a client has been seen to hang. */
    @Override
    public void abandon() {
        Thread closer = new Thread(
                () -> {
                    try {
                        client.disconnectForcibly(0, 0, false);
                    } catch (MqttException e) {
                        // It was not connected; there is nothing to disconnect.
                    }
                    try {
                        client.close(true);
                    } catch (MqttException e) {
                        // It is left behind as it is: the next connection has a client of its own.
                    }
                },
                "mqtt-close");
        closer.setDaemon(true);
        closer.start();
        try {
            closer.join(ABANDON_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    static String reason(Throwable failure) {
        Throwable cause = failure.getCause();
        if (cause instanceof java.net.UnknownHostException) {
            return "there is no host " + cause.getMessage();
        }
        Throwable told = cause == null ? failure : cause;
        String message = told.getMessage();
        return message == null ? told.getClass().getSimpleName() : message;
    }

    private final class Delivery implements IMqttActionListener {
        private final long id;

        Delivery(long id) {
            this.id = id;
        }

        @Override
        public void onSuccess(IMqttToken token) {
            events.delivered(id);
        }

        @Override
        public void onFailure(IMqttToken token, Throwable failure) {
            events.lost("a message was not delivered: " + reason(failure));
        }
    }

    private final class Callback implements MqttCallback {
        @Override
        public void connectionLost(@Nullable Throwable cause) {
            events.lost(cause == null ? "the connection was lost" : reason(cause));
        }

        @Override
        public void messageArrived(String topic, MqttMessage message) {
            if (message.isRetained() && message.getPayload().length > 0) {
                events.foundRetained(topic);
            }
        }

        @Override
        public void deliveryComplete(IMqttDeliveryToken token) {
            // Each message has its own listener.
        }
    }
}
