package evenfall.bench.cli;

import evenfall.bench.live.LiveState;
import evenfall.bench.live.LiveView;
import evenfall.bench.live.Screen;
import evenfall.bench.received.Message;
import evenfall.bench.run.Runner;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Shows a run while it goes: frames on a terminal, a line now and then elsewhere. */
final class RunWatch implements Runner.Watcher, AutoCloseable {
    private static final long FRAME_MS = 200;
    private static final double LINE_EVERY_S = 5;

    private final Terminal terminal;
    private final LiveView view;
    private final LiveState state = new LiveState();
    private final Screen screen;
    private final boolean frames;
    private final ScheduledThreadPoolExecutor painter = new ScheduledThreadPoolExecutor(1);
    private final @Nullable Future<?> painting;
    private volatile double atS = -1;
    private double nextLineS = LINE_EVERY_S;

    /**
     * @param mayDraw whether standard output may be drawn on; a JSON document must stand there alone
     */
    RunWatch(Terminal terminal, LiveView view, boolean mayDraw) {
        this.terminal = terminal;
        this.view = view;
        this.screen = new Screen(terminal.out());
        this.frames = terminal.live() && mayDraw;
        this.painting = frames ? painter.scheduleAtFixedRate(this::paint, 0, FRAME_MS, TimeUnit.MILLISECONDS) : null;
    }

    private void paint() {
        if (atS >= 0) {
            screen.draw(view.frame(state, atS));
        }
    }

    @Override
    public void preparing(String what) {
        if (!frames) {
            terminal.err().println("evenfall: " + what);
        }
    }

    @Override
    public void driving(double now) {
        atS = now;
        if (!frames && now >= nextLineS) {
            nextLineS += LINE_EVERY_S;
            terminal.err().println("evenfall: " + view.line(state, now));
        }
    }

    @Override
    public void heard(Message message) {
        state.hear(message);
    }

    @Override
    public void close() {
        boolean brokeOff = painting != null && painting.isDone();
        painter.shutdownNow();
        try {
            painter.awaitTermination(1, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (frames) {
            screen.clear();
        }
        if (brokeOff) {
            terminal.err().println("evenfall: the live view broke off; the result is not touched by that");
        }
    }
}
