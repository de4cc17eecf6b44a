package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Recording;
import evenfall.quantity.FixedDecimals;
import evenfall.wire.AirTemperature;
import evenfall.wire.FlowPulses;
import evenfall.wire.Gga;
import evenfall.wire.HeightEchoes;
import evenfall.wire.HubIdentity;
import evenfall.wire.PressureCurrent;
import evenfall.wire.Rmc;
import evenfall.wire.SectionSwitches;
import evenfall.wire.TankLevel;
import evenfall.wire.Vtg;
import evenfall.wire.WheelPulses;
import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What comes on a line: kinds, rates, gaps. */
final class LineTape implements Tape {
    private final Map<String, Kind> kinds = new LinkedHashMap<>();
    private double nowS;
    private long bytes;
    private WireCounts counts = WireCounts.NONE;
    private @Nullable Long boots;

    private static final class Kind {
        final boolean fromHub;
        long sentences;
        double lastS;
        double longestGapS;

        Kind(boolean fromHub) {
            this.fromHub = fromHub;
        }
    }

    @Override
    public void now(double timeS) {
        nowS = timeS;
    }

    /** Bytes came, and so the counts stand after them. */
    void counted(int count, WireCounts after) {
        bytes += count;
        counts = after;
    }

    boolean isSilent() {
        return bytes == 0;
    }

    private void take(String name, boolean fromHub) {
        Kind kind = kinds.computeIfAbsent(name, n -> new Kind(fromHub));
        kind.sentences++;
        kind.longestGapS = Math.max(kind.longestGapS, nowS - kind.lastS);
        kind.lastS = nowS;
    }

    @Override
    public void onRmc(Rmc rmc) {
        take("RMC", false);
    }

    @Override
    public void onVtg(Vtg vtg) {
        take("VTG", false);
    }

    @Override
    public void onGga(Gga gga) {
        take("GGA", false);
    }

    @Override
    public void onFlow(FlowPulses flow) {
        take("PEVFQ flow", true);
    }

    @Override
    public void onWheel(WheelPulses wheel) {
        take("PEVFW wheel", true);
    }

    @Override
    public void onHeights(HeightEchoes heights) {
        take("PEVFH heights (" + heights.sensors() + ")", true);
    }

    @Override
    public void onPressure(PressureCurrent pressure) {
        take("PEVFP pressure", true);
    }

    @Override
    public void onLevel(TankLevel level) {
        take("PEVFL tank level", true);
    }

    @Override
    public void onSections(SectionSwitches sections) {
        take("PEVFS sections", true);
    }

    @Override
    public void onAir(AirTemperature air) {
        take("PEVFT air", true);
    }

    @Override
    public void onHub(HubIdentity hub) {
        take("PEVFI hub", true);
        boots = hub.bootCount();
    }

    @Override
    public boolean heard() {
        return true;
    }

    @Override
    public String wanted() {
        return "anything";
    }

    @Override
    public String soFar() {
        StringBuilder text = new StringBuilder();
        text.append(bytes)
                .append(" bytes, ")
                .append(counts.accepted())
                .append(" sentences, ")
                .append(counts.rejected());
        text.append(" broken");
        double longest = 0;
        for (Kind kind : kinds.values()) {
            longest = Math.max(longest, Math.max(kind.longestGapS, nowS - kind.lastS));
        }
        if (!kinds.isEmpty()) {
            text.append(", longest gap ").append(FixedDecimals.text(longest, 2)).append(" s");
        }
        return text.toString();
    }

    @Override
    public double amount() {
        return bytes;
    }

    @Override
    public Recording recording(double seconds) {
        List<Recording.KindHeard> heard = new ArrayList<>();
        for (Map.Entry<String, Kind> entry : kinds.entrySet()) {
            Kind kind = entry.getValue();
            heard.add(new Recording.KindHeard(
                    entry.getKey(), kind.fromHub, kind.sentences, Math.max(kind.longestGapS, seconds - kind.lastS)));
        }
        return new Recording.Line(null, seconds, bytes, counts, heard, boots);
    }
}
