package evenfall.bench.matrix;

import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import java.util.List;

/** Two minutes with nothing wrong on ground of each class: what the senses are worth. */
final class GroundBench {
    static final List<String> CLASSES = List.of("B", "C", "D");
    private static final double SECONDS = 120;

    private GroundBench() {}

    static Scenario scenario(String roughness, String outlet, long seed) throws ConfigException {
        return new MadeField("class " + roughness)
                .lasts(SECONDS)
                .ground("{roughness: " + roughness + "}")
                .drive("{start_mps: 5.0, speeds: [{at_s: 40, speed_mps: 5.5}, {at_s: 80, speed_mps: 4.6}]}")
                .scenario(seed)
                .withOutlet(outlet);
    }
}
