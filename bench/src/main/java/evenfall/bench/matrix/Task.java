package evenfall.bench.matrix;

import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;

/**
 * A run that is to be made.
 *
 * @param group what it is for
 * @param name of the scenario, of the fault with its place and size, or of the ground's class
 * @param outlet id of the outlet type
 * @param source writes or reads the scenario when its turn comes
 */
record Task(Group group, String name, String outlet, Source source) {

    /** Where a scenario comes from. */
    @FunctionalInterface
    interface Source {
        Scenario scenario() throws ConfigException;
    }
}
