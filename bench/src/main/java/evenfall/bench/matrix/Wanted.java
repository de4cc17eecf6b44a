package evenfall.bench.matrix;

import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.util.ArrayList;
import java.util.List;

/**
 * Which runs are wanted.
 *
 * @param scenarios names or files of scenarios; empty for none
 * @param outlets ids of outlet types, or outlet files; empty for each scenario's own
 * @param seeds of the random streams; empty for each scenario's own
 * @param faults whether every fault is run alone
 * @param ground whether ground of each class is run with nothing wrong
 * @param cleanHours how many hours of clean work
 */
public record Wanted(
        List<String> scenarios,
        List<String> outlets,
        List<Long> seeds,
        boolean faults,
        boolean ground,
        int cleanHours) {

    public Wanted {
        scenarios = List.copyOf(scenarios);
        outlets = List.copyOf(outlets);
        seeds = List.copyOf(seeds);
    }

    /**
     * The runs, in a fixed order.
     *
     * @throws ConfigException when a scenario or an outlet type is wrong: before the first run
     */
    List<Task> tasks() throws ConfigException {
        List<Task> tasks = new ArrayList<>();
        for (String name : scenarios) {
            scenario(Scenarios.find(name), tasks);
        }
        List<String> types = outlets.isEmpty() ? OutletCatalogue.ids() : outlets;
        if (ground) {
            for (String roughness : GroundBench.CLASSES) {
                for (String outlet : types) {
                    for (long seed : seeds) {
                        tasks.add(new Task(
                                Group.GROUND, roughness, outlet, () -> GroundBench.scenario(roughness, outlet, seed)));
                    }
                }
            }
        }
        if (faults) {
            for (FaultBench alone : FaultBench.all()) {
                for (long seed : seeds) {
                    Task.Source source = () -> alone.scenario(seed);
                    tasks.add(new Task(Group.FAULTS, alone.name(), "", source));
                }
            }
        }
        for (int hour = 0; hour < cleanHours; hour++) {
            String roughness = CleanHour.CLASSES.get(hour % CleanHour.CLASSES.size());
            String outlet = types.get(hour / CleanHour.CLASSES.size() % types.size());
            // Far from every seed that is counted up from a small number, and another one for each hour.
            long seed = 1000 * seeds.get(hour % seeds.size()) + hour;
            tasks.add(new Task(Group.CLEAN, roughness, outlet, () -> CleanHour.scenario(roughness, outlet, seed)));
        }
        return tasks;
    }

    private void scenario(Scenario plain, List<Task> tasks) throws ConfigException {
        List<Scenario> types = new ArrayList<>();
        for (String outlet : outlets) {
            types.add(plain.withOutlet(outlet));
        }
        if (outlets.isEmpty()) {
            types.add(plain);
        }
        for (Scenario type : types) {
            String outlet = type.world().fitted().outlet().id();
            for (long seed : seeds.isEmpty() ? List.of(plain.seed()) : seeds) {
                tasks.add(new Task(Group.SCENARIOS, plain.name(), outlet, () -> type.withSeed(seed)));
            }
        }
    }
}
