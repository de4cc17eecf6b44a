package evenfall.app;

import java.io.PrintStream;
import java.time.Duration;
import java.util.concurrent.ArrayBlockingQueue;

/**
 * Lines for a person, printed by a thread of their own: a terminal that is held up, or a pipe that nobody reads, must not hold up
 * the watching. Lines that find the queue full are counted, and their number is
 * printed in their place.
 */
final class Console {
    private static final int CAPACITY = 200;

    private final PrintStream out;
    private final ArrayBlockingQueue<String> lines = new ArrayBlockingQueue<>(CAPACITY);
    private long notShown;
    private final Thread thread;
    private volatile boolean closing;

    Console(PrintStream out) {
        this.out = out;
        this.thread = new Thread(this::run, "console");
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
    }

    /** Returns at once. Safe on any thread. */
    synchronized void line(String text) {
        if (notShown > 0 && lines.offer(missing())) {
            notShown = 0;
        }
        if (!lines.offer(text)) {
            notShown++;
        }
    }

    private String missing() {
        return "(" + notShown + " lines not shown: the console was too slow)";
    }

    /** Prints what waits and ends the thread; gives up when the time is over. */
    void close(Duration longest) throws InterruptedException {
        closing = true;
        lines.offer("");
        thread.join(longest.toMillis());
    }

    private void run() {
        try {
            while (!closing || !lines.isEmpty()) {
                String line = lines.take();
                if (!line.isEmpty()) {
                    out.println(line);
                }
                if (lines.isEmpty()) {
                    out.flush();
                }
            }
            synchronized (this) {
                if (notShown > 0) {
                    out.println(missing());
                    out.flush();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
