package evenfall.replay;

import evenfall.judge.Alert;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;
import evenfall.message.MessageSink;
import evenfall.message.OutputDigest;
import evenfall.message.Publisher;
import evenfall.monitor.Live;
import evenfall.monitor.Monitor;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.trace.TraceEvent;
import evenfall.wire.WireCounts;
import java.util.ArrayDeque;

/**
 * A monitor that is started anew when it meets the unexpected, with its outputs turned into messages.
 *
 * <p>What it publishes follows from the events alone, restarts included: time is passed on in steps of the monitor's own grid, so
 * that it does not matter how often {@link #advanceTo} is called. One thread feeds it.
 */
public final class SteadyMonitor {
    /** So many restarts within a minute of event time are borne. */
    public static final int MOST_RESTARTS = 5;

    private static final long MINUTE_US = 60_000_000;

    private final Rig rig;
    private final Outputs outputs;
    private final MessageSink sink;
    private final FaultListener faults;
    private final OutputDigest digest = new OutputDigest();
    private final ArrayDeque<Long> recentRestartsUs = new ArrayDeque<>();
    private Monitor monitor;
    private WireCounts earlierLives = new WireCounts(0, 0, 0, 0, 0, 0, 0, 0);
    private long nextGridUs = Monitor.GRID_US;
    private long restarts;

    /**
     * @param publisher gets every message, on the thread that feeds
     * @param also gets the outputs themselves, before they are messages
     */
    public SteadyMonitor(Rig rig, Publisher publisher, Outputs also, FaultListener faults) {
        this.rig = rig;
        this.faults = faults;
        this.sink = new MessageSink(rig, (topic, payload, retained, delivery) -> {
            digest.publish(topic, payload, retained, delivery);
            publisher.publish(topic, payload, retained, delivery);
        });
        this.outputs = new Both(also, sink);
        this.monitor = new Monitor(rig, outputs, 0);
    }

    private record Both(Outputs first, Outputs second) implements Outputs {
        @Override
        public void live(Live live) {
            first.live(live);
            second.live(live);
        }

        @Override
        public void raised(Alert alert) {
            first.raised(alert);
            second.raised(alert);
        }

        @Override
        public void cleared(Alert alert, long clearedUs) {
            first.cleared(alert, clearedUs);
            second.cleared(alert, clearedUs);
        }

        @Override
        public void acknowledged(Alert alert, long atUs) {
            first.acknowledged(alert, atUs);
            second.acknowledged(alert, atUs);
        }

        @Override
        public void cell(LedgerCell cell) {
            first.cell(cell);
            second.cell(cell);
        }

        @Override
        public void pass(PassSummary pass) {
            first.pass(pass);
            second.pass(pass);
        }
    }

    /**
     * Takes one event; at the {@linkplain TraceEvent.End end} alerts that still stand are ended.
     *
     * @throws CoreBrokenException after too many restarts
     */
    public void accept(TraceEvent event) {
        advanceTo(event.timeUs());
        try {
            monitor.accept(event);
        } catch (RuntimeException e) {
            restart(event.timeUs(), e);
        }
        if (event instanceof TraceEvent.End) {
            sink.end(event.timeUs());
        }
    }

    /**
     * Lets time pass without an event.
     *
     * @throws CoreBrokenException after too many restarts
     */
    public void advanceTo(long timeUs) {
        while (nextGridUs <= timeUs) {
            long gridUs = nextGridUs;
            nextGridUs += Monitor.GRID_US;
            try {
                monitor.advanceTo(gridUs);
            } catch (RuntimeException e) {
                restart(gridUs, e);
            }
        }
    }

    private void restart(long timeUs, RuntimeException unexpected) {
        restarts++;
        sink.end(timeUs);
        earlierLives = plus(earlierLives, monitor.wire());
        monitor = new Monitor(rig, outputs, timeUs);
        faults.coreRestarted(timeUs, unexpected);
        recentRestartsUs.add(timeUs);
        while (timeUs - recentRestartsUs.element() >= MINUTE_US) {
            recentRestartsUs.remove();
        }
        if (recentRestartsUs.size() > MOST_RESTARTS) {
            throw new CoreBrokenException(
                    "the core failed " + recentRestartsUs.size() + " times within a minute", unexpected);
        }
    }

    private static WireCounts plus(WireCounts a, WireCounts b) {
        return new WireCounts(
                a.sentences() + b.sentences(),
                a.accepted() + b.accepted(),
                a.ignored() + b.ignored(),
                a.rejectedChecksum() + b.rejectedChecksum(),
                a.rejectedMalformed() + b.rejectedMalformed(),
                a.rejectedTooLong() + b.rejectedTooLong(),
                a.otherLines() + b.otherLines(),
                a.otherBytes() + b.otherBytes());
    }

    /** What the decoders counted since the first event, restarts notwithstanding. */
    public WireCounts wire() {
        return plus(earlierLives, monitor.wire());
    }

    /** How often the core was started anew since the first event. */
    public long restarts() {
        return restarts;
    }

    /** How many messages were published. */
    public long messages() {
        return digest.messages();
    }

    /** SHA-256 of the messages so far, see {@link OutputDigest}. */
    public String digest() {
        return digest.hex();
    }
}
