package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;
import evenfall.liquid.Orifice;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.HeightSense;
import evenfall.trace.TraceEvent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * A machine on paper for the core's tests: says what hub and receiver would say of a given speed, rate and boom, sentence by sentence,
 * and keeps what the core answers. The rig is the documented example.
 */
final class HubScript implements Outputs {
    final Rig rig;
    final Monitor monitor;
    final List<Live> lives = new ArrayList<>();
    final List<Alert> raised = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    final List<LedgerCell> cells = new ArrayList<>();
    final List<PassSummary> passes = new ArrayList<>();

    double speedMps = 5.5;
    double rateShare = 1;
    double[] heightM = {0.5, 0.5, 0.5, 0.5, 0.5};
    boolean[] echo = {true, true, true, true, true};
    boolean hubSpeaks = true;
    boolean receiverSpeaks = true;
    boolean fix = true;
    double currentA = Double.NaN;
    /** Scatter of each height, m; seeded. */
    double scatterM = 0;
    /** Echoes of this sensor are always the same; -1 for none. */
    int stuckSensor = -1;
    /** Bit 0 is the leftmost section, 1 is on: what the switches say. */
    long sectionMask = 0x3F;
    /** What flows per outlet's worth of holes; NaN: the target's rate over what is on. */
    double flowM3ps = Double.NaN;
    /** Outlets' worth that let through more than the switches say; fewer where it is negative. */
    double outletsMore;
    /** What the pressure transmitter shows too much, Pa, and how much it scatters. */
    double offsetPa;

    double scatterPa;
    /** What the meter gives over what it should. */
    double meterTimes = 1;

    /** What the tank holds, m³; heard of where the rig has a gauge in it. It loses what flows. */
    double tankM3 = 3.6;
    /** Scatter of the gauge, m³. */
    double sloshM3;

    boolean gaugeSpeaks = true;

    private final Random slosh = new Random(33);
    private final Random chance = new Random(1);
    private final Random random = new Random(21);
    private long bootUs;
    private double bootPulses;
    private int boots = 1;
    private long timeUs;
    private double pulses;

    HubScript() throws Exception {
        this(RigFile.read(Path.of("docs", "example-rig.yaml")));
    }

    HubScript(Rig rig) {
        this.rig = rig;
        this.monitor = new Monitor(rig, this);
    }

    /** Lets some seconds pass in steps of 50 ms. */
    HubScript run(double seconds) {
        for (int i = 0; i < Math.round(seconds * 20); i++) {
            timeUs += 50_000;
            double flowsM3ps = Double.isNaN(flowM3ps)
                    ? rateShare
                            * rig.target().rateM()
                            * speedMps
                            * openOutlets()
                            * rig.boom().spacingM()
                    : flowM3ps;
            double hz =
                    meterTimes * flowsM3ps * rig.sensors().flow().orElseThrow().pulsesPerM3();
            pulses += hz * 0.05;
            tankM3 -= flowsM3ps * 0.05;
            if (hubSpeaks) {
                hub(flowsM3ps, hz);
            }
            if (receiverSpeaks && timeUs % 100_000 == 0) {
                say("gnss", rmc());
            }
            monitor.advanceTo(timeUs);
        }
        return this;
    }

    /** The hub loses its power for a moment: clock and counters begin at 0. */
    void restartHub() {
        bootUs = timeUs;
        bootPulses = Math.floor(pulses);
        boots++;
    }

    int openOutlets() {
        int open = 0;
        List<BoomLayout.Section> sections = rig.boom().sections();
        for (int i = 0; i < sections.size(); i++) {
            open += (sectionMask >> i & 1) == 1 ? sections.get(i).outletCount() : 0;
        }
        return open;
    }

    private void hub(double flowsM3ps, double hz) {
        long tick = timeUs - bootUs;
        StringBuilder heights = new StringBuilder("PEVFH," + tick);
        for (int i = 0; i < heightM.length; i++) {
            double distanceM = heightM[i] + 0.10 + scatterM * random.nextGaussian();
            distanceM = i == stuckSensor ? 0.11 : distanceM;
            heights.append(',').append(echo[i] ? "" + Math.round(2e6 * distanceM / HeightSense.soundMps(10)) : "");
        }
        say("hub", heights.toString());
        if (timeUs % 100_000 == 0) {
            long whole = (long) Math.floor(pulses - bootPulses);
            long edgeUs = hz > 0 ? tick - Math.round((pulses - bootPulses - whole) / hz * 1e6) : 0;
            say("hub", "PEVFQ," + tick + "," + whole + "," + (edgeUs > 0 ? edgeUs : ""));
            Orifice orifice = rig.outlet().orifice();
            double holes = openOutlets() + outletsMore;
            double pressurePa = holes > 0
                    ? orifice.pressurePa(flowsM3ps / holes, rig.liquid().specificGravity())
                    : 0;
            double shownPa = pressurePa + offsetPa + scatterPa * chance.nextGaussian();
            double amperes = Double.isNaN(currentA) ? 0.004 + 0.016 * shownPa / 1e6 : currentA;
            say("hub", "PEVFP," + tick + "," + Math.round(amperes * 1e6));
            say("hub", String.format(Locale.ROOT, "PEVFS,%d,%02X", tick, sectionMask));
        }
        if (timeUs % 200_000 == 0 && gaugeSpeaks && rig.sensors().tank().isPresent()) {
            say("hub", "PEVFL," + tick + "," + counts(tankM3 + sloshM3 * slosh.nextGaussian()));
        }
        if (timeUs % 1_000_000 == 0) {
            say("hub", "PEVFT," + tick + ",1000");
            say("hub", "PEVFI," + tick + "," + boots + ",1");
        }
    }

    private long counts(double volumeM3) {
        List<Rig.Tank.Mark> table = rig.sensors().tank().orElseThrow().table();
        int above = 1;
        while (above < table.size() - 1 && table.get(above).volumeM3() < volumeM3) {
            above++;
        }
        Rig.Tank.Mark from = table.get(above - 1);
        Rig.Tank.Mark to = table.get(above);
        double share = (volumeM3 - from.volumeM3()) / (to.volumeM3() - from.volumeM3());
        return Math.round(from.counts() + share * (to.counts() - from.counts()));
    }

    private String rmc() {
        double knots = speedMps * 3600 / 1852;
        return "GPRMC,120000.00," + (fix ? "A" : "V") + ",5200.0000,N,00100.0000,E,"
                + (fix ? String.format(Locale.ROOT, "%.3f", knots) : "") + ",90.0,100326,,,A";
    }

    void say(String port, String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        String sentence = String.format(Locale.ROOT, "$%s*%02X\r\n", body, sum);
        monitor.accept(new TraceEvent.Bytes(timeUs, port, sentence.getBytes(StandardCharsets.US_ASCII)));
    }

    void end() {
        monitor.accept(new TraceEvent.End(timeUs));
    }

    void lose(String port) {
        monitor.accept(new TraceEvent.PortLost(timeUs, port));
    }

    Live last() {
        return lives.get(lives.size() - 1);
    }

    @Override
    public void live(Live live) {
        lives.add(live);
    }

    @Override
    public void raised(Alert alert) {
        raised.add(alert);
        story.add("+" + alert.kind().word() + "/" + alert.place());
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        story.add("-" + alert.kind().word() + "/" + alert.place());
    }

    @Override
    public void cell(LedgerCell cell) {
        cells.add(cell);
    }

    @Override
    public void pass(PassSummary pass) {
        passes.add(pass);
    }
}
