package evenfall.monitor;

import evenfall.rig.Rig;
import evenfall.sense.FlowSense;
import evenfall.sense.HeightSense;
import evenfall.sense.PositionSense;
import evenfall.sense.PressureSense;
import evenfall.sense.SectionSense;
import evenfall.sense.SpeedSense;
import evenfall.wire.AirTemperature;
import evenfall.wire.FlowPulses;
import evenfall.wire.Gga;
import evenfall.wire.HeightEchoes;
import evenfall.wire.PressureCurrent;
import evenfall.wire.Rmc;
import evenfall.wire.SectionSwitches;
import evenfall.wire.SentenceHandler;
import evenfall.wire.SentenceStream;
import evenfall.wire.Vtg;
import evenfall.wire.WireCounts;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One port: decodes its bytes and hands each sentence to the sense that the rig says listens there. */
final class PortInput implements SentenceHandler {
    private final String name;
    private final SentenceStream stream;
    private final @Nullable FlowSense flow;
    private final @Nullable PressureSense pressure;
    private final List<HeightSense> heights;
    private final @Nullable SpeedSense speed;
    private final @Nullable SectionSense sections;
    private final boolean hearsAir;
    private double airC;
    private @Nullable PositionSense position;
    private long nowUs;
    private long heardUs;
    private boolean unplugged;

    PortInput(
            String name,
            long startUs,
            Rig rig,
            @Nullable FlowSense flow,
            @Nullable PressureSense pressure,
            List<HeightSense> heights,
            SpeedSense speed,
            SectionSense sections) {
        this.name = name;
        this.heardUs = startUs;
        this.stream = new SentenceStream(this);
        Rig.Sensors sensors = rig.sensors();
        this.flow = isHere(sensors.flow().map(Rig.Flow::port)) ? flow : null;
        this.pressure = isHere(sensors.pressure().map(Rig.Pressure::port)) ? pressure : null;
        this.heights = isHere(sensors.heightsPort()) ? heights : List.of();
        this.speed = isHere(sensors.speedPort()) ? speed : null;
        this.sections = isHere(sensors.sectionsPort()) ? sections : null;
        this.hearsAir = isHere(sensors.air().port());
        this.airC = sensors.air().fixedC();
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
        long before = readable();
        stream.accept(bytes, 0, bytes.length);
        if (readable() > before) {
            heardUs = timeUs;
        }
    }

    private long readable() {
        WireCounts counts = stream.counts();
        return counts.accepted() + counts.ignored();
    }

    WireCounts counts() {
        return stream.counts();
    }

    /** When the last readable sentence came, µs; before the first, when the watch began. */
    long heardUs() {
        return heardUs;
    }

    boolean hasSpoken() {
        return readable() > 0;
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

    @Override
    public void onFlow(FlowPulses pulses) {
        if (flow == null) {
            return;
        }
        if (pulses.hasLastEdge()) {
            flow.onPulses(nowUs, pulses.tickUs(), pulses.count(), pulses.lastEdgeTickUs());
        } else {
            flow.onNoPulseYet(nowUs, pulses.tickUs());
        }
    }

    @Override
    public void onHeights(HeightEchoes echoes) {
        for (int i = 0; i < heights.size(); i++) {
            if (i < echoes.sensors() && echoes.hasEcho(i)) {
                heights.get(i).onEcho(nowUs, echoes.echoUs(i), airC);
            } else {
                heights.get(i).onNoEcho(nowUs);
            }
        }
    }

    @Override
    public void onPressure(PressureCurrent current) {
        if (pressure == null) {
            return;
        }
        if (current.hasCurrent()) {
            pressure.onCurrent(nowUs, 1e-6 * current.currentUa());
        } else {
            pressure.onNoCurrent(nowUs);
        }
    }

    @Override
    public void onSections(SectionSwitches switches) {
        if (sections != null && switches.hasMask()) {
            sections.onSwitches(nowUs, switches.mask());
        }
    }

    @Override
    public void onAir(AirTemperature air) {
        if (hearsAir && air.hasTemperature()) {
            airC = 0.01 * air.temperatureCentidegC();
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
        if (rmc.hasFix() && rmc.hasSpeed()) {
            speed.onFix(nowUs, rmc.speedMps());
        } else {
            speed.onNoFix(nowUs);
        }
    }

    @Override
    public void onVtg(Vtg vtg) {
        if (speed == null) {
            return;
        }
        boolean valid = !vtg.hasMode() || vtg.mode() != 'N';
        if (valid && vtg.hasSpeed()) {
            speed.onTrack(nowUs, vtg.speedMps());
        } else {
            speed.onNoTrack(nowUs);
        }
    }
}
