package evenfall.sim.feed;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import evenfall.sim.world.Emission;
import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A real serial port, 8N1.
 *
 * <p>A write to a port that nobody drains may block for ever (a write timeout changes nothing on Linux), so a thread of its own
 * writes from a bounded queue, and closing the port frees it.
 */
public final class SerialFeed implements Feed {
    /** About six seconds of all sentences together. */
    private static final int QUEUE_SENTENCES = 512;

    private static final long PATIENCE_MS = 2000;
    private static final long POLL_MS = 50;

    private final SerialPort port;
    private final ArrayBlockingQueue<byte[]> queue = new ArrayBlockingQueue<>(QUEUE_SENTENCES);
    private final AtomicLong droppedBytes = new AtomicLong();
    private final Thread writer;
    private volatile boolean closing;

    private SerialFeed(SerialPort port) {
        this.port = port;
        this.writer = new Thread(this::drain, "serial-feed");
        writer.setDaemon(true);
        writer.start();
    }

    /**
     * @param device path of the port
     * @param baud bits per second
     * @throws IOException when there is no such port or it is in use
     */
    public static SerialFeed open(String device, int baud) throws IOException {
        try {
            SerialPort port = SerialPort.getCommPort(device);
            port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
            port.setComPortTimeouts(SerialPort.TIMEOUT_WRITE_BLOCKING, 0, 0);
            if (!port.openPort()) {
                throw new IOException(device + " cannot be opened (error " + port.getLastErrorCode() + ")");
            }
            return new SerialFeed(port);
        } catch (SerialPortInvalidPortException e) {
            throw new IOException("there is no serial port " + device, e);
        }
    }

    @Override
    public void accept(Emission emission) {
        byte[] bytes = emission.bytes();
        if (closing || !queue.offer(bytes)) {
            droppedBytes.addAndGet(bytes.length);
        }
    }

    private void drain() {
        try {
            while (!closing || !queue.isEmpty()) {
                byte[] bytes = queue.poll(POLL_MS, TimeUnit.MILLISECONDS);
                if (bytes == null) {
                    continue;
                }
                int went = Math.max(0, port.writeBytes(bytes, bytes.length));
                droppedBytes.addAndGet(bytes.length - went);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public long droppedBytes() {
        return droppedBytes.get();
    }

    /** Lets the queue run out, for two seconds at most, then closes the port, which frees a writer that hangs. */
    @Override
    public void close() {
        closing = true;
        try {
            writer.join(PATIENCE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        port.closePort();
        writer.interrupt();
        byte[] left = queue.poll();
        while (left != null) {
            droppedBytes.addAndGet(left.length);
            left = queue.poll();
        }
    }
}
