package evenfall.sim.world;

import evenfall.sim.wire.Uart;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.function.Consumer;

/** Holds what is on its way until its moment, and lets it out in the order of arrival. */
final class Arrivals implements Uart.Listener {
    /** More than a second of everything on its way at once means that a line is slower than what is sent on it. */
    private static final int MOST = 1000;

    private record Waiting(long order, Emission emission) {}

    private final PriorityQueue<Waiting> waiting = new PriorityQueue<>(
            Comparator.comparingLong((Waiting w) -> w.emission().timeUs()).thenComparingLong(Waiting::order));
    private long sent;

    @Override
    public void arrived(long timeUs, String port, byte[] bytes) {
        if (waiting.size() >= MOST) {
            throw new IllegalStateException("the line of port " + port + " is too slow for what is sent on it");
        }
        waiting.add(new Waiting(sent++, new Emission(timeUs, port, bytes)));
    }

    /** Lets out what has arrived up to a moment. */
    void letOut(long untilUs, Consumer<? super Emission> door) {
        for (Waiting first = waiting.peek();
                first != null && first.emission().timeUs() <= untilUs;
                first = waiting.peek()) {
            waiting.remove();
            door.accept(first.emission());
        }
    }
}
