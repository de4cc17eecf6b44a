package evenfall.app;

import evenfall.message.Delivery;
import evenfall.message.Messages;
import evenfall.message.Payload;
import evenfall.message.Publisher;
import evenfall.message.Status;
import evenfall.message.Topics;
import evenfall.monitor.Monitor;
import evenfall.mqtt.MqttPublisher;
import evenfall.page.CabPage;
import evenfall.replay.CoreBrokenException;
import evenfall.replay.SteadyMonitor;
import evenfall.rig.Rig;
import evenfall.serial.SerialPortReader;
import evenfall.trace.TraceEvent;
import java.io.IOException;
import java.io.Writer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The running box: a reading thread for each port, one thread that feeds the core, one that sends, one that prints. Bounded queues
 * lie between them, and only the core's thread is waited for by none.
 */
final class Controller {
    private static final int INBOX_EVENTS = 2000;
    private static final long IDLE_US = 50_000;
    private static final long STATUS_US = 10_000_000;
    private static final Duration READERS_STOP = Duration.ofMillis(300);
    private static final Duration CORE_STOP = Duration.ofMillis(600);
    private static final Duration SENDER_STOP = Duration.ofMillis(600);
    private static final Duration CONSOLE_STOP = Duration.ofMillis(200);

    private final String version;
    private final Console console;
    private final LongSupplier clockUs;
    private final Topics topics;
    private final Messages messages;
    private final MqttPublisher mqtt;
    private final Inbox inbox;
    private final List<SerialPortReader> readers = new ArrayList<>();
    private final Recorder recorder;
    private final @Nullable CabPage page;
    private final SteadyMonitor core;
    private final Thread coreThread = new Thread(this::run, "core");
    private final AtomicLong changes = new AtomicLong();
    private volatile @Nullable String fault;
    private volatile int exitStatus;
    private long changesTold;
    private long statusToldUs;
    private @Nullable String brokerTold;

    /**
     * @param trace where to record the inputs; null for nowhere
     * @param clockUs µs since the box started; monotonic
     */
    Controller(Rig rig, String version, @Nullable Writer trace, Console console, boolean quiet, LongSupplier clockUs) {
        this.version = version;
        this.console = console;
        this.clockUs = clockUs;
        this.topics = new Topics(rig.name());
        this.messages = new Messages(rig);
        this.mqtt = new MqttPublisher(
                rig.broker(), "evenfall-" + rig.name(), topics, () -> messages.gone(clockUs.getAsLong()));
        this.inbox = new Inbox(rig.ports(), INBOX_EVENTS, clockUs, this::portChanged);
        this.brokerTold = mqtt.whyDown();
        this.recorder = new Recorder(
                trace, "evenfall trace of rig " + rig.name() + ", recorded by version " + version, this::complain);
        this.page = rig.page().map(wanted -> page(rig, wanted)).orElse(null);
        this.core = new SteadyMonitor(
                rig,
                everywhere(),
                new ConsoleOutputs(console, mqtt::whyDown, quiet),
                (timeUs, unexpected) -> unexpected("the core was started anew after", unexpected));
        rig.ports().forEach(port -> readers.add(new SerialPortReader(port, inbox)));
    }

    /** A page that cannot be had is no reason to leave the field unwatched. */
    private @Nullable CabPage page(Rig rig, Rig.Page wanted) {
        try {
            return new CabPage(rig, wanted, inbox::command);
        } catch (IOException e) {
            complain("the page cannot be served on " + wanted.host() + ":" + wanted.port() + " (" + e.getMessage()
                    + ")");
            return null;
        }
    }

    private Publisher everywhere() {
        if (page == null) {
            return mqtt;
        }
        Publisher board = page.board();
        return (topic, payload, retained, delivery) -> {
            mqtt.publish(topic, payload, retained, delivery);
            board.publish(topic, payload, retained, delivery);
        };
    }

