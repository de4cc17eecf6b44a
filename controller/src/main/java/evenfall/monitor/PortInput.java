package evenfall.monitor;

import evenfall.rig.Rig;
import evenfall.sense.AirSense;
import evenfall.sense.ArrivalClock;
import evenfall.sense.BoomMotion;
import evenfall.sense.FlowSense;
import evenfall.sense.HeightDoubts;
import evenfall.sense.HeightSense;
import evenfall.sense.PositionSense;
import evenfall.sense.PressureSense;
import evenfall.sense.SectionSense;
import evenfall.sense.SpeedSense;
import evenfall.sense.TankSense;
import evenfall.sense.WheelSense;
import evenfall.wire.AirTemperature;
import evenfall.wire.FlowPulses;
import evenfall.wire.Gga;
import evenfall.wire.HeightEchoes;
import evenfall.wire.HubIdentity;
import evenfall.wire.HubSentence;
import evenfall.wire.PressureCurrent;
import evenfall.wire.Rmc;
import evenfall.wire.SectionSwitches;
import evenfall.wire.SentenceHandler;
import evenfall.wire.SentenceStream;
import evenfall.wire.TankLevel;
import evenfall.wire.Vtg;
import evenfall.wire.WheelPulses;
import evenfall.wire.WireCounts;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One port: decodes its bytes, brings what they say to event time, and hands it to the sense that the rig says listens there. */
final class PortInput implements SentenceHandler {
    /** A hub's clock of 32 bits. */
    private static final long TICK_RANGE_US = 1L << 32;

    /** The hub's shortest sentence in ordinary work: a pressure with a young tick. */
    private static final int LEAST_CHARS = 23;

    private static final int BITS_A_CHAR = 10;

    /** A new boot count so soon after the clock began anew tells of the same restart; the hub says it once a second. */
    private static final long SAME_RESTART_US = 3_000_000;

    /** RMC and VTG of one burst. Our choice: below the distance of epochs at 10 Hz. */
    private static final long BURST_US = 50_000;

    /** The senses of a rig; each port takes those that listen there. */
    record Senses(
            @Nullable FlowSense flow,
            @Nullable PressureSense pressure,
            List<HeightSense> heights,
            HeightDoubts doubts,
            BoomMotion motion,
            AirSense air,
            SpeedSense speed,
            @Nullable WheelSense wheel,
            SectionSense sections,
            @Nullable TankSense tank) {}

    private final String name;
    private final SentenceStream stream;
    private final @Nullable FlowSense flow;
    private final @Nullable PressureSense pressure;
    private final List<HeightSense> heights;
    private final HeightDoubts doubts;
    private final BoomMotion motion;
    private final @Nullable SpeedSense speed;
    private final @Nullable WheelSense wheel;
    private final @Nullable SectionSense sections;
    private final @Nullable TankSense tank;
    private final AirSense air;
    private final boolean hearsAir;
    private final ArrivalClock hubClock;
    private final ArrivalClock utcClock = new ArrivalClock(0, 0);
    private long utcUs = Long.MIN_VALUE;
    private long saidUs = Long.MIN_VALUE / 2;
    private long boots = -1;
    private long restartedUs = Long.MIN_VALUE / 2;
    private @Nullable PositionSense position;
    private long nowUs;
    private long heardUs;
    private boolean unplugged;

    PortInput(String name, int baud, long startUs, Rig rig, Senses senses) {
        this.name = name;
        this.heardUs = startUs;
        this.stream = new SentenceStream(this);
        Rig.Sensors sensors = rig.sensors();
        this.flow = isHere(sensors.flow().map(Rig.Flow::port)) ? senses.flow() : null;
        this.pressure = isHere(sensors.pressure().map(Rig.Pressure::port)) ? senses.pressure() : null;
        this.heights = isHere(sensors.heightsPort()) ? senses.heights() : List.of();
        this.doubts = senses.doubts();
        this.motion = senses.motion();
        this.speed = isHere(sensors.speedPort()) ? senses.speed() : null;
        this.wheel = isHere(sensors.wheel().map(Rig.Wheel::port)) ? senses.wheel() : null;
        this.sections = isHere(sensors.sectionsPort()) ? senses.sections() : null;
        this.tank = isHere(sensors.tank().map(Rig.Tank::port)) ? senses.tank() : null;
        this.air = senses.air();
        this.hearsAir = isHere(sensors.air().port());
        this.hubClock = new ArrivalClock(TICK_RANGE_US, LEAST_CHARS * BITS_A_CHAR * 1_000_000L / baud);
    }

