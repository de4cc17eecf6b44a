package evenfall.bench.prove.talk;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Lines that a person types, read on a thread of their own so that one can wait for them and draw meanwhile. */
public final class Lines {
    private static final int MOST_WAITING = 10_000;

    private final BlockingQueue<Line> typed = new LinkedBlockingQueue<>(MOST_WAITING);
    private final Thread reader;
    private boolean started;

    /**
     * @param state whether there is a line
     * @param text without its line end; empty where there is none
     */
    record Line(State state, String text) {
        private static final Line NOT_YET = new Line(State.NOT_YET, "");
        private static final Line ENDED = new Line(State.ENDED, "");
    }

    /** What waiting for a line came to. */
    enum State {
        TYPED,
        NOT_YET,
        ENDED
    }

    public Lines(InputStream in) {
        reader = new Thread(() -> read(in), "typed-lines");
        reader.setDaemon(true);
    }

    private void read(InputStream in) {
        try {
            BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                typed.put(new Line(State.TYPED, line));
            }
            typed.put(Line.ENDED);
        } catch (IOException e) {
            typed.add(Line.ENDED);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The next line, if it comes in time. */
    Line poll(long ms) throws InterruptedException {
        if (!started) {
            started = true;
            reader.start();
        }
        Line line = typed.poll(ms, TimeUnit.MILLISECONDS);
        if (line == null) {
            return Line.NOT_YET;
        }
        if (line.state() == State.ENDED) {
            // The end stays the end.
            typed.put(line);
        }
        return line;
    }
}
