package evenfall.app;

import evenfall.message.Status;
import evenfall.rig.Rig;
import evenfall.serial.PortListener;
import evenfall.trace.TraceEvent;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Where the ports' threads leave what happened and the core's thread finds it. The one place where time is read: an event is
 * stamped and queued under one lock, and the core learns how late it is only while nothing is queued, so that no event can be
 * older than the time the core has been told.
 *
 * <p>Bounded. Bytes that find it full are counted, and the core is told how many are missing and where as soon as there is room.
 */
final class Inbox implements PortListener {
    private final Object lock = new Object();
    private final ArrayDeque<TraceEvent> events = new ArrayDeque<>();
    private final Map<String, PortState> ports = new LinkedHashMap<>();
    private final int capacity;
    private final LongSupplier clockUs;
    private final PortNews news;
    private long lastUs;
    private boolean closed;

    /**
     * @param capacity most events to hold
     * @param clockUs µs since the box started; monotonic
     * @param news is told of ports that come and go, for people
     */
    Inbox(List<Rig.Port> ports, int capacity, LongSupplier clockUs, PortNews news) {
        for (Rig.Port port : ports) {
            this.ports.put(port.name(), new PortState());
        }
        this.capacity = capacity;
        this.clockUs = clockUs;
        this.news = news;
    }

    /** Ports that come and go, in words. Called on the ports' threads. */
    @FunctionalInterface
    interface PortNews {
        /**
         * @param why null when the port is open
         */
        void changed(long timeUs, String port, @Nullable String why);
    }

    private static final class PortState {
        private @Nullable String why = "not opened yet";
        private long heardUs = -1;
        private long droppedBytes;
        /** Not told yet for want of room. */
        private long untoldDroppedBytes;
        /** Not told yet for want of room: true when it opened, false when it was lost. */
        private @Nullable Boolean untoldOpen;
    }

    /**
     * What the core's thread finds.
     *
     * @param event null when nothing was queued
     * @param timeUs of the event; without one, the time that has come: whatever is queued later is not older
     */
    record Found(@Nullable TraceEvent event, long timeUs) {}

    @Override
    public void bytes(String port, byte[] chunk) {
        synchronized (lock) {
            if (closed) {
                return;
            }
            PortState state = state(port);
            long timeUs = stamp();
            state.heardUs = timeUs;
            tellUntold(timeUs);
            if (events.size() < capacity && state.untoldDroppedBytes == 0 && state.untoldOpen == null) {
                events.add(new TraceEvent.Bytes(timeUs, port, chunk));
            } else {
                state.droppedBytes += chunk.length;
                state.untoldDroppedBytes += chunk.length;
            }
            lock.notifyAll();
        }
    }

    /**
     * Takes a sentence of the box's own, from the cab view.
     *
     * @return false where there is no room for it: nothing was taken
     */
    boolean command(byte[] sentence) {
        synchronized (lock) {
            if (closed || events.size() >= capacity) {
                return false;
            }
            events.add(new TraceEvent.Bytes(stamp(), Rig.CAB_PORT, sentence));
            lock.notifyAll();
            return true;
        }
    }

    @Override
    public void found(String port) {
        change(port, null, true);
    }

    @Override
    public void lost(String port, String why) {
        change(port, why, true);
    }

    @Override
    public void refused(String port, String why) {
        change(port, why, false);
    }

    private void change(String port, @Nullable String why, boolean tellCore) {
        long timeUs;
        synchronized (lock) {
            if (closed) {
                return;
            }
            PortState state = state(port);
            timeUs = stamp();
            state.why = why;
            if (tellCore) {
                state.untoldOpen = why == null;
                tellUntold(timeUs);
                lock.notifyAll();
            }
        }
        news.changed(timeUs, port, why);
    }

    private void tellUntold(long timeUs) {
        for (Map.Entry<String, PortState> entry : ports.entrySet()) {
            PortState state = entry.getValue();
            if (state.untoldDroppedBytes > 0 && events.size() < capacity) {
                events.add(new TraceEvent.Dropped(timeUs, entry.getKey(), state.untoldDroppedBytes));
                state.untoldDroppedBytes = 0;
            }
            if (state.untoldOpen != null && state.untoldDroppedBytes == 0 && events.size() < capacity) {
                events.add(
                        state.untoldOpen
                                ? new TraceEvent.PortFound(timeUs, entry.getKey())
                                : new TraceEvent.PortLost(timeUs, entry.getKey()));
                state.untoldOpen = null;
            }
        }
    }

    /** The oldest event, or the time when none comes within the wait. */
    Found take(long longestWaitMs) throws InterruptedException {
        synchronized (lock) {
            long startUs = clockUs.getAsLong();
            for (long leftMs = longestWaitMs; leftMs > 0 && events.isEmpty() && !closed; ) {
                lock.wait(leftMs);
                leftMs = longestWaitMs - (clockUs.getAsLong() - startUs) / 1000;
            }
            TraceEvent event = events.poll();
            if (event != null) {
                tellUntold(stamp());
                return new Found(event, event.timeUs());
            }
            return new Found(null, stamp());
        }
    }

    /** From now on nothing more is taken in; what is queued can still be taken out. */
    void close() {
        synchronized (lock) {
            closed = true;
            lock.notifyAll();
        }
    }

    boolean isDone() {
        synchronized (lock) {
            return closed && events.isEmpty();
        }
    }

    /** The ports as they are now, in the order of the rig file. */
    List<Status.Port> ports() {
        synchronized (lock) {
            long nowUs = clockUs.getAsLong();
            List<Status.Port> all = new ArrayList<>();
            ports.forEach((name, state) -> all.add(new Status.Port(
                    name, state.why, state.heardUs < 0 ? -1 : Math.max(0, nowUs - state.heardUs), state.droppedBytes)));
            return all;
        }
    }

    private long stamp() {
        lastUs = Math.max(lastUs, clockUs.getAsLong());
        return lastUs;
    }

    private PortState state(String port) {
        PortState state = ports.get(port);
        if (state == null) {
            throw new IllegalArgumentException("there is no port " + port);
        }
        return state;
    }
}