    /** A port that no sensor of the rig listens to. */
    static PortInput ofNobody(String name, long startUs, Rig rig) {
        Senses none = new Senses(
                null,
                null,
                List.of(),
                new HeightDoubts(List.of(), new double[0], 0),
                new BoomMotion(List.of(), List.of(), 0, 0),
                new AirSense(0),
                new SpeedSense(0),
                null,
                new SectionSense(),
                null);
        return new PortInput(name, 115_200, startUs, rig, none);
    }

    private boolean isHere(Optional<String> port) {
        return port.filter(name::equals).isPresent();
    }

    /** This is the receiver's port: it tells where the machine is, too. */
    void locate(PositionSense sense) {
        position = sense;
    }

    String name() {
        return name;
    }

    void bytes(long timeUs, byte[] bytes) {
        nowUs = timeUs;
        unplugged = false;
        long before = stream.readable();
        stream.accept(bytes, 0, bytes.length);
        if (stream.readable() > before) {
            heardUs = timeUs;
        }
    }

    WireCounts counts() {
        return stream.counts();
    }

    /** When the last readable sentence came, µs; before the first, when the watch began. */
    long heardUs() {
        return heardUs;
    }

    boolean hasSpoken() {
        return stream.readable() > 0;
    }

    void unplugged(boolean gone) {
        unplugged = gone;
        if (gone) {
            cut();
        }
    }

    void cut() {
        stream.cut();
    }

    boolean isUnplugged() {
        return unplugged;
    }

    /** How long ago the hub on this port was seen to start anew, µs; -1 where it was not. */
    long sinceRestartUs(long atUs) {
        return restartedUs >= 0 ? atUs - restartedUs : -1;
    }

    /** Event time of a hub's sentence, µs; notices when the hub has started anew. */
    private long timeOf(HubSentence sentence) {
        if (hubClock.hear(nowUs, sentence.tickUs()) == ArrivalClock.Step.RESTARTED) {
            onRestart();
        }
        return hubClock.eventUs(sentence.tickUs());
    }

    private void onRestart() {
        restartedUs = nowUs;
        if (flow != null) {
            flow.onRestart();
        }
        if (wheel != null) {
            wheel.onRestart();
        }
    }

    @Override
    public void onHub(HubIdentity hub) {
        timeOf(hub);
        boolean isNew = boots >= 0 && hub.bootCount() != boots;
        boots = hub.bootCount();
        if (isNew && nowUs - restartedUs > SAME_RESTART_US) {
            hubClock.restart();
            timeOf(hub);
            onRestart();
        }
    }

    @Override
    public void onFlow(FlowPulses pulses) {
        long timeUs = timeOf(pulses);
        if (flow == null) {
            return;
        }
        if (pulses.hasLastEdge()) {
            flow.onPulses(timeUs, pulses.tickUs(), pulses.count(), pulses.lastEdgeTickUs());
        } else {
            flow.onNoPulseYet(timeUs, pulses.tickUs());
        }
    }

    @Override
    public void onWheel(WheelPulses pulses) {
        long timeUs = timeOf(pulses);
        if (wheel == null) {
            return;
        }
        if (pulses.hasLastEdge()) {
            wheel.onPulses(nowUs, timeUs, pulses.tickUs(), pulses.count(), pulses.lastEdgeTickUs());
        } else {
            wheel.onNoPulseYet(nowUs, timeUs, pulses.tickUs());
        }
    }