    void start() {
        tellStatus(Status.State.RUNNING);
        if (page != null) {
            page.start();
            console.line(ConsoleText.note(clockUs.getAsLong(), "page on port " + page.port()));
        }
        mqtt.start();
        readers.forEach(SerialPortReader::start);
        coreThread.start();
    }

    /** Waits until the core's thread has ended: after {@link #stop}, or because it cannot go on. */
    void await() throws InterruptedException {
        coreThread.join();
    }

    /** 0, or 1 when the core could not go on. */
    int exitStatus() {
        return exitStatus;
    }

    /** Stops reading, lets the core finish what was read, says so to the broker, and parts from it. Takes less than 2 s. */
    void stop() throws InterruptedException {
        readers.forEach(SerialPortReader::stop);
        long startUs = clockUs.getAsLong();
        for (SerialPortReader reader : readers) {
            long leftMs = READERS_STOP.toMillis() - (clockUs.getAsLong() - startUs) / 1000;
            reader.await(Duration.ofMillis(Math.max(1, leftMs)));
        }
        inbox.close();
        coreThread.join(CORE_STOP.toMillis());
        if (page != null) {
            page.close();
        }
        mqtt.close(SENDER_STOP);
        console.close(CONSOLE_STOP);
    }

    private void run() {
        try {
            while (!inbox.isDone()) {
                Inbox.Found found = inbox.take(idleMs(clockUs.getAsLong()));
                if (found.event() == null) {
                    core.advanceTo(found.timeUs());
                } else {
                    feed(found.event());
                }
                keepHouse(found.timeUs());
            }
            long endUs = inbox.take(0).timeUs();
            feed(new TraceEvent.End(endUs));
            console.line(ConsoleText.note(
                    endUs, "stopped: " + core.messages() + " messages, SHA-256 of them " + core.digest()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (CoreBrokenException e) {
            exitStatus = 1;
            unexpected("gave up:", e);
        } catch (Throwable e) {
            exitStatus = 1;
            unexpected("gave up after", e);
        } finally {
            recorder.close();
            tellStatus(Status.State.STOPPED);
        }
    }

    /** Until the core's next moment of judgement, so that what it says is not late by the length of a nap. */
    private static long idleMs(long nowUs) {
        long toGridUs = Monitor.GRID_US - nowUs % Monitor.GRID_US;
        return Math.min(IDLE_US, toGridUs) / 1000 + 1;
    }

    private void feed(TraceEvent event) {
        recorder.record(event);
        core.accept(event);
    }

    private void keepHouse(long nowUs) {
        recorder.flushWhenDue(nowUs);
        String whyNoBroker = mqtt.whyDown();
        if (!Objects.equals(whyNoBroker, brokerTold)) {
            brokerTold = whyNoBroker;
            console.line(ConsoleText.note(nowUs, whyNoBroker == null ? "broker up" : "broker down: " + whyNoBroker));
        }
        long changesNow = changes.get();
        if (changesNow != changesTold || nowUs - statusToldUs >= STATUS_US) {
            changesTold = changesNow;
            statusToldUs = nowUs;
            tellStatus(Status.State.RUNNING);
        }
    }

    private void portChanged(long timeUs, String port, @Nullable String why) {
        console.line(ConsoleText.note(timeUs, "port " + port + (why == null ? " open" : " not there: " + why)));
        changes.incrementAndGet();
    }

    private void complain(String text) {
        fault = text;
        console.line(ConsoleText.note(clockUs.getAsLong(), text));
        changes.incrementAndGet();
    }

    /** The one place where what should not happen is made known. Safe on any thread. */
    void unexpected(String what, Throwable unexpected) {
        StackTraceElement[] trace = unexpected.getStackTrace();
        complain(what + " " + unexpected + (trace.length == 0 ? "" : " at " + trace[0]));
    }

    private void tellStatus(Status.State state) {
        Status status = new Status(
                state,
                clockUs.getAsLong(),
                version,
                inbox.ports(),
                recorder.state(),
                core.restarts(),
                fault,
                mqtt.dropped());
        mqtt.publish(topics.status(), Payload.of(messages.status(status)), true, Delivery.LATEST);
    }
}
