package evenfall.bench.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.run.LeanRun;
import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A run of each fault alone. */
class FaultBenchIT {
    /** What can be told at its usual size must come to be due: else the bench would prove nothing about it. */
    @Test
    void everyFaultThatListsAlertsIsDueAtLeastOnce() throws Exception {
        Set<String> open = new LinkedHashSet<>(Faults.all().stream()
                .filter(f -> !f.alerts().isEmpty())
                .map(Fault::id)
                .toList());
        for (FaultBench alone : FaultBench.all()) {
            if (open.contains(alone.fault())
                    && LeanRun.score(alone.scenario(1))
                            .faults()
                            .get(0)
                            .verdict()
                            .isDue()) {
                open.remove(alone.fault());
            }
        }
        assertThat(open).isEmpty();
    }
}
