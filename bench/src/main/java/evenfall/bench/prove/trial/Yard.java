package evenfall.bench.prove.trial;

import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sim.chance.Chance;
import evenfall.sim.feed.VirtualPort;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HubClock;
import evenfall.sim.sensor.PressureTransmitter;
import evenfall.sim.sensor.PulseMeter;
import evenfall.sim.sensor.Scene;
import evenfall.sim.sensor.SensorHub;
import evenfall.sim.wire.Uart;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;

/** The simulated machine in its yard, running in real time on a thread of its own. All of it is invented. */
final class Yard implements AutoCloseable {
    private static final int BAUD = 115_200;
    private static final long STEP_US = 5_000;
    private static final double GROUND_M = 1.1;

    /** A board under a sensor reaches so far to either side, m. */
    private static final double BOARD_HALF_M = 0.4;

    final double pulsesPerL;
    final double pulsesPerM;
    final double airC;
    final List<Double> aboveOutletM = new ArrayList<>();

    private final VirtualPort hubPort;
    private final VirtualPort receiverPort;
    private final VirtualPort noisePort;
    private final SensorHub hub;
    private final GnssReceiver receiver;
    private final PulseMeter flow;
    private final PulseMeter wheel;
    private final Chance noise;
    private final Thread thread;
    private final Now now = new Now();
    private volatile boolean stopped;

    private double flowM3ps;
    private double passedM3;
    private double speedMps;
    private double drivenM;
    private double slip;
    private double boardAtM = Double.NaN;
    private double boardHeightM;

    Yard(long seed, Rig rig) throws IOException {
        Chance chance = Chance.stream(seed, "yard");
        pulsesPerL = 100 + 100 * chance.nextDouble();
        pulsesPerM = 20 + 10 * chance.nextDouble();
        airC = 5 + 20 * chance.nextDouble();
        hubPort = VirtualPort.open();
        receiverPort = VirtualPort.open();
        noisePort = VirtualPort.open();
        noise = Chance.stream(seed, "noise");
        flow = new PulseMeter(1000 * pulsesPerL, 0.1, 0, Chance.stream(seed, "flow meter"));
        wheel = new PulseMeter(pulsesPerM, 0.05, 0, Chance.stream(seed, "wheel"));
        List<SensorHub.Echo> echoes = new ArrayList<>();
        for (Rig.Height height : rig.sensors().heights()) {
            double aboveM = 0.05 + 0.15 * chance.nextDouble();
            aboveOutletM.add(aboveM);
            EchoSensor.Spec spec = new EchoSensor.Spec(0.004, 0.10, 3.0, 0.6, 0.003);
            echoes.add(new SensorHub.Echo(
                    height.rightM(), new EchoSensor(spec, aboveM, Chance.stream(seed, "echo " + height.name()))));
        }
        hub = new SensorHub(
                new SensorHub.Spec(new HubClock(4_290_000_000L, 20), 4, 10_203, 2_000),
                new Uart("hub", BAUD, (timeUs, port, bytes) -> hubPort.write(bytes)),
                Optional.of(flow),
                Optional.of(wheel),
                echoes,
                Optional.of(new PressureTransmitter(
                        new PressureTransmitter.Spec(0.004, 0.020, 0, 1e6, 0, 500), Chance.stream(seed, "pressure"))),
                Optional.of(new AirThermometer(
                        new AirThermometer.Spec(0.8 * (2 * chance.nextDouble() - 1), 0.05),
                        Chance.stream(seed, "air"))),
                Optional.empty(),
                false,
                Chance.stream(seed, "hub"));
        receiver = new GnssReceiver(
                GnssReceiver.Spec.usual(),
                new Uart("gnss", BAUD, (timeUs, port, bytes) -> receiverPort.write(bytes)),
                Chance.stream(seed, "receiver"));
        thread = new Thread(this::live, "trial-yard");
        thread.setDaemon(true);
        thread.start();
    }

    /** What the scenario's installer believes of the machine, on this yard's ports. */
    Rig rig(Scenario scenario) throws ConfigException {
        String text = scenario.rigYaml(
                Map.of("hub", hubDevice(), "gnss", receiverDevice()), "127.0.0.1", 1883, Optional.empty());
        return RigFile.parse("the yard's rig", text, Path.of("."));
    }

    String hubDevice() {
        return hubPort.path().toString();
    }

    String receiverDevice() {
        return receiverPort.path().toString();
    }

    String noiseDevice() {
        return noisePort.path().toString();
    }

    private void live() {
        long beginNs = System.nanoTime();
        for (long timeUs = 0; !stopped; timeUs += STEP_US) {
            long waitNs = beginNs + 1000 * timeUs - System.nanoTime();
            if (waitNs > 0) {
                LockSupport.parkNanos(waitNs);
            }
            step(timeUs);
        }
    }

    private synchronized void step(long timeUs) {
        double seconds = STEP_US * 1e-6;
        // What is said at a moment is what came before it; the step that begins now is not yet.
        hub.at(timeUs, now);
        receiver.at(timeUs, now);
        flow.pass((double) timeUs, STEP_US, flowM3ps * seconds);
        passedM3 += flowM3ps * seconds;
        wheel.pass((double) timeUs, STEP_US, speedMps * seconds * (1 - slip));
        drivenM += speedMps * seconds;
        if (timeUs % 100_000 == 0) {
            noisePort.write(noiseBytes());
        }
    }

    private byte[] noiseBytes() {
        byte[] bytes = new byte[20];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (0x80 | noise.nextInt(128));
        }
        return bytes;
    }

    /** What nobody has heard so far is gone, as on a port that nobody had open. */
    void discardUnheard() {
        hubPort.discardUnread();
        receiverPort.discardUnread();
        noisePort.discardUnread();
    }

    synchronized void flow(double m3ps) {
        flowM3ps = m3ps;
    }

    synchronized void drive(double mps, double slipShare) {
        speedMps = mps;
        slip = slipShare;
    }

    /** Litres that have passed, and metres driven, since they were last asked for. */
    synchronized double takePassedM3() {
        double passed = passedM3;
        passedM3 = 0;
        return passed;
    }

    synchronized double drivenM() {
        return drivenM;
    }

    synchronized double takeDrivenM() {
        double driven = drivenM;
        drivenM = 0;
        return driven;
    }

    /** A board so far under the outlets at a place along the boom. */
    synchronized void board(double rightM, double heightM) {
        boardAtM = rightM;
        boardHeightM = heightM;
    }

    synchronized void noBoard() {
        boardAtM = Double.NaN;
    }

    /** The scene as the sensors see it; asked within a step only. */
    private final class Now implements Scene {
        @Override
        public double heightAtM(double rightM) {
            return Math.abs(rightM - boardAtM) < BOARD_HALF_M ? boardHeightM : GROUND_M;
        }

        @Override
        public double pressurePa() {
            return flowM3ps > 0 ? 2e5 : 0;
        }

        @Override
        public long sectionMask() {
            return 0;
        }

        @Override
        public double airC() {
            return airC;
        }

        @Override
        public double speedMps() {
            return speedMps;
        }

        @Override
        public double xM() {
            return drivenM;
        }
    }

    @Override
    public void close() throws IOException {
        stopped = true;
        try {
            thread.join(1000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        hubPort.close();
        receiverPort.close();
        noisePort.close();
    }
}
