package evenfall.sim.world;

import java.nio.charset.StandardCharsets;

/**
 * Bytes that have arrived at a port: all that a controller may ever learn of a world.
 *
 * <p>Compared by identity; the bytes belong to whoever takes them and are not to be changed.
 */
public final class Emission {
    private final long timeUs;
    private final String port;
    private final byte[] bytes;

    /**
     * @param timeUs when the last of the bytes arrived, µs since the start of the run
     * @param port name of the port, as in the rig file
     * @param bytes what arrived; most often one sentence with its line end
     */
    public Emission(long timeUs, String port, byte[] bytes) {
        this.timeUs = timeUs;
        this.port = port;
        this.bytes = bytes;
    }

    public long timeUs() {
        return timeUs;
    }

    public String port() {
        return port;
    }

    // Not copied: eighty a second at thousands of times real time, handed on once.
    public byte[] bytes() {
        return bytes;
    }

    @Override
    public String toString() {
        return timeUs + " " + port + " " + new String(bytes, StandardCharsets.US_ASCII).strip();
    }
}
