package evenfall.bench.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.run.LeanRun;
import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import evenfall.sim.scenario.Scenario;
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
}
