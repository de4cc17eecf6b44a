package evenfall.monitor;

import evenfall.judge.Situation;
import evenfall.rig.Rig;
import evenfall.sense.AirSense;
import evenfall.sense.BoomMotion;
import evenfall.sense.FlowSense;
import evenfall.sense.HeightDoubts;
import evenfall.sense.HeightReadings;
import evenfall.sense.HeightSense;
import evenfall.sense.PositionSense;
import evenfall.sense.PressureSense;
import evenfall.sense.Quantity;
import evenfall.sense.SectionSense;
import evenfall.sense.SpeedSense;
import evenfall.sense.TankSense;
import evenfall.sense.Unknown;
import evenfall.sense.WheelSense;
import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** The senses of a rig, fed by its ports. */
final class Inputs {
    /** A receiver may speak once a second: it is allowed one period more than the hub. */
    private static final long RECEIVER_PERIOD_US = 1_000_000;

    private static final Quantity NO_TANK = Quantity.unknown(Unknown.NOT_FITTED, -1);

    /** Flow, pressure, wheel, sections and tank. */
    private static final int OTHER_SENSORS = 5;

    private final Rig rig;
    private final List<PortInput> ports = new ArrayList<>();
    private final @Nullable FlowSense flow;
    private final @Nullable PressureSense pressure;
    private final List<HeightSense> heights = new ArrayList<>();
    private final HeightDoubts doubts;
    private final BoomMotion motion;
    private final AirSense air;
    private final SpeedSense speed;
    private final @Nullable WheelSense wheel;
    private final SectionSense sections = new SectionSense();
    private final @Nullable TankSense tank;
    private final PositionSense position = new PositionSense();
    private final List<String> portNames;
    private final long silenceUs;

    /**
     * @param startUs from when on a port that says nothing is silent, µs
     */
    Inputs(Rig rig, long startUs) {
        this.rig = rig;
        Rig.Sensors sensors = rig.sensors();
        portNames = portsInUse(sensors);
        silenceUs = Math.round(rig.limits().silenceS() * 1e6);
        flow = sensors.flow().map(f -> new FlowSense(f.pulsesPerM3())).orElse(null);
        pressure = sensors.pressure().map(PressureSense::new).orElse(null);
        for (Rig.Height height : sensors.heights()) {
            heights.add(new HeightSense(height.aboveOutletM()));
        }
        motion = new BoomMotion(
                sensors.heights(),
                heights,
                rig.boom().hingeM(),
                0.5 * rig.boom().widthM());
        doubts = new HeightDoubts(
                heights,
                sensors.heights().stream().mapToDouble(Rig.Height::rightM).toArray(),
                rig.boom().hingeM());
        air = new AirSense(sensors.air().fixedC());
        speed = new SpeedSense(silenceUs + RECEIVER_PERIOD_US);
        wheel = sensors.wheel().map(w -> new WheelSense(w.pulsesPerM(), speed)).orElse(null);
        tank = sensors.tank().map(TankSense::new).orElse(null);
        PortInput.Senses all =
                new PortInput.Senses(flow, pressure, heights, doubts, motion, air, speed, wheel, sections, tank);
        for (Rig.Port port : rig.ports()) {
            ports.add(new PortInput(port.name(), port.baud(), startUs, rig, all));
        }
        for (PortInput input : ports) {
            if (isReceiver(input.name())) {
                input.locate(position);
            }
        }
    }

    void bytes(long timeUs, String port, byte[] bytes) {
        PortInput input = find(port);
        if (input == null) {
            // A trace may hold ports that this rig does not know; what they said is still counted.
            input = PortInput.ofNobody(port, timeUs, rig);
            ports.add(input);
        }
        input.bytes(timeUs, bytes);
    }

    void portLost(String port) {
        PortInput input = find(port);
        if (input != null) {
            input.unplugged(true);
        }
    }

    void portFound(String port) {
        PortInput input = find(port);
        if (input != null) {
            input.unplugged(false);
        }
    }

