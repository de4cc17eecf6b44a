package evenfall.replay;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.trace.TraceEvent;
import evenfall.trace.TraceReader;
import java.io.ByteArrayInputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What the core allocates in steady work, counted by the machine that runs it: unlike time, that is the same however busy it is. */
class ThriftTest {
    private static final int MINUTE_S = 60;
    private static final long MINUTE_US = 60_000_000;

    /**
     * A few hundred bytes: the event itself takes 120, the rows of a cell as much again. An interpreter, which makes every object that is
     * written down, counts 620, a compiler 520.
     */
    private static final long MOST_BYTES = 650;

    @Test
    void anEventTakesAFewHundredBytes() throws Exception {
        ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        Rig rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
        byte[] text = InventedTrace.of(rig, 2 * MINUTE_S).getBytes(StandardCharsets.US_ASCII);
        TraceReader trace = new TraceReader(new ByteArrayInputStream(text), "invented");
        SteadyMonitor core = new SteadyMonitor(
                rig, (topic, payload, retained, delivery) -> {}, new Unheard(), (timeUs, unexpected) -> {
                    throw new AssertionError("no fault is due", unexpected);
                });
        long self = Thread.currentThread().getId();
        long from = 0;
        long events = 0;
        for (TraceEvent event = trace.next(); event != null; event = trace.next()) {
            if (from == 0 && event.timeUs() > MINUTE_US) {
                from = thread.getThreadAllocatedBytes(self);
                events = 0;
            }
            events++;
            core.accept(event);
        }
        long bytes = thread.getThreadAllocatedBytes(self) - from;

        assertThat(events).isEqualTo(MINUTE_S * InventedTrace.SENTENCES_PER_S + 1);
        assertThat(core.messages()).as("live messages and cells").isGreaterThan(2 * MINUTE_S * 7);
        assertThat(bytes / events).as("bytes an event, of %d", bytes).isLessThan(MOST_BYTES);
    }

    private static final class Unheard implements Outputs {
        @Override
        public void live(Live live) {}

        @Override
        public void raised(Alert alert) {}

        @Override
        public void cleared(Alert alert, long clearedUs) {}
    }
}
