package evenfall.wire;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** Writes down everything a stream hands over, since the views do not outlive the call. */
final class SeenSentences implements SentenceHandler {

    /** One sentence as the handler saw it: its kind and the fields it had, under the keys of the golden table. */
    record Seen(String kind, SortedMap<String, Object> fields) {}

    final List<Seen> all = new ArrayList<>();

    /** Runs whole lines through a fresh stream and returns what came out. */
    static SeenSentences of(String... lines) {
        SeenSentences seen = new SeenSentences();
        SentenceStream stream = new SentenceStream(seen);
        for (String line : lines) {
            byte[] bytes = (line + "\r\n").getBytes(StandardCharsets.ISO_8859_1);
            stream.accept(bytes, 0, bytes.length);
        }
        return seen;
    }

    Seen only() {
        if (all.size() != 1) {
            throw new AssertionError("expected one sentence, saw " + all);
        }
        return all.get(0);
    }

    private TreeMap<String, Object> add(String kind) {
        TreeMap<String, Object> fields = new TreeMap<>();
        all.add(new Seen(kind, fields));
        return fields;
    }

    @Override
    public void onRmc(Rmc rmc) {
        TreeMap<String, Object> fields = add("rmc");
        fields.put("fix", rmc.hasFix());
        if (rmc.hasUtc()) {
            fields.put("utcEpochMs", rmc.utcEpochMs());
        } else if (rmc.hasTimeOfDay()) {
            fields.put("timeOfDayMs", (long) rmc.timeOfDayMs());
        }
        if (rmc.hasPosition()) {
            fields.put("latitudeDeg", rmc.latitudeDeg());
            fields.put("longitudeDeg", rmc.longitudeDeg());
        }
        if (rmc.hasSpeed()) {
            fields.put("speedMps", rmc.speedMps());
        }
        if (rmc.hasCourse()) {
            fields.put("courseDeg", rmc.courseDeg());
        }
        if (rmc.hasMode()) {
            fields.put("mode", rmc.mode());
        }
    }

    @Override
    public void onVtg(Vtg vtg) {
        TreeMap<String, Object> fields = add("vtg");
        if (vtg.hasSpeed()) {
            fields.put("speedMps", vtg.speedMps());
        }
        if (vtg.hasCourse()) {
            fields.put("courseDeg", vtg.courseDeg());
        }
        if (vtg.hasMode()) {
            fields.put("mode", vtg.mode());
        }
    }

    @Override
    public void onGga(Gga gga) {
        TreeMap<String, Object> fields = add("gga");
        if (gga.hasTimeOfDay()) {
            fields.put("timeOfDayMs", (long) gga.timeOfDayMs());
        }
        if (gga.hasPosition()) {
            fields.put("latitudeDeg", gga.latitudeDeg());
            fields.put("longitudeDeg", gga.longitudeDeg());
        }
        if (gga.hasQuality()) {
            fields.put("quality", (long) gga.quality());
        }
        if (gga.hasSatellites()) {
            fields.put("satellites", (long) gga.satellites());
        }
        if (gga.hasHdop()) {
            fields.put("hdop", gga.hdop());
        }
        if (gga.hasAltitude()) {
            fields.put("altitudeM", gga.altitudeM());
        }
    }

    @Override
    public void onFlow(FlowPulses flow) {
        pulses("flow", flow);
    }

    @Override
    public void onWheel(WheelPulses wheel) {
        pulses("wheel", wheel);
    }

    private void pulses(String kind, PulseCount pulses) {
        TreeMap<String, Object> fields = add(kind);
        fields.put("tickUs", pulses.tickUs());
        fields.put("count", pulses.count());
        if (pulses.hasLastEdge()) {
            fields.put("lastEdgeTickUs", pulses.lastEdgeTickUs());
        }
    }

    @Override
    public void onHeights(HeightEchoes heights) {
        TreeMap<String, Object> fields = add("heights");
        fields.put("tickUs", heights.tickUs());
        List<String> echoes = new ArrayList<>();
        for (int i = 0; i < heights.sensors(); i++) {
            echoes.add(heights.hasEcho(i) ? Long.toString(heights.echoUs(i)) : "");
        }
        fields.put("echoUs", String.join(",", echoes));
    }

    @Override
    public void onPressure(PressureCurrent pressure) {
        TreeMap<String, Object> fields = add("pressure");
        fields.put("tickUs", pressure.tickUs());
        if (pressure.hasCurrent()) {
            fields.put("currentUa", pressure.currentUa());
        }
    }

    @Override
    public void onSections(SectionSwitches sections) {
        TreeMap<String, Object> fields = add("sections");
        fields.put("tickUs", sections.tickUs());
        if (sections.hasMask()) {
            fields.put("maskHex", Long.toHexString(sections.mask()).toUpperCase(java.util.Locale.ROOT));
        }
    }

    @Override
    public void onAir(AirTemperature air) {
        TreeMap<String, Object> fields = add("air");
        fields.put("tickUs", air.tickUs());
        if (air.hasTemperature()) {
            fields.put("temperatureCentidegC", air.temperatureCentidegC());
        }
    }

    @Override
    public void onLevel(TankLevel level) {
        TreeMap<String, Object> fields = add("level");
        fields.put("tickUs", level.tickUs());
        if (level.hasCounts()) {
            fields.put("counts", level.counts());
        }
    }

    @Override
    public void onAcknowledgement(Acknowledgement acknowledgement) {
        TreeMap<String, Object> fields = add("acknowledged");
        fields.put("kind", acknowledgement.kind());
        fields.put("place", acknowledgement.place());
    }

    @Override
    public void onHub(HubIdentity hub) {
        TreeMap<String, Object> fields = add("hub");
        fields.put("tickUs", hub.tickUs());
        fields.put("bootCount", hub.bootCount());
        fields.put("firmwareVersion", hub.firmwareVersion());
    }
}
