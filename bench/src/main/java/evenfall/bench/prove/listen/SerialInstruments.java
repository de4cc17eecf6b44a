package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Step;
import evenfall.rig.Rig;
import evenfall.serial.PortListener;
import evenfall.serial.SerialLibrary;
import evenfall.serial.SerialPortReader;
import evenfall.wire.SentenceStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Real serial ports, or pseudo-terminals by their path. Opened for each recording and closed after it. */
public final class SerialInstruments implements Instruments {
    private static final int USUAL_BAUD = 115_200;

    /** Long enough for a hub that has to start when its port opens, and for a receiver at once a second. */
    private static final double PATIENCE_S = 4;

    /** How long a line may be silent at first, s. */
    private static final double START_S = 2;

    /** After the end a count may still come to rest: dribble, and the half second that tells it. */
    private static final double REST_PATIENCE_S = 2;

    private final Optional<Rig> rig;
    private final @Nullable String device;
    private final int baud;

    /**
     * @param rig whose ports are heard
     * @param device the one port to hear instead, or null
     * @param baud of that port
     */
    public SerialInstruments(Optional<Rig> rig, @Nullable String device, int baud) {
        this.rig = rig;
        this.device = device;
        this.baud = baud;
    }

    /** Ports by the rig file or by hand, each once, for a signal; none where nobody said which. */
    private List<Rig.Port> portsFor(Step.Signal signal) {
        if (signal instanceof Step.Listening one) {
            return List.of(new Rig.Port("line", one.device(), one.baud()));
        }
        if (device != null) {
            return List.of(new Rig.Port("port", device, baud));
        }
        if (rig.isEmpty()) {
            return List.of();
        }
        Set<String> names = new LinkedHashSet<>();
        Rig.Sensors sensors = rig.get().sensors();
        if (signal instanceof Step.Echoing) {
            sensors.heightsPort().ifPresent(names::add);
        } else if (signal instanceof Step.Counting counting) {
            if (counting == Step.Counting.FLOW) {
                sensors.flow().map(Rig.Flow::port).ifPresent(names::add);
            } else if (counting != Step.Counting.RECEIVER) {
                // A wheel that the rig file does not name yet is wired to the hub, as the flow meter is.
                sensors.wheel()
                        .map(Rig.Wheel::port)
                        .or(() -> sensors.flow().map(Rig.Flow::port))
                        .ifPresent(names::add);
            }
            if (counting == Step.Counting.RECEIVER || counting == Step.Counting.WHEEL_AND_RECEIVER) {
                sensors.speedPort().ifPresent(names::add);
            }
        }
        return rig.get().ports().stream().filter(p -> names.contains(p.name())).toList();
    }

    @Override
    public boolean canRecord(Step.Signal signal) {
        return signal instanceof Step.Listing || !portsFor(signal).isEmpty();
    }

    @Override
    public Session start(Step.Signal signal) throws PortTroubleException, InterruptedException {
        String trouble = SerialLibrary.load();
        if (trouble != null) {
            throw new PortTroubleException(trouble);
        }
        if (signal instanceof Step.Listing) {
            return new Listed(ports());
        }
        Tape tape = signal instanceof Step.Counting counting
                ? new CountTape(counting)
                : signal instanceof Step.Echoing ? new EchoTape() : new LineTape();
        double seconds = signal instanceof Step.Echoing echoing
                ? echoing.seconds()
                : signal instanceof Step.Listening listening ? listening.seconds() : 0;
        Heard heard = new Heard(tape, seconds, portsFor(signal));
        try {
            heard.begin();
            return heard;
        } catch (PortTroubleException | InterruptedException | RuntimeException e) {
            heard.close();
            throw e;
        }
    }

    /** The port given, else those of the system and of the rig file. */
    private Recording.Ports ports() {
        SortedMap<String, String> found = new TreeMap<>();
        if (device != null) {
            found.put(device, "given by hand");
        } else {
            found.putAll(SerialLibrary.ports());
            rig.ifPresent(r -> r.ports().forEach(p -> found.putIfAbsent(p.device(), "of the rig file")));
        }
        List<Recording.Port> ports = new ArrayList<>();
        for (Map.Entry<String, String> entry : found.entrySet()) {
            ports.add(new Recording.Port(entry.getKey(), entry.getValue()));
        }
        return new Recording.Ports(ports);
    }

    /** The answer that needs no listening. */
    private record Listed(Recording.Ports ports) implements Session {
        @Override
        public double seconds() {
            return 1e-3;
        }

        @Override
        public void mark() {
            // Nothing happens over time.
        }

        @Override
        public String soFar() {
            int n = ports.found().size();
            return n == 1 ? "1 port" : n + " ports";
        }

        @Override
        public Recording finish() {
            return ports;
        }

