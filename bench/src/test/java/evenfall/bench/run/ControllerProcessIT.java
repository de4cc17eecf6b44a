package evenfall.bench.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.sim.feed.VirtualPort;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The monitor's own process when what it needs is not there. */
class ControllerProcessIT {
    @TempDir
    Path folder;

    @Test
    void aMonitorThatRefusesItsRigFileIsReportedWithItsOwnLine() throws Exception {
        Path rig = Files.writeString(folder.resolve("rig.yaml"), "name: x\n");
        try (ControllerProcess monitor = ControllerProcess.start(rig, folder.resolve("log.txt"), Optional.empty());
                VirtualPort port = VirtualPort.open()) {
            assertThatThrownBy(() -> monitor.awaitOpen(List.of(port.path()), 15))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("status 2")
                    .hasMessageContaining("rig.yaml")
                    .hasMessageContaining("is missing");
        }
    }

    @Test
    void aMonitorWhosePortsAndBrokerAreMissingWaitsAndTakesThePortsWhenTheyCome() throws Exception {
        Scenario scenario = Scenarios.find("level-field");
        Path hub = folder.resolve("hub");
        Path gnss = folder.resolve("gnss");
        Path rig = Files.writeString(
                folder.resolve("rig.yaml"),
                scenario.rigYaml(
                        Map.of("hub", hub.toString(), "gnss", gnss.toString()), "127.0.0.1", 1, Optional.empty()));
        try (ControllerProcess monitor = ControllerProcess.start(rig, folder.resolve("log.txt"), Optional.empty())) {
            // Long enough for it to have tried, and found neither port nor broker.
            Thread.sleep(1500);
            assertThat(monitor.isAlive()).as(monitor.lastWords()).isTrue();
            try (VirtualPort one = VirtualPort.open(hub);
                    VirtualPort other = VirtualPort.open(gnss)) {
                monitor.awaitOpen(List.of(one.path(), other.path()), 15);
                assertThat(monitor.stop()).as(monitor.lastWords()).isZero();
            }
        }
    }
}
