package evenfall.page;

import evenfall.message.Delivery;
import evenfall.message.Payload;
import evenfall.message.Publisher;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a page has to show now: the newest live message, the alerts that stand, and which of them somebody has acknowledged. Only the
 * newest is kept, so a slow page skips and never lags, and memory does not grow. Safe on any thread; publishing never waits for a
 * page.
 */
final class Board implements Publisher {
    private final String liveTopic;
    private final String alertsUnder;
    private final Map<String, byte[]> standing = new LinkedHashMap<>();
    private final Set<String> acknowledged = new LinkedHashSet<>();
    private byte @Nullable [] live;
    private long liveNumber;
    private long alertsNumber;
    private boolean closed;

    /**
     * @param liveTopic the topic of live messages
     * @param alertsUnder what every alert topic begins with
     */
    Board(String liveTopic, String alertsUnder) {
        this.liveTopic = liveTopic;
        this.alertsUnder = alertsUnder;
    }

    /** What has changed since a page looked last; null where nothing has. */
    static final class News {
        final byte @Nullable [] live;
        final long liveNumber;
        final @Nullable String alerts;
        final long alertsNumber;
        final boolean closed;

        private News(
                byte @Nullable [] live, long liveNumber, @Nullable String alerts, long alertsNumber, boolean closed) {
            this.live = live;
            this.liveNumber = liveNumber;
            this.alerts = alerts;
            this.alertsNumber = alertsNumber;
            this.closed = closed;
        }
    }

    @Override
    public synchronized void publish(String topic, Payload payload, boolean retained, Delivery delivery) {
        if (topic.equals(liveTopic)) {
            live = payload.bytes();
            liveNumber++;
        } else if (retained && topic.startsWith(alertsUnder)) {
            if (payload.isEmpty()) {
                standing.remove(topic);
            } else {
                standing.put(topic, payload.bytes());
            }
            // Whatever was acknowledged there was another alert.
            acknowledged.remove(topic);
            alertsNumber++;
        } else {
            return;
        }
        notifyAll();
    }

    /** Marks a standing alert as acknowledged. */
    synchronized void acknowledge(String topic) {
        if (standing.containsKey(topic) && acknowledged.add(topic)) {
            alertsNumber++;
            notifyAll();
        }
    }

    synchronized boolean stands(String topic) {
        return standing.containsKey(topic);
    }

    synchronized boolean isAcknowledged(String topic) {
        return acknowledged.contains(topic);
    }

    synchronized void close() {
        closed = true;
        notifyAll();
    }

    /**
     * Waits for something newer than what a page has.
     *
     * @param liveSeen number of the live message that it has; -1 for none
     * @param alertsSeen number of the alerts that it has; -1 for none
     * @param longestMs after so long it returns with nothing new
     */
    synchronized News after(long liveSeen, long alertsSeen, long longestMs) throws InterruptedException {
        long untilNs = System.nanoTime() + longestMs * 1_000_000;
        while (!closed && liveNumber == liveSeen && alertsNumber == alertsSeen) {
            long leftMs = (untilNs - System.nanoTime()) / 1_000_000;
            if (leftMs <= 0) {
                break;
            }
            wait(leftMs);
        }
        return new News(
                liveNumber == liveSeen ? null : live,
                liveNumber,
                alertsNumber == alertsSeen ? null : alerts(),
                alertsNumber,
                closed);
    }

    /** The payloads as they went out, in one array, each beside whether it was acknowledged. */
    private String alerts() {
        StringBuilder out = new StringBuilder("[");
        standing.forEach((topic, payload) -> {
            out.append(out.length() > 1 ? "," : "");
            out.append("{\"acknowledged\":")
                    .append(acknowledged.contains(topic))
                    .append(",\"alert\":");
            out.append(new String(payload, StandardCharsets.UTF_8)).append('}');
        });
        return out.append(']').toString();
    }
}
