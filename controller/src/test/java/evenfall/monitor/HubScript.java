package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;
import evenfall.liquid.Orifice;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.HeightSense;
import evenfall.trace.TraceEvent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

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
            double flowM3ps =
                    rateShare * rig.target().rateM() * speedMps * rig.boom().widthM();
            double hz = flowM3ps * rig.sensors().flow().orElseThrow().pulsesPerM3();
            pulses += hz * 0.05;
            if (hubSpeaks) {
                hub(flowM3ps, hz);
            }
            if (receiverSpeaks && timeUs % 100_000 == 0) {
                say("gnss", rmc());
            }
            monitor.advanceTo(timeUs);
        }
        return this;
    }

    private void hub(double flowM3ps, double hz) {
        StringBuilder heights = new StringBuilder("PEVFH," + timeUs);
        for (int i = 0; i < heightM.length; i++) {
            double distanceM = heightM[i] + 0.10;
            heights.append(',').append(echo[i] ? "" + Math.round(2e6 * distanceM / HeightSense.soundMps(10)) : "");
        }
        say("hub", heights.toString());
        if (timeUs % 100_000 == 0) {
            long whole = (long) Math.floor(pulses);
            long edgeUs = hz > 0 ? timeUs - Math.round((pulses - whole) / hz * 1e6) : 0;
            say("hub", "PEVFQ," + timeUs + "," + whole + "," + edgeUs);
            Orifice orifice = rig.outlet().orifice();
            double pressurePa = orifice.pressurePa(
                    flowM3ps / rig.boom().outlets(), rig.liquid().specificGravity());
            double amperes = Double.isNaN(currentA) ? 0.004 + 0.016 * pressurePa / 1e6 : currentA;
            say("hub", "PEVFP," + timeUs + "," + Math.round(amperes * 1e6));
            say("hub", "PEVFS," + timeUs + ",3F");
        }
        if (timeUs % 1_000_000 == 0) {
            say("hub", "PEVFT," + timeUs + ",1000");
        }
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