    /** Bytes are missing: what stands half read must not be joined to what comes. */
    void cut(String port) {
        PortInput input = find(port);
        if (input != null) {
            input.cut();
        }
    }

    private @Nullable PortInput find(String port) {
        for (PortInput input : ports) {
            if (input.name().equals(port)) {
                return input;
            }
        }
        return null;
    }

    WireCounts wire() {
        WireCounts sum = ports.get(0).counts();
        for (int i = 1; i < ports.size(); i++) {
            sum = sum.plus(ports.get(i).counts());
        }
        return sum;
    }

    /** Names of the ports that some sensor needs, in alphabetical order. */
    List<String> portNames() {
        return portNames;
    }

    private static List<String> portsInUse(Rig.Sensors sensors) {
        TreeSet<String> names = new TreeSet<>();
        sensors.flow().ifPresent(f -> names.add(f.port()));
        sensors.pressure().ifPresent(p -> names.add(p.port()));
        sensors.heightsPort().ifPresent(names::add);
        sensors.air().port().ifPresent(names::add);
        sensors.speedPort().ifPresent(names::add);
        sensors.wheel().ifPresent(w -> names.add(w.port()));
        sensors.sectionsPort().ifPresent(names::add);
        sensors.tank().ifPresent(t -> names.add(t.port()));
        return List.copyOf(names);
    }

    /** Index of the receiver's port among {@link #portNames}; -1 without a receiver. */
    int speedPort() {
        return rig.sensors().speedPort().map(portNames::indexOf).orElse(-1);
    }

    List<Situation.PortState> portStates(long nowUs) {
        List<Situation.PortState> states = new ArrayList<>(portNames.size());
        for (String name : portNames) {
            PortInput input = find(name);
            if (input == null) {
                throw new IllegalStateException("a sensor's port is not among the rig's ports: " + name);
            }
            long allowedUs = silenceUs + (isReceiver(name) ? RECEIVER_PERIOD_US : 0);
            states.add(new Situation.PortState(
                    name,
                    nowUs - input.heardUs(),
                    allowedUs,
                    input.hasSpoken(),
                    input.isUnplugged(),
                    input.sinceRestartUs(nowUs)));
        }
        return states;
    }

    private boolean isReceiver(String port) {
        return rig.sensors().speedPort().filter(port::equals).isPresent();
    }

    List<Situation.SensorState> sensorStates(long nowUs) {
        return sensorStates(nowUs, flowM3ps(nowUs), pressurePa(nowUs), heightsM(nowUs));
    }

    /** As {@link #sensorStates(long)}, where these have been asked for at the same moment already. */
    List<Situation.SensorState> sensorStates(
            long nowUs, Quantity flowM3ps, Quantity pressurePa, List<Quantity> heightsM) {
        List<Situation.SensorState> states = new ArrayList<>(heights.size() + OTHER_SENSORS);
        Rig.Sensors sensors = rig.sensors();
        if (sensors.flow().isPresent()) {
            states.add(state("flow", sensors.flow().get().port(), flowM3ps));
        }
        if (sensors.pressure().isPresent()) {
            states.add(state("pressure", sensors.pressure().get().port(), pressurePa));
        }
        if (sensors.heightsPort().isPresent()) {
            for (int i = 0; i < heights.size(); i++) {
                states.add(state(
                        sensors.heights().get(i).name(), sensors.heightsPort().get(), heightsM.get(i)));
            }
        }
        if (wheel != null) {
            states.add(state("wheel", sensors.wheel().orElseThrow().port(), wheel.speedMps(nowUs, silenceUs)));
        }
        if (sensors.sectionsPort().isPresent()) {
            states.add(state("sections", sensors.sectionsPort().get(), sections.known(nowUs, silenceUs)));
        }
        if (sensors.tank().isPresent()) {
            states.add(state("tank", sensors.tank().get().port(), tankM3(nowUs)));
        }
        return states;
    }

    private Situation.SensorState state(String name, String port, Quantity reading) {
        return new Situation.SensorState(name, portNames.indexOf(port), reading);
    }

