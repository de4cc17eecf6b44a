package evenfall.bench.run;

import evenfall.bench.received.Message;
import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Drives a scenario and scores what the monitor made of it. */
public final class Runner {
    private Runner() {}

    /** Who watches a run. Called from several threads, one call after the other for each kind; must not wait. */
    public interface Watcher {
        /** Something takes a moment; a few words say what. */
        void preparing(String what);

        /** The drive has begun, or come so far. */
        void driving(double atS);

        /** The monitor said something. */
        void heard(Message message);
    }

    /**
     * @param host name or address of a broker
     * @param port its TCP port
     */
    public record Address(String host, int port) {}

    /**
     * @param broker one outside; empty for the embedded one
     * @param keep folder for rig file, trace, messages and what the monitor printed; empty for none
     */
    public record Options(Pace pace, Optional<Address> broker, Optional<Path> keep) {
        public static final Options QUICK = new Options(Pace.MAX, Optional.empty(), Optional.empty());
    }

    /**
     * @throws IOException when something that is needed does not work, in one line
     */
    public static RunResult run(Scenario scenario, Options options, Watcher watcher)
            throws IOException, ConfigException, InterruptedException {
        return options.pace() == Pace.REAL
                ? new RealRun(scenario, options, watcher).run()
                : new QuickRun(scenario, options.keep()).run();
    }
}
