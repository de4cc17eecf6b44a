package evenfall.wire;

/** Judges one whole line that starts with {@code $}, line end removed, and fills the view of its kind. */
final class Decoder {

    /** `$`, two letters of the talker, three of the kind. */
    private static final int ADDRESS_END = 6;

    private static final int RMC = 'R' << 16 | 'M' << 8 | 'C';
    private static final int VTG = 'V' << 16 | 'T' << 8 | 'G';
    private static final int GGA = 'G' << 16 | 'G' << 8 | 'A';

    private static final int NOT_USED = 0;

    private final Fields fields = new Fields();
    private final Rmc rmc = new Rmc();
    private final Vtg vtg = new Vtg();
    private final Gga gga = new Gga();
    private final FlowPulses flow = new FlowPulses();
    private final WheelPulses wheel = new WheelPulses();
    private final HeightEchoes heights = new HeightEchoes();
    private final PressureCurrent pressure = new PressureCurrent();
    private final SectionSwitches sections = new SectionSwitches();
    private final AirTemperature air = new AirTemperature();
    private final TankLevel level = new TankLevel();
    private final HubIdentity hub = new HubIdentity();
    private final Acknowledgement acknowledgement = new Acknowledgement();

    private int kind = NOT_USED;

    /**
     * Decodes a line.
     *
     * @param length up to and with the checksum
     * @param sum all characters after the {@code $} combined by exclusive or
     */
    Verdict decode(byte[] line, int length, int sum) {
        int star = length - 3;
        if (star < 2 || line[star] != '*' || line[1] == ',') {
            return Verdict.MALFORMED;
        }
        int high = Fields.hexDigit(line[star + 1]);
        int low = Fields.hexDigit(line[star + 2]);
        if (high < 0 || low < 0) {
            return Verdict.MALFORMED;
        }
        // The sum ran on over the mark and the digits; the same again takes them out.
        int content = sum ^ '*' ^ line[star + 1] ^ line[star + 2];
        if (content != (high << 4 | low)) {
            return Verdict.CHECKSUM;
        }
        kind = kindOf(line, star);
        if (kind == NOT_USED) {
            return hasStarBefore(line, star) ? Verdict.MALFORMED : Verdict.IGNORED;
        }
        fields.open(line, ADDRESS_END, star);
        return read() ? Verdict.ACCEPTED : Verdict.MALFORMED;
    }

    /** Hands the sentence that was accepted last to the handler. */
    void deliver(SentenceHandler handler) {
        switch (kind) {
            case RMC -> handler.onRmc(rmc);
            case VTG -> handler.onVtg(vtg);
            case GGA -> handler.onGga(gga);
            case 'Q' -> handler.onFlow(flow);
            case 'W' -> handler.onWheel(wheel);
            case 'H' -> handler.onHeights(heights);
            case 'P' -> handler.onPressure(pressure);
            case 'S' -> handler.onSections(sections);
            case 'T' -> handler.onAir(air);
            case 'L' -> handler.onLevel(level);
            case 'A' -> handler.onAcknowledgement(acknowledgement);
            default -> handler.onHub(hub);
        }
    }

    private boolean read() {
        return switch (kind) {
            case RMC -> rmc.read(fields);
            case VTG -> vtg.read(fields);
            case GGA -> gga.read(fields);
            case 'Q' -> flow.read(fields);
            case 'W' -> wheel.read(fields);
            case 'H' -> heights.read(fields);
            case 'P' -> pressure.read(fields);
            case 'S' -> sections.read(fields);
            case 'T' -> air.read(fields);
            case 'L' -> level.read(fields);
            case 'A' -> acknowledgement.read(fields);
            default -> hub.read(fields);
        };
    }

    /** Returns whether a line of at least five characters is the hub's. */
    static boolean isOfHub(byte[] line) {
        return line[1] == 'P' && line[2] == 'E' && line[3] == 'V' && line[4] == 'F';
    }

    private static int kindOf(byte[] line, int star) {
        if (star < ADDRESS_END || (star > ADDRESS_END && line[ADDRESS_END] != ',')) {
            return NOT_USED;
        }
        if (isOfHub(line)) {
            return switch (line[5]) {
                case 'Q', 'W', 'H', 'P', 'S', 'T', 'L', 'I', 'A' -> line[5];
                default -> NOT_USED;
            };
        }
        int letters = line[3] << 16 | line[4] << 8 | line[5];
        boolean used = letters == RMC || letters == VTG || letters == GGA;
        return used && isTalker(line[1]) && isTalker(line[2]) ? letters : NOT_USED;
    }

    private static boolean isTalker(byte c) {
        return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    }

    private static boolean hasStarBefore(byte[] line, int star) {
        for (int i = 1; i < star; i++) {
            if (line[i] == '*') {
                return true;
            }
        }
        return false;
    }
}
