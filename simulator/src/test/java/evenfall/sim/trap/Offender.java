package evenfall.sim.trap;

import evenfall.pattern.Flight;
import evenfall.rig.BoomLayout;
import evenfall.sim.ground.Ground;
import java.util.List;
import java.util.Random;

/** Breaks every wall on purpose, so that the tests of the walls are known to bite. */
final class Offender {
    private Offender() {}

    /** Without parameters: a signature would stand in every line of a report. */
    static double landing() {
        BoomLayout boom = new BoomLayout(1, 0.5, 0.2, 0.5, 0, List.of());
        double heightM = Ground.level().heightM(0, boom.spacingM());
        double borrowed = Flight.timeS(Math.sin(0.3) * Math.sqrt(2.0), heightM);
        return borrowed + new Random().nextDouble() * System.nanoTime();
    }
}
