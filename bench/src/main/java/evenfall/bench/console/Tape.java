package evenfall.bench.console;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Moments of a run in order, the oldest dropped when it is full, so that memory stays flat. Can be cut back to a time and go on
 * from there. One writes, one reads; safe on two threads.
 */
final class Tape {
    /** An hour at five moments a second. */
    static final int MOST = 18_000;

    private static final class Entry {
        final long timeUs;
        final byte[] moment;

        Entry(long timeUs, byte[] moment) {
            this.timeUs = timeUs;
            this.moment = moment;
        }
    }

    /**
     * A stretch of the tape.
     *
     * @param from number of its first moment; whatever a reader has from there on is no longer true
     * @param moments in order
     */
    record Chunk(long from, List<byte[]> moments) {
        long next() {
            return from + moments.size();
        }
    }

    private final ArrayDeque<Entry> entries = new ArrayDeque<>();
    private long first;
    private long cutTo = Long.MAX_VALUE;

    synchronized void add(long timeUs, byte[] moment) {
        entries.addLast(new Entry(timeUs, moment));
        if (entries.size() > MOST) {
            entries.removeFirst();
            first++;
        }
    }

    /** Forgets all that came after a time. */
    synchronized void cut(long timeUs) {
        while (!entries.isEmpty() && entries.getLast().timeUs > timeUs) {
            entries.removeLast();
        }
        cutTo = Math.min(cutTo, first + entries.size());
    }

    /**
     * What a reader does not have yet.
     *
     * @param next number of the moment that it wants
     * @param most moments at once
     * @return null where it has all
     */
    synchronized @Nullable Chunk after(long next, int most) {
        boolean cut = cutTo < next;
        long from = Math.max(first, Math.min(next, cutTo));
        cutTo = Long.MAX_VALUE;
        List<byte[]> moments = new ArrayList<>();
        if (from < first + entries.size()) {
            Iterator<Entry> at = entries.iterator();
            for (long i = first; i < from; i++) {
                at.next();
            }
            while (at.hasNext() && moments.size() < most) {
                moments.add(at.next().moment);
            }
        }
        return cut || !moments.isEmpty() ? new Chunk(from, List.copyOf(moments)) : null;
    }
}