    @Override
    public void onHeights(HeightEchoes echoes) {
        long timeUs = timeOf(echoes);
        double airC = air.airC(nowUs);
        boolean measured = air.isMeasured(nowUs);
        for (int i = 0; i < heights.size(); i++) {
            if (i < echoes.sensors() && echoes.hasEcho(i)) {
                doubts.onEcho(i, echoes.echoUs(i), airC);
                heights.get(i).onEcho(timeUs, echoes.echoUs(i), airC, measured);
            } else {
                doubts.onNoEcho(i);
                heights.get(i).onNoEcho(timeUs);
            }
        }
        if (!heights.isEmpty()) {
            motion.onEchoes(timeUs);
        }
        doubts.onAllHeard(timeUs);
    }

    @Override
    public void onPressure(PressureCurrent current) {
        long timeUs = timeOf(current);
        if (pressure == null) {
            return;
        }
        if (current.hasCurrent()) {
            pressure.onCurrent(timeUs, 1e-6 * current.currentUa());
        } else {
            pressure.onNoCurrent(timeUs);
        }
    }

    @Override
    public void onSections(SectionSwitches switches) {
        long timeUs = timeOf(switches);
        if (sections != null && switches.hasMask()) {
            sections.onSwitches(timeUs, switches.mask());
        }
    }

    @Override
    public void onAir(AirTemperature temperature) {
        long timeUs = timeOf(temperature);
        if (hearsAir && temperature.hasTemperature()) {
            air.onTemperature(timeUs, 0.01 * temperature.temperatureCentidegC());
        }
    }

    @Override
    public void onLevel(TankLevel level) {
        long timeUs = timeOf(level);
        if (tank == null) {
            return;
        }
        if (level.hasCounts()) {
            tank.onCounts(timeUs, level.counts());
        } else {
            tank.onNoCounts(timeUs);
        }
    }

    @Override
    public void onGga(Gga gga) {
        if (position != null && gga.hasQuality()) {
            position.onQuality(gga.quality());
        }
    }

    private void locate(Rmc rmc) {
        if (position == null) {
            return;
        }
        if (rmc.hasFix() && rmc.hasPosition() && rmc.hasSpeed()) {
            position.onFix(
                    nowUs,
                    rmc.latitudeDeg(),
                    rmc.longitudeDeg(),
                    rmc.hasCourse() ? rmc.courseDeg() : Double.NaN,
                    rmc.speedMps(),
                    rmc.hasMode() ? rmc.mode() : 0);
        } else {
            position.onNoFix(nowUs);
        }
    }

    @Override
    public void onRmc(Rmc rmc) {
        locate(rmc);
        if (speed == null) {
            return;
        }
        saidUs = rmc.hasUtc() ? timeOf(1000 * rmc.utcEpochMs()) : nowUs;
        if (!rmc.hasFix()) {
            speed.onNoFix(nowUs);
        } else if (rmc.hasSpeed()) {
            speed.onFix(nowUs, saidUs, rmc.speedMps());
        } else {
            speed.onFixWithoutSpeed(nowUs);
        }
    }

    /** When a receiver would say what it says of a moment, were this sentence not later than others, µs of event time. */
    private long timeOf(long newUtcUs) {
        boolean stands = newUtcUs == utcUs;
        utcUs = newUtcUs;
        // A time that stands is none.
        return stands || utcClock.hear(nowUs, newUtcUs) != ArrivalClock.Step.RUNS ? nowUs : utcClock.eventUs(newUtcUs);
    }

    @Override
    public void onVtg(Vtg vtg) {
        if (speed == null) {
            return;
        }
        boolean valid = !vtg.hasMode() || vtg.mode() != 'N';
        if (valid && vtg.hasSpeed()) {
            speed.onTrack(nowUs, nowUs - saidUs < BURST_US ? saidUs : nowUs, vtg.speedMps());
        } else {
            speed.onNoTrack(nowUs);
        }
    }
}
