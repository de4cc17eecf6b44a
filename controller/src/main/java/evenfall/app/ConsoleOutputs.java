package evenfall.app;

import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Shows the core's outputs on the console: a line a second of event time, and a line for each alert that rises or clears. */
final class ConsoleOutputs implements Outputs {
    private static final long LINE_US = 1_000_000;

    private final Console console;
    private final Supplier<@Nullable String> whyNoBroker;
    private final boolean quiet;
    private long nextLineUs = LINE_US;

    /**
     * @param whyNoBroker gives null while the broker is there
     * @param quiet no line a second
     */
    ConsoleOutputs(Console console, Supplier<@Nullable String> whyNoBroker, boolean quiet) {
        this.console = console;
        this.whyNoBroker = whyNoBroker;
        this.quiet = quiet;
    }

    @Override
    public void live(Live live) {
        if (!quiet && live.timeUs() >= nextLineUs) {
            nextLineUs = live.timeUs() - live.timeUs() % LINE_US + LINE_US;
            console.line(ConsoleText.state(live, whyNoBroker.get()));
        }
    }

    @Override
    public void raised(Alert alert) {
        console.line(ConsoleText.raised(alert));
    }

    @Override
    public void acknowledged(Alert alert, long atUs) {
        console.line(ConsoleText.acknowledged(alert, atUs));
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        console.line(ConsoleText.cleared(alert, clearedUs));
    }
}
