package evenfall.bench.run;

import evenfall.bench.received.Report;
import evenfall.bench.score.Score;
import evenfall.bench.score.Scoring;
import evenfall.config.ConfigException;
import evenfall.monitor.Monitor;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.World;
import evenfall.trace.TraceEvent;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * The simulator's bytes, with its own time stamps, through the core alone: no message is written or read, and what the core says is
 * scored as it comes. For many runs; {@link QuickRun} gives the same score, to the decimals of the messages, and everything else.
 */
public final class LeanRun {
    private LeanRun() {}

    /**
     * Drives a scenario and scores it.
     *
     * @throws ConfigException when the scenario's rig is wrong
     */
    public static Score score(Scenario scenario) throws ConfigException {
        Rig rig = rig(scenario);
        Scoring scoring = new Scoring(scenario);
        World world = new World(scenario, scoring.truth());
        CoreReport said = new CoreReport(rig);
        Monitor core = new Monitor(rig, said);
        world.run(emission -> core.accept(new TraceEvent.Bytes(emission.timeUs(), emission.port(), emission.bytes())));
        core.accept(new TraceEvent.End(world.endUs()));
        Report report = said.report(core.wire()).until(scenario.seconds());
        return scoring.score(report);
    }

    /** By way of the text, as the monitor's own process gets it. */
    private static Rig rig(Scenario scenario) throws ConfigException {
        return RigFile.parse("rig.yaml", scenario.rigYaml(Map.of(), "127.0.0.1", 1883, Optional.empty()), Path.of(""));
    }
}