    Quantity speedMps(long nowUs) {
        return rig.sensors().speedPort().isPresent() || wheel != null
                ? speed.speedMps(nowUs, silenceUs + RECEIVER_PERIOD_US)
                : Quantity.unknown(Unknown.NOT_FITTED, -1);
    }

    /**
     * Ground speed while the pulses came that the flow rests on. A receiver says its speed later than a meter its pulses; without
     * this a machine that slows down would seem to lay on too much.
     */
    double speedDuringFlowMps() {
        if (flow == null) {
            throw new IllegalStateException("no flow meter is fitted");
        }
        return speed.meanMps(flow.windowFromUs(), flow.windowToUs());
    }

    /** Where the receiver's antenna is; null where that is not known, for the reason of {@link #placeUnknown}. */
    PositionSense.@Nullable Fix fix(long nowUs) {
        return position.fix(nowUs, silenceUs + RECEIVER_PERIOD_US);
    }

    @Nullable
    Unknown placeUnknown(long nowUs) {
        return rig.sensors().speedPort().isPresent()
                ? position.unknown(nowUs, silenceUs + RECEIVER_PERIOD_US)
                : Unknown.NOT_FITTED;
    }

    Quantity flowM3ps(long nowUs) {
        return flow == null ? Quantity.unknown(Unknown.NOT_FITTED, -1) : flow.flowM3ps(nowUs, silenceUs);
    }

    /** What the tank holds by its gauge, m³. */
    Quantity tankM3(long nowUs) {
        return tank == null ? NO_TANK : tank.volumeM3(nowUs, silenceUs);
    }

    /** Volume by the meter since the first sentence, m³, as far as it is counted at all. */
    Quantity meteredM3(Quantity flowM3ps) {
        if (flow == null || tank == null) {
            return NO_TANK;
        }
        return flowM3ps.isKnown() ? Quantity.known(flow.volumeM3(), flowM3ps.ageUs()) : flowM3ps;
    }

    Quantity pressurePa(long nowUs) {
        return pressure == null ? Quantity.unknown(Unknown.NOT_FITTED, -1) : pressure.pressurePa(nowUs, silenceUs);
    }

    List<Quantity> heightsM(long nowUs) {
        List<Quantity> list = new ArrayList<>(heights.size());
        for (HeightSense height : heights) {
            list.add(height.heightM(nowUs, silenceUs));
        }
        return list;
    }

    /** The numbers of {@link #heightsM} and {@link #heightRatesMps}. */
    void readHeights(long nowUs, HeightReadings into) {
        for (int i = 0; i < heights.size(); i++) {
            heights.get(i).read(nowUs, silenceUs, into, i);
        }
    }

    /** How fast the height at each sensor changes, m/s; positive as it grows. Known where the height is. */
    List<Quantity> heightRatesMps(long nowUs) {
        List<Quantity> list = new ArrayList<>(heights.size());
        for (HeightSense height : heights) {
            list.add(height.rateMps(nowUs, silenceUs));
        }
        return list;
    }

    /** Whether a height sensor may be stuck, as far as that can be told so soon. */
    boolean isSuspect(int sensor) {
        return doubts.isSuspect(sensor);
    }

    /** How the boom moves, by all height sensors together. */
    BoomMotion motion() {
        return motion;
    }

    /** Other sections are on than before. */
    void otherOutlets() {
        if (pressure != null) {
            pressure.otherOutlets();
        }
    }

    /** Sets the senses beside one another that can tell of each other's faults. */
    void compare(Quantity flowM3ps) {
        if (pressure != null && flow != null) {
            pressure.beside(flowM3ps, flow.windowFromUs());
        }
    }

    /** Whether section switches are known; the number itself says nothing. */
    Quantity sectionsKnown(long nowUs) {
        return rig.sensors().sectionsPort().isPresent() ? sections.known(nowUs, silenceUs) : Quantity.known(1, 0);
    }

    boolean isOn(int section) {
        return rig.sensors().sectionsPort().isEmpty() || sections.isOn(section);
    }
}
