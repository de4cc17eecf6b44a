package evenfall.serial;

import evenfall.retry.BackOff;
import evenfall.rig.Rig;
import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Reads one serial port for as long as the program runs: opens it, reads it, loses it, waits, and opens it again. */
public final class SerialPortReader {
    private static final int CHUNK_BYTES = 4096;
    private static final Duration FIRST_WAIT = Duration.ofMillis(250);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(2);
    private static final long CLOSE_MS = 500;

    private final String port;
    private final Device.Opener opener;
    private final PortListener listener;
    private final BackOff backOff;
    private final CountDownLatch stopped = new CountDownLatch(1);
    private final Thread thread;

    /** Reads nothing before {@link #start}. */
    public SerialPortReader(Rig.Port port, PortListener listener) {
        this(port.name(), () -> SerialDevice.open(port), listener, new BackOff(FIRST_WAIT, LONGEST_WAIT));
    }

    SerialPortReader(String port, Device.Opener opener, PortListener listener, BackOff backOff) {
        this.port = port;
        this.opener = opener;
        this.listener = listener;
        this.backOff = backOff;
        this.thread = new Thread(this::run, "serial-" + port);
        thread.setDaemon(true);
    }

    /** Starts the thread that opens the port and reads; to be called once. */
    public void start() {
        thread.start();
    }

    /** Asks the thread to end; nothing is waited for. */
    public void stop() {
        stopped.countDown();
    }

    /**
     * Waits for the end after {@link #stop}. A driver that hangs is left behind.
     *
     * @return whether the thread has ended
     */
    public boolean await(Duration longest) throws InterruptedException {
        thread.join(longest.toMillis());
        return !thread.isAlive();
    }

    private void run() {
        Attempts attempts = new Attempts();
        while (!isStopped()) {
            try {
                Device device = opener.open();
                attempts.succeeded();
                String why = readUntilGone(device);
                if (why != null) {
                    attempts.failed(why);
                }
            } catch (Device.RefusedException e) {
                attempts.failed(String.valueOf(e.getMessage()));
            } catch (RuntimeException e) {
                attempts.failed("the serial library failed: " + e);
            }
            pause(backOff.nextMs());
        }
    }

    /** Says each change once. */
    private final class Attempts {
        private boolean open;
        private boolean everTried;
        private String lastWhy = "";

        void succeeded() {
            open = true;
            everTried = true;
            listener.found(port);
        }

        void failed(String why) {
            if (open || !everTried) {
                listener.lost(port, why);
            } else if (!why.equals(lastWhy)) {
                listener.refused(port, why);
            }
            open = false;
            everTried = true;
            lastWhy = why;
        }
    }

    private @Nullable String readUntilGone(Device device) {
        byte[] buffer = new byte[CHUNK_BYTES];
        try {
            while (!isStopped()) {
                int count = device.read(buffer);
                if (count < 0) {
                    return "it was unplugged";
                }
                backOff.reset();
                if (count > 0) {
                    listener.bytes(port, Arrays.copyOf(buffer, count));
                }
            }
            return null;
        } finally {
            close(device);
        }
    }

    /** On a thread of its own: closing has been seen to hang for ever after a device came back under another number. */
    private void close(Device device) {
        Thread closer = new Thread(device::close, "serial-" + port + "-close");
        closer.setDaemon(true);
        closer.start();
        try {
            closer.join(CLOSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private boolean isStopped() {
        return stopped.getCount() == 0;
    }

    private void pause(long ms) {
        try {
            stopped.await(ms, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            stop();
            Thread.currentThread().interrupt();
        }
    }
}
