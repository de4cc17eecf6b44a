package evenfall.bench.prove.trial;

import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.util.concurrent.locks.LockSupport;

/**
 * A simulated machine to look at: liquid runs, wheels turn, and a board goes from sensor to sensor, from the left. All of it is
 * invented.
 */
public final class LiveYard implements AutoCloseable {
    private static final double FLOW_LPM = 90;
    private static final double DRIVE_MPS = 3;
    private static final double BOARD_M = 0.35;
    private static final long BOARD_NS = 4_000_000_000L;
    private static final long LOOK_NS = 100_000_000L;

    private final Yard yard;
    private final Rig rig;
    private final Thread thread;
    private volatile boolean stopped;

    public LiveYard(long seed) throws ConfigException, IOException {
        Scenario scenario = Scenarios.find("level-field");
        yard = new Yard(seed, scenario.belief());
        rig = yard.rig(scenario);
        yard.flow(FLOW_LPM / 60_000);
        yard.drive(DRIVE_MPS, 0);
        thread = new Thread(this::live, "live-yard");
        thread.setDaemon(true);
        thread.start();
    }

    private void live() {
        long beginNs = System.nanoTime();
        int sensors = rig.sensors().heights().size();
        while (!stopped) {
            // One turn more than sensors: in that nothing is covered.
            int turn = (int) ((System.nanoTime() - beginNs) / BOARD_NS % (sensors + 1));
            if (turn == 0) {
                yard.noBoard();
            } else {
                yard.board(rig.sensors().heights().get(turn - 1).rightM(), BOARD_M);
            }
            LockSupport.parkNanos(LOOK_NS);
        }
    }

    /** As its installer describes it, with the ports to listen to. */
    public Rig rig() {
        return rig;
    }

    @Override
    public void close() throws IOException {
        stopped = true;
        yard.close();
    }
}
