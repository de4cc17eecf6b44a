package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.trial.LiveYard;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.serial.PortListener;
import evenfall.serial.SerialLibrary;
import evenfall.serial.SerialPortReader;
import evenfall.wire.SentenceStream;
import evenfall.wire.WireCounts;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import org.jspecify.annotations.Nullable;

/** Ports that are watched for a page: pulled and put back as they are. Safe on several threads; sends nothing. */
final class SignalView implements PortListener {
    private static final class Line {
        final Rig.Port port;
        final SignalTape.PortTape tape;
        final SentenceStream stream;
        boolean open;

        @Nullable
        String why = "not opened yet";

        long heardUs = -1;

        Line(Rig.Port port, SignalTape.PortTape tape) {
            this.port = port;
            this.tape = tape;
            this.stream = new SentenceStream(tape);
        }
    }

    private final String id;
    private final boolean simulated;
    private final @Nullable LiveYard yard;
    private final Optional<Rig> rig;
    private final SignalTape tape;
    private final Map<String, Line> lines = new LinkedHashMap<>();
    private final List<SerialPortReader> readers = new ArrayList<>();
    private final long beginNs = System.nanoTime();
    private long usedNs = System.nanoTime();
    private @Nullable String ended;

    private SignalView(String id, @Nullable LiveYard yard, Optional<Rig> rig, List<Rig.Port> ports) {
        this.id = id;
        this.yard = yard;
        this.simulated = yard != null;
        this.rig = rig;
        this.tape = new SignalTape(rig);
        for (Rig.Port port : ports) {
            lines.put(port.name(), new Line(port, tape.port(port.name())));
        }
    }

    static SignalView simulated(String id) throws ConfigException, IOException {
        LiveYard yard = new LiveYard(ThreadLocalRandom.current().nextLong(1, 1_000_000));
        return of(new SignalView(id, yard, Optional.of(yard.rig()), yard.rig().ports()));
    }

    static SignalView of(String id, Source source, Optional<Rig> rig, List<Rig.Port> ports) {
        return of(new SignalView(id, null, rig, ports));
    }

    private static SignalView of(SignalView view) {
        view.begin();
        return view;
    }

    private synchronized void begin() {
        String trouble = SerialLibrary.load();
        if (trouble != null) {
            ended = trouble;
            return;
        }
        for (Line line : lines.values()) {
            SerialPortReader reader = new SerialPortReader(line.port, this);
            readers.add(reader);
            reader.start();
        }
    }

    String id() {
        return id;
    }

    /** Whether it holds a real port. */
    boolean isReal() {
        return !simulated;
    }

    synchronized double idleS() {
        return (System.nanoTime() - usedNs) * 1e-9;
    }

    private long nowUs() {
        return (System.nanoTime() - beginNs) / 1000;
    }

    @Override
    public synchronized void bytes(String port, byte[] chunk) {
        Line line = lines.get(port);
        if (line == null || ended != null) {
            return;
        }
        WireCounts before = line.stream.counts();
        line.tape.now(nowUs());
        line.stream.accept(chunk, 0, chunk.length);
        WireCounts after = line.stream.counts();
        if (after.accepted() + after.ignored() > before.accepted() + before.ignored()) {
            line.heardUs = nowUs();
        }
    }

    @Override
    public synchronized void found(String port) {
        state(port, true, null);
    }

    @Override
    public synchronized void lost(String port, String why) {
        state(port, false, why);
    }

    @Override
    public synchronized void refused(String port, String why) {
        Line line = lines.get(port);
        boolean spoke = line != null && line.heardUs >= 0;
        state(port, false, spoke ? "it was unplugged, and " + why : why);
    }

    private void state(String port, boolean open, @Nullable String why) {
        Line line = lines.get(port);
        if (line != null) {
            line.open = open;
            line.why = why;
            if (!open) {
                line.stream.cut();
            }
        }
    }

    synchronized ObjectNode view() {
        usedNs = System.nanoTime();
        long nowUs = nowUs();
        ObjectNode json = Json.object();
        json.put("id", id);
        json.put("simulated", simulated);
        json.put("rig", rig.map(Rig::name).orElse(null));
        json.put("ended", ended);
        ArrayNode ports = json.putArray("ports");
        for (Line line : lines.values()) {
            WireCounts counts = line.stream.counts();
            ObjectNode one = ports.addObject();
            one.put("name", line.port.name());
            one.put("device", line.port.device());
            one.put("open", line.open);
            one.put("why", line.why);
            one.set("age_s", Json.number(line.heardUs < 0 ? null : (Double) ((nowUs - line.heardUs) * 1e-6), 2));
            one.put("accepted", counts.accepted());
            one.put("ignored", counts.ignored());
            one.put("rejected", counts.rejected());
            one.put("rejected_checksum", counts.rejectedChecksum());
            one.put("rejected_malformed", counts.rejectedMalformed());
            one.put("rejected_too_long", counts.rejectedTooLong());
            one.put("other_lines", counts.otherLines());
        }
        tape.put(json.putArray("signals"), nowUs, this::gone);
        return json;
    }

    private @Nullable String gone(String port) {
        Line line = lines.get(port);
        return ended != null ? ended : line == null || line.open ? null : line.heardUs >= 0 ? "unplugged" : line.why;
    }

    /** Lets go of the ports. */
    void end(String why) {
        synchronized (this) {
            if (ended != null) {
                return;
            }
            ended = why;
            readers.forEach(SerialPortReader::stop);
        }
        try {
            for (SerialPortReader reader : readers) {
                // Outside the lock: the reader may be waiting for it to hand over its last bytes.
                reader.await(java.time.Duration.ofSeconds(1));
            }
            if (yard != null) {
                yard.close();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            // A virtual port that does not close is the kernel's to clear away.
            return;
        }
    }
}
