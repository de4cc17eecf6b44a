package evenfall.bench.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.run.LeanRun;
import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import evenfall.sim.scenario.Scenario;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FaultBenchTest {
    @Test
    void everyFaultOfTheLibraryIsThereAndNamesDiffer() throws Exception {
        assertThat(FaultBench.all().stream().map(FaultBench::fault).distinct())
                .containsExactlyElementsOf(Faults.all().stream().map(Fault::id).toList());
        assertThat(FaultBench.all().stream().map(FaultBench::name)).doesNotHaveDuplicates();
        for (FaultBench alone : FaultBench.all()) {
            Scenario scenario = alone.scenario(1);
            assertThat(scenario.world().faults()).hasSize(1);
            assertThat(scenario.world().faults().get(0).fault().id()).isEqualTo(alone.fault());
            assertThat(scenario.world().faults().get(0).atS()).isEqualTo(20);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aHealthyMachineIsDueForNothingOnItsGround(boolean hilly) throws Exception {
        for (long seed = 1; seed <= 3; seed++) {
            assertThat(LeanRun.score(FaultBench.field(hilly).scenario(seed)).alerts())
                    .as("seed %d", seed)
                    .isEmpty();
        }
    }

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