        @Override
        public void close() {
            // Holds nothing.
        }
    }

    /** Ports under way, their bytes decoded on their own threads, one at a time. */
    private static final class Heard implements Session, PortListener {
        private Tape tape;
        private final double seconds;
        private final List<Rig.Port> ports;
        private final List<SerialPortReader> readers = new ArrayList<>();
        private final Map<String, SentenceStream> streams = new TreeMap<>();
        private long beginNs = System.nanoTime();
        private int open;
        private @Nullable String trouble;

        Heard(Tape tape, double seconds, List<Rig.Port> ports) {
            this.tape = tape;
            this.seconds = seconds;
            this.ports = ports;
        }

        synchronized void begin() throws PortTroubleException, InterruptedException {
            for (Rig.Port port : ports) {
                streams.put(port.name(), new SentenceStream(tape));
                readers.add(new SerialPortReader(port, this));
            }
            readers.forEach(SerialPortReader::start);
            long deadline = System.nanoTime() + (long) (1e9 * PATIENCE_S);
            while (trouble == null && !(open == ports.size() && tape.heard())) {
                long leftMs = (deadline - System.nanoTime()) / 1_000_000;
                if (leftMs <= 0) {
                    throw new PortTroubleException(
                            names() + ": no " + tape.wanted() + " within " + (int) PATIENCE_S + " s");
                }
                wait(leftMs);
            }
            failOnTrouble();
            if (tape instanceof LineTape) {
                awaitFirstBytes();
            }
        }

        /** Some hubs start when their port opens; what counts begins with the first bytes, if any come. */
        private void awaitFirstBytes() throws PortTroubleException, InterruptedException {
            long deadline = System.nanoTime() + (long) (1e9 * START_S);
            while (trouble == null && tape instanceof LineTape line && line.isSilent()) {
                long leftMs = (deadline - System.nanoTime()) / 1_000_000;
                if (leftMs <= 0) {
                    break;
                }
                wait(leftMs);
            }
            failOnTrouble();
            tape = new LineTape();
            ports.forEach(port -> streams.put(port.name(), new SentenceStream(tape)));
            beginNs = System.nanoTime();
        }

        private String names() {
            return String.join(", ", ports.stream().map(Rig.Port::device).toList());
        }

        private void failOnTrouble() throws PortTroubleException {
            if (trouble != null) {
                throw new PortTroubleException(trouble);
            }
        }

        private double nowS() {
            return (System.nanoTime() - beginNs) * 1e-9;
        }

        @Override
        public synchronized void bytes(String port, byte[] chunk) {
            SentenceStream stream = streams.get(port);
            if (stream == null) {
                return;
            }
            tape.now(nowS());
            stream.accept(chunk, 0, chunk.length);
            if (tape instanceof LineTape line) {
                line.counted(chunk.length, stream.counts());
            }
            notifyAll();
        }

        @Override
        public synchronized void found(String port) {
            open++;
            if (open == ports.size()) {
                beginNs = System.nanoTime();
            }
            notifyAll();
        }

        @Override
        public synchronized void lost(String port, String why) {
            trouble = why.startsWith("it ") ? names() + ": " + why : why;
            notifyAll();
        }

        @Override
        public void refused(String port, String why) {
            lost(port, why);
        }

        @Override
        public double seconds() {
            return seconds;
        }

        @Override
        public synchronized void mark() {
            if (tape instanceof EchoTape echoes) {
                echoes.markS = nowS();
            }
        }

        @Override
        public synchronized String soFar() {
            return tape.soFar();
        }

        @Override
        public synchronized double amount() {
            return tape.amount();
        }

        @Override
        public synchronized Recording finish() throws PortTroubleException, InterruptedException {
            try {
                long deadline = System.nanoTime() + (long) (1e9 * REST_PATIENCE_S);
                while (trouble == null && !tape.atRest()) {
                    long leftMs = (deadline - System.nanoTime()) / 1_000_000;
                    if (leftMs <= 0) {
                        break;
                    }
                    wait(leftMs);
                }
                failOnTrouble();
                return tape.recording(nowS());
            } finally {
                close();
            }
        }

        @Override
        public synchronized void close() {
            streams.clear();
            readers.forEach(SerialPortReader::stop);
            for (SerialPortReader reader : readers) {
                try {
                    // The reader's thread may be waiting for this lock to hand over its last bytes.
                    long deadline = System.nanoTime() + 1_000_000_000L;
                    while (!reader.await(Duration.ofMillis(1)) && System.nanoTime() < deadline) {
                        wait(20);
                    }
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    break;
                }
            }
            readers.clear();
        }
    }

    /** The rate of the wire's document. */
    public static int usualBaud() {
        return USUAL_BAUD;
    }
}
