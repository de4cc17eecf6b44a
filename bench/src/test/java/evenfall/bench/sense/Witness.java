package evenfall.bench.sense;

import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Monitor;
import evenfall.monitor.Outputs;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import evenfall.sim.world.TruthLog;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.World;
import evenfall.trace.TraceEvent;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;

/** One run of a scenario through the core, in this process, with what the core said beside the truth of the same moments. */
final class Witness implements Outputs {
    /** Estimates settle in so long. */
    static final long SETTLED_US = 3_000_000;

    final Scenario scenario;
    final Rig rig;
    final List<Live> lives = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    final Map<Long, TruthSample> truth = new LinkedHashMap<>();

    /** A moment that both speak of. */
    interface Beside {
        /** Adds the errors of one moment. */
        void look(Live live, TruthSample truth, DescriptiveStatistics errors);
    }

    private Witness(Scenario scenario) {
        this.scenario = scenario;
        this.rig = scenario.belief();
        Monitor monitor = new Monitor(rig, this);
        TruthLog log = new TruthLog();
        World world = new World(scenario, log);
        world.run(
                emission -> monitor.accept(new TraceEvent.Bytes(emission.timeUs(), emission.port(), emission.bytes())));
        monitor.advanceTo(world.endUs());
        for (TruthSample sample : log.samples()) {
            truth.put(sample.timeUs(), sample);
        }
    }

    /**
     * Runs a built-in scenario with parts of its text replaced.
     *
     * @param pairs each text and what to put in its place; each must be there
     */
    static Witness of(String name, String outlet, String... pairs) throws Exception {
        String text;
        try (InputStream in = Scenarios.class.getResourceAsStream(name + ".yaml")) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        for (int i = 0; i < pairs.length; i += 2) {
            if (!text.contains(pairs[i])) {
                throw new AssertionError("the scenario does not hold: " + pairs[i]);
            }
            text = text.replace(pairs[i], pairs[i + 1]);
        }
        return new Witness(Scenarios.written(name, text).withOutlet(outlet));
    }

    DescriptiveStatistics errors(Beside beside) {
        DescriptiveStatistics errors = new DescriptiveStatistics();
        for (Live live : lives) {
            TruthSample sample = truth.get(live.timeUs());
            if (sample != null && live.timeUs() >= SETTLED_US) {
                beside.look(live, sample, errors);
            }
        }
        if (errors.getN() < 50) {
            throw new AssertionError("only " + errors.getN() + " moments to compare");
        }
        return errors;
    }

    /** 95th percentile of the magnitude. */
    static double p95(DescriptiveStatistics errors) {
        DescriptiveStatistics magnitudes = new DescriptiveStatistics();
        for (double error : errors.getValues()) {
            magnitudes.addValue(Math.abs(error));
        }
        return magnitudes.getPercentile(95);
    }

    /** True height at a place, between the outlets beside it, m. */
    double heightAtM(TruthSample sample, double rightM) {
        BoomLayout boom = scenario.world().fitted().boom();
        int left = 0;
        while (left + 2 < boom.outlets() && boom.outletRightM(left + 1) <= rightM) {
            left++;
        }
        double part = (rightM - boom.outletRightM(left)) / boom.spacingM();
        return sample.heightM(left) + part * (sample.heightM(left + 1) - sample.heightM(left));
    }

    @Override
    public void live(Live live) {
        lives.add(live);
    }

    @Override
    public void raised(Alert alert) {
        story.add("+" + alert.kind().word() + "/" + alert.place());
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        story.add("-" + alert.kind().word() + "/" + alert.place());
    }
}
