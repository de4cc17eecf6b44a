package evenfall.mqtt;

import evenfall.retry.BackOff;
import java.time.Duration;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Carries the outbox to the broker, one step at a time; each step is given the time. Any doubt about a connection ends it, and
 * all that was not acknowledged goes over the next one: a message may arrive twice, but none is lost while the outbox holds it.
 */
final class Courier {
    private static final int AT_MOST_ONCE = 0;
    private static final int AT_LEAST_ONCE = 1;
    /** Numbers of the outbox start at 1. */
    private static final long NEWEST_ID = 0;

    private static final Duration FIRST_WAIT = Duration.ofMillis(250);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(5);
    /** With something on its way and nothing arriving for so long, the connection is dead whatever it says of itself. */
    static final long WATCHDOG_NS = TimeUnit.SECONDS.toNanos(8);
    /** How long the broker has to hand out what it retains of an earlier life of this box. */
    static final long SWEEP_NS = TimeUnit.SECONDS.toNanos(2);

    private static final int MOST_LEFTOVERS = 256;

    private final BrokerLink.Dialer dialer;
    private final Supplier<byte[]> will;
    private final String statusTopic;
    private final String sweepFilter;
    private final Outbox outbox;
    private final AtomicReference<@Nullable Letter> newest = new AtomicReference<>();
    private final BackOff backOff = new BackOff(FIRST_WAIT, LONGEST_WAIT);
    private final Runnable wake;

    private @Nullable BrokerLink link;
    private Connection connection = new Connection();
    private long nextAttemptNs;
    private boolean everTried;
    private boolean newestOnItsWay;
    private long progressNs;
    private long sweepUntilNs;
    private boolean sweeping;

    /** Null while the broker is there. */
    private volatile @Nullable String whyDown = "not connected yet";

    /**
     * @param statusTopic what goes first over every new connection
     * @param sweepFilter topics on which nothing may be retained that the outbox does not know of
     * @param wake called on any thread when a step would have something to do
     */
    Courier(
            BrokerLink.Dialer dialer,
            Supplier<byte[]> will,
            String statusTopic,
            String sweepFilter,
            Outbox outbox,
            Runnable wake) {
        this.dialer = dialer;
        this.will = will;
        this.statusTopic = statusTopic;
        this.sweepFilter = sweepFilter;
        this.outbox = outbox;
        this.wake = wake;
    }

    /** Takes the place of what was here before and has not left yet. Safe on any thread. */
    void offerNewest(String topic, byte[] payload) {
        newest.set(new Letter(NEWEST_ID, topic, payload, false, true));
    }

    /** What happened on one connection; events of an earlier one land in an object that nobody looks at any more. */
    private final class Connection implements BrokerLink.Events {
        private final ArrayBlockingQueue<String> leftovers = new ArrayBlockingQueue<>(MOST_LEFTOVERS);
        private volatile @Nullable String lost;
        private volatile boolean progress;
        private volatile boolean newestDelivered;
        private volatile boolean current = true;

        @Override
        public void delivered(long id) {
            if (!current) {
                return;
            }
            if (id == NEWEST_ID) {
                newestDelivered = true;
            } else {
                outbox.acknowledged(id);
            }
            progress = true;
            wake.run();
        }

        @Override
        public void foundRetained(String topic) {
            if (leftovers.offer(topic)) {
                wake.run();
            }
        }

        @Override
        public void lost(String why) {
            lost = why;
            wake.run();
        }
    }

    /** Does what there is to do. */
    void step(long nowNs) {
        try {
            BrokerLink open = link;
            if (open == null) {
                if (everTried && nowNs - nextAttemptNs < 0) {
                    return;
                }
                open = connect(nowNs);
            }
            String lost = connection.lost;
            if (lost != null) {
                throw new BrokerLink.LinkException(lost);
            }
            watch(nowNs);
            send(open);
            sweep(open, nowNs);
        } catch (BrokerLink.LinkException e) {
            drop(String.valueOf(e.getMessage()), nowNs);
        } catch (RuntimeException e) {
            drop("the MQTT library failed: " + e, nowNs);
        }
    }

    private BrokerLink connect(long nowNs) throws BrokerLink.LinkException {
        everTried = true;
        connection = new Connection();
        BrokerLink open = dialer.dial(will.get(), connection);
        link = open;
        outbox.startOver(statusTopic);
        newestOnItsWay = false;
        progressNs = nowNs;
        open.subscribe(sweepFilter);
        sweeping = true;
        sweepUntilNs = nowNs + SWEEP_NS;
        whyDown = null;
        return open;
    }

    private void watch(long nowNs) throws BrokerLink.LinkException {
        if (connection.newestDelivered) {
            connection.newestDelivered = false;
            newestOnItsWay = false;
        }
        if (connection.progress) {
            connection.progress = false;
            progressNs = nowNs;
            backOff.reset();
        }
        if (!outbox.isAnythingOnItsWay() && !newestOnItsWay) {
            progressNs = nowNs;
        } else if (nowNs - progressNs > WATCHDOG_NS) {
            throw new BrokerLink.LinkException("it acknowledged nothing for 8 s");
        }
    }

    private void send(BrokerLink open) throws BrokerLink.LinkException {
        for (Letter letter = outbox.next(); letter != null; letter = outbox.next()) {
            if (!open.send(letter.id(), letter.topic(), letter.payload(), letter.retained(), AT_LEAST_ONCE)) {
                outbox.putBack();
                return;
            }
        }
        if (!newestOnItsWay) {
            Letter letter = newest.getAndSet(null);
            if (letter != null) {
                newestOnItsWay = open.send(NEWEST_ID, letter.topic(), letter.payload(), false, AT_MOST_ONCE);
                if (!newestOnItsWay) {
                    newest.compareAndSet(null, letter);
                }
            }
        }
    }

    /**
     * A box that lost its power left alerts retained at the broker which nobody would ever clear: right after connecting, what
     * the broker retains and the outbox does not is taken away.
     */
    private void sweep(BrokerLink open, long nowNs) throws BrokerLink.LinkException {
        for (String topic = connection.leftovers.poll(); topic != null; topic = connection.leftovers.poll()) {
            if (!outbox.retains(topic)) {
                outbox.add(topic, new byte[0], true, false);
                wake.run();
            }
        }
        if (sweeping && nowNs - sweepUntilNs >= 0) {
            sweeping = false;
            open.unsubscribe(sweepFilter);
        }
    }

    private void drop(String why, long nowNs) {
        connection.current = false;
        whyDown = why;
        BrokerLink broken = link;
        link = null;
        if (broken != null) {
            broken.abandon();
        }
        nextAttemptNs = nowNs + TimeUnit.MILLISECONDS.toNanos(backOff.nextMs());
    }

    /** Whether all that must arrive has arrived. */
    boolean isIdle() {
        return outbox.isEmpty();
    }

    /** Ends the connection as agreed, so that the last will stays unsaid. */
    void part() {
        BrokerLink open = link;
        link = null;
        if (open != null) {
            open.part();
        }
    }

    /** Null while the broker is there, else why it is not. Safe on any thread. */
    @Nullable
    String whyDown() {
        return whyDown;
    }
}
