package evenfall.bench.cli;

import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which scenario, and with what changes. */
final class ScenarioOptions {
    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Seed of the random streams; the scenario's own if absent.")
    @Nullable
    Long seed;

    @Option(
            names = "--outlet",
            paramLabel = "ID|FILE",
            description = "Other outlets, on the machine and in the rig file.")
    @Nullable
    String outlet;

    Scenario find(String nameOrFile, Units units) throws ConfigException {
        Scenario scenario = plain(nameOrFile, units);
        return outlet == null ? scenario : scenario.withOutlet(outlet);
    }

    /** With its own outlets. */
    Scenario plain(String nameOrFile, Units units) throws ConfigException {
        Scenario scenario = Scenarios.find(nameOrFile).withUnits(units);
        return seed == null ? scenario : scenario.withSeed(seed);
    }
}
