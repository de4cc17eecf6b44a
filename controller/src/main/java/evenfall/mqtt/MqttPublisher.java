package evenfall.mqtt;

import evenfall.message.Delivery;
import evenfall.message.Payload;
import evenfall.message.Publisher;
import evenfall.message.Topics;
import evenfall.rig.Rig;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Publishes to one broker on a thread of its own, for as long as the program runs and whether or not the broker is there.
 *
 * <p>{@link Delivery#EVERY}: QoS 1 through a bounded outbox. {@link Delivery#LATEST}: QoS 0 when not retained, QoS 1 when
 * retained, and an older one that has not left gives way to a newer.
 */
public final class MqttPublisher implements Publisher {
    private static final int CAPACITY = 1000;
    private static final int WINDOW = 50;
    private static final long IDLE_MS = 100;

    private final Outbox outbox = new Outbox(CAPACITY, WINDOW);
    private final Semaphore work = new Semaphore(0);
    private final Courier courier;
    private final Thread thread;
    private volatile boolean closing;
    private volatile long closeByNs;

    /**
     * Connects to nothing before {@link #start}.
     *
     * @param will gives the last will of each new connection; called on the sending thread
     */
    public MqttPublisher(Rig.Broker broker, String clientId, Topics topics, Supplier<byte[]> will) {
        this.courier = new Courier(
                (payload, events) -> PahoLink.dial(broker, clientId, topics.status(), payload, WINDOW, events),
                will,
                topics.status(),
                topics.everyAlert(),
                outbox,
                work::release);
        this.thread = new Thread(this::run, "mqtt");
        thread.setDaemon(true);
    }

    /** Starts the thread that connects and sends; to be called once. */
    public void start() {
        thread.start();
    }

    @Override
    public void publish(String topic, Payload payload, boolean retained, Delivery delivery) {
        if (delivery == Delivery.LATEST && !retained) {
            courier.offerNewest(topic, payload.bytes());
        } else {
            outbox.add(topic, payload.bytes(), retained, delivery == Delivery.LATEST);
        }
        work.release();
    }

    /**
     * Sends what waits, parts from the broker and ends the thread; gives up when the time is over.
     *
     * @return whether everything arrived in time
     */
    public boolean close(Duration longest) throws InterruptedException {
        closeByNs = System.nanoTime() + longest.toNanos();
        closing = true;
        work.release();
        thread.join(longest.toMillis() + 1);
        return !thread.isAlive() && courier.isIdle();
    }

    /** Null while the broker is there, else why it is not, in a few words for people. */
    public @Nullable String whyDown() {
        return courier.whyDown();
    }

    /** How many messages that should have arrived never will. */
    public long dropped() {
        return outbox.dropped();
    }

    private void run() {
        try {
            while (true) {
                long nowNs = System.nanoTime();
                if (closing && (courier.isIdle() || courier.whyDown() != null || nowNs - closeByNs >= 0)) {
                    break;
                }
                courier.step(nowNs);
                work.tryAcquire(IDLE_MS, TimeUnit.MILLISECONDS);
                work.drainPermits();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        courier.part();
    }
}
