package evenfall.sim.wire;

/**
 * A serial line on its way to the controller: bytes go one after another, ten bits each (8N1), and a sentence has arrived when
 * its last byte has.
 */
public final class Uart {
    private static final long BITS_A_BYTE_MILLION = 10_000_000;

    private final String port;
    private final int baud;
    private final Listener listener;
    private long freeAtUs;

    /** Who stands at the line's other end. */
    @FunctionalInterface
    public interface Listener {
        /**
         * @param timeUs when the last of these bytes has arrived, µs of the run
         * @param port name of the line
         * @param bytes what arrived; the listener's own
         */
        void arrived(long timeUs, String port, byte[] bytes);
    }

    /**
     * @param port name of the line
     * @param baud bits per second, above 0
     */
    public Uart(String port, int baud, Listener listener) {
        this.port = port;
        this.baud = baud;
        this.listener = listener;
    }

    /**
     * Sends a sentence: at once, or as soon as the line is free.
     *
     * @param timeUs when it was ready, µs of the run; never before an earlier call's
     */
    public void send(long timeUs, byte[] bytes) {
        long startUs = Math.max(timeUs, freeAtUs);
        freeAtUs = startUs + (bytes.length * BITS_A_BYTE_MILLION + baud - 1) / baud;
        listener.arrived(freeAtUs, port, bytes);
    }
}
