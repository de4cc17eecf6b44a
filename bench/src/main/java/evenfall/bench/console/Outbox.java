package evenfall.bench.console;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What waits for a page. Of a state only the newest waits, so a slow page skips and never lags; alerts wait in order, and beyond a
 * limit the oldest is dropped and counted. Safe on any thread; nobody who puts something in waits for a page.
 */
final class Outbox {
    /** More than a trainer could read in a minute. */
    static final int MOST_WAITING = 500;

    private final Map<String, byte[]> states = new LinkedHashMap<>();
    private final ArrayDeque<byte[]> events = new ArrayDeque<>();
    private long dropped;
    private boolean nudged;
    private boolean closed;

    /** Puts a state in the place of an older one of the same key. */
    synchronized void newest(String key, byte[] frame) {
        states.put(key, frame);
        notifyAll();
    }

    /** Puts an event behind all others. */
    synchronized void every(byte[] frame) {
        if (events.size() == MOST_WAITING) {
            events.removeFirst();
            dropped++;
        }
        events.addLast(frame);
        notifyAll();
    }

    /** Wakes the page: there is more on a tape. */
    synchronized void nudge() {
        nudged = true;
        notifyAll();
    }

    /** How many events were dropped. */
    synchronized long dropped() {
        return dropped;
    }

    synchronized void close() {
        closed = true;
        notifyAll();
    }

    synchronized boolean isClosed() {
        return closed;
    }

    /** Waits for something, and takes all: events first, in order. Empty where so many ms have brought nothing but a nudge. */
    synchronized List<byte[]> take(long longestMs) throws InterruptedException {
        long untilNs = System.nanoTime() + longestMs * 1_000_000;
        while (!closed && !nudged && states.isEmpty() && events.isEmpty()) {
            long leftMs = (untilNs - System.nanoTime()) / 1_000_000;
            if (leftMs <= 0) {
                break;
            }
            wait(leftMs);
        }
        nudged = false;
        List<byte[]> frames = new ArrayList<>(events);
        frames.addAll(states.values());
        events.clear();
        states.clear();
        return frames;
    }
}
