package evenfall.mqtt;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Messages that must arrive, in order, until the broker has acknowledged them; and what it should be retaining, so that this can
 * be said again to a broker that has lost it.
 *
 * <p>Bounded. When it is full, the oldest message goes whose loss leaves every topic's retained message right; what went is
 * counted. Safe for several threads.
 */
final class Outbox {
    private final int capacity;
    private final int window;
    /** In order; the first {@code sent} of them are on their way. */
    private final List<Letter> letters = new ArrayList<>();

    private final Map<String, Letter> retained = new TreeMap<>();
    private int sent;
    private long lastId;
    private long dropped;

    /**
     * @param capacity most messages to hold
     * @param window most messages on their way at once
     */
    Outbox(int capacity, int window) {
        if (window < 1 || capacity <= window) {
            throw new IllegalArgumentException("an outbox holds more than is on its way at once");
        }
        this.capacity = capacity;
        this.window = window;
    }

    synchronized void add(String topic, byte[] payload, boolean retain, boolean newestOnly) {
        Letter letter = new Letter(++lastId, topic, payload, retain, newestOnly);
        if (newestOnly) {
            removeWaiting(topic);
        }
        if (retain) {
            if (payload.length == 0) {
                retained.remove(topic);
            } else {
                retained.put(topic, letter);
            }
        }
        if (letters.size() >= capacity) {
            letters.remove(mostDispensable());
            dropped++;
        }
        letters.add(letter);
    }

    private void removeWaiting(String topic) {
        for (int i = letters.size() - 1; i >= sent; i--) {
            if (letters.get(i).newestOnly() && letters.get(i).topic().equals(topic)) {
                letters.remove(i);
            }
        }
    }

    private int mostDispensable() {
        Set<String> retainedLater = new LinkedHashSet<>();
        int found = sent;
        for (int i = letters.size() - 1; i >= sent; i--) {
            Letter letter = letters.get(i);
            if (!letter.retained() || !retainedLater.add(letter.topic())) {
                found = i;
            }
        }
        return found;
    }

    /** The next message to send, which then counts as on its way; null when there is none or the window is full. */
    synchronized @Nullable Letter next() {
        if (sent >= window || sent >= letters.size()) {
            return null;
        }
        return letters.get(sent++);
    }

    /** The last one taken could not be handed over: it is not on its way after all. */
    synchronized void putBack() {
        sent--;
    }

    /** The broker has it. Acknowledgements of an earlier connection for what has gone meanwhile change nothing. */
    synchronized void acknowledged(long id) {
        for (int i = 0; i < sent; i++) {
            if (letters.get(i).id() == id) {
                letters.remove(i);
                sent--;
                return;
            }
        }
    }

    /**
     * A new connection begins: nothing is on its way, and what the broker should be retaining goes ahead of all else, the given
     * topic first, unless a newer word for the same topic waits already.
     */
    synchronized void startOver(String first) {
        sent = 0;
        Set<String> waiting = new LinkedHashSet<>();
        for (Letter letter : letters) {
            if (letter.retained()) {
                waiting.add(letter.topic());
            }
        }
        List<Letter> again = new ArrayList<>();
        for (Letter letter : retained.values()) {
            if (!waiting.contains(letter.topic())) {
                again.add(new Letter(++lastId, letter.topic(), letter.payload(), true, letter.newestOnly()));
            }
        }
        letters.addAll(0, again);
        for (int i = 0; i < letters.size(); i++) {
            if (letters.get(i).topic().equals(first)) {
                Collections.rotate(letters.subList(0, i + 1), 1);
                return;
            }
        }
    }

    synchronized boolean retains(String topic) {
        return retained.containsKey(topic);
    }

    synchronized boolean isEmpty() {
        return letters.isEmpty();
    }

    synchronized boolean isAnythingOnItsWay() {
        return sent > 0;
    }

    synchronized long dropped() {
        return dropped;
    }
}
