package evenfall.sim.wire;

import evenfall.sim.chance.Chance;
import org.jspecify.annotations.Nullable;

/**
 * A serial line on its way to the controller: bytes go one after another, ten bits each (8N1), and a sentence has arrived when
 * its last byte has. A line in trouble loses sentences or bits of them, at the times at which they would have come.
 */
public final class Uart {
    private static final long BITS_A_BYTE_MILLION = 10_000_000;

    private final String port;
    private final int baud;
    private final Listener listener;
    private long freeAtUs;
    private boolean unplugged;
    private double dropShare;
    private @Nullable Chance dropChance;
    private double noiseShare;
    private @Nullable Chance noiseChance;

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
        // Chance is drawn for every sentence of a line in trouble, so that one trouble does not change another's
        // course.
        boolean dropped = dropShare > 0 && dropChance != null && dropChance.nextDouble() < dropShare;
        byte[] arrives = noiseShare > 0 && noiseChance != null ? noisy(bytes, noiseChance) : bytes;
        if (!unplugged && !dropped) {
            listener.arrived(freeAtUs, port, arrives);
        }
    }

    /** Each byte has its chance to be hit; one that is hit has one of its bits turned over. */
    private byte[] noisy(byte[] bytes, Chance luck) {
        byte[] hit = bytes.clone();
        for (int i = 0; i < hit.length; i++) {
            if (luck.nextDouble() < noiseShare) {
                hit[i] ^= (byte) (1 << luck.nextInt(8));
            }
        }
        return hit;
    }

    /** Name of the line. */
    public String port() {
        return port;
    }

    /** The plug is out: what is sent never arrives. */
    public void unplug(boolean on) {
        unplugged = on;
    }

    /** @param share of the sentences that are lost whole; 0 makes it whole */
    public void drop(double share, Chance luck) {
        dropShare = share;
        dropChance = luck;
    }

    /** @param share of the bytes that arrive with a wrong bit; 0 makes it whole */
    public void noise(double share, Chance luck) {
        noiseShare = share;
        noiseChance = luck;
    }
}
