package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The board's process against Debian's Mosquitto. No device is there, so the alerts are those of silent ports. */
class BrokerIT {
    private static final String STATUS = "example-36/status";
    private static final String SILENT = "example-36/alert/sensor-silent/hub";

    @TempDir
    private Path folder;

    private Mosquitto mosquitto;
    private Path rig;

    @BeforeEach
    void prepare() throws Exception {
        mosquitto = new Mosquitto(folder);
        rig = Box.rig(folder, "/nowhere/hub", "/nowhere/gnss", mosquitto.port());
    }

    @AfterEach
    void stopBroker() throws Exception {
        mosquitto.close();
    }

    @Test
    void whoComesLaterFindsTheStatusAndTheAlertsThatStand() throws Exception {
        mosquitto.start();
        try (Box box = Box.start(folder, rig.toString());
                Ear early = new Ear(mosquitto.port())) {
            early.awaitState(SILENT, "standing");
            try (Ear late = new Ear(mosquitto.port())) {
                Ear.Heard status = late.awaitState(STATUS, "running");
                assertThat(status.retained()).isTrue();
                assertThat(status.json().at("/ports/0/why").asText()).isEqualTo("there is no /nowhere/hub");
                Ear.Heard alert = late.awaitState(SILENT, "standing");
                assertThat(alert.retained()).isTrue();
                Ear.Heard live = late.await(heard -> heard.topic().endsWith("/live"));
                assertThat(live.retained()).isFalse();
                assertThat(live.json().at("/speed_mps/value").isNull()).isTrue();
                assertThat(live.json().at("/speed_mps/why").asText()).isNotEmpty();
            }
            assertThat(box.isAlive()).isTrue();
        }
    }

    @Test
    void aBoxThatDiesIsSaidToBeGoneByTheBroker() throws Exception {
        mosquitto.start();
        try (Box box = Box.start(folder, rig.toString());
                Ear ear = new Ear(mosquitto.port())) {
            ear.awaitState(SILENT, "standing");
            box.kill();
            Ear.Heard gone = ear.awaitState(STATUS, "gone");
            assertThat(gone.json().path("at_s").isNull()).isTrue();
            assertThat(gone.json().path("why").asText()).isNotEmpty();
            try (Ear late = new Ear(mosquitto.port())) {
                assertThat(late.awaitState(STATUS, "gone").retained()).isTrue();
            }
        }
    }

    @Test
    void aSignalStopsTheBoxCleanlyAndLeavesNoAlertBehind() throws Exception {
        mosquitto.start();
        try (Box box = Box.start(folder, rig.toString());
                Ear ear = new Ear(mosquitto.port())) {
            ear.awaitState(SILENT, "standing");
            long startNs = System.nanoTime();
            assertThat(box.terminate()).isZero();
            long tookMs = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - startNs);
            assertThat(tookMs).as("ms from the signal to the end").isLessThan(2000);

            ear.awaitState(STATUS, "stopped");
            ear.awaitState(SILENT, "ended");
            ear.awaitState(SILENT, "");
            assertThat(box.out()).containsPattern("stopped: \\d+ messages, SHA-256 of them [0-9a-f]{64}");
            assertThat(box.err()).isEmpty();
            try (Ear late = new Ear(mosquitto.port())) {
                late.awaitState(STATUS, "stopped");
                assertThat(late.all()).noneMatch(heard -> heard.topic().contains("/alert/"));
                assertThat(late.all()).noneMatch(heard -> heard.is(STATUS, "gone"));
            }
        }
    }

    @Test
    void alertsThatAnEarlierLifeLeftBehindAreTakenAway() throws Exception {
        mosquitto.start();
        String left = "evenfall/example-36/alert/wing-low/left";
        try (Ear ear = new Ear(mosquitto.port())) {
            ear.retain(left, "{\"state\":\"standing\"}");
            ear.await(heard -> heard.topic().equals(left));
            try (Box box = Box.start(folder, rig.toString())) {
                ear.awaitState("alert/wing-low/left", "");
                ear.awaitState(SILENT, "standing");
                try (Ear late = new Ear(mosquitto.port())) {
                    late.awaitState(SILENT, "standing");
                    assertThat(late.all()).noneMatch(heard -> heard.topic().equals(left));
                }
                assertThat(box.isAlive()).isTrue();
            }
        }
    }

    @Test
    void aBrokerThatComesLateOrForgetsEverythingIsToldAll() throws Exception {
        try (Box box = Box.start(folder, rig.toString())) {
            awaitOut(box, "broker down: Connection refused");
            awaitOut(box, "ALERT sensor-silent hub");
            mosquitto.start();
            awaitOut(box, "broker up");
            try (Ear ear = new Ear(mosquitto.port())) {
                ear.awaitState(STATUS, "running");
                ear.awaitState(SILENT, "standing");
            }
            long linesBefore = box.out().lines().count();
            mosquitto.kill();
            awaitOut(box, "(?s)broker up.*broker down");
            mosquitto.start();
            try (Ear ear = new Ear(mosquitto.port())) {
                ear.awaitState(STATUS, "running");
                ear.awaitState(SILENT, "standing");
            }
            assertThat(box.out().lines().count())
                    .as("the core went on while the broker was away")
                    .isGreaterThan(linesBefore);
            assertThat(box.terminate()).isZero();
        }
    }

    @Test
    void aBrokerThatFreezesNeitherStopsTheCoreNorLosesAnAlert() throws Exception {
        mosquitto.start();
        Path trace = folder.resolve("frozen.trace");
        try (Box box = Box.start(folder, rig.toString(), "--trace", trace.toString());
                Ear ear = new Ear(mosquitto.port())) {
            ear.await(heard -> heard.topic().endsWith("/live"));
            mosquitto.freeze();
            awaitOut(box, "ALERT sensor-silent gnss");
            awaitOut(box, "(?m)^ +6\\.0 s  ");
            mosquitto.thaw();
            ear.awaitState(SILENT, "standing");
            ear.awaitState("sensor-silent/gnss", "standing");
            assertThat(box.terminate()).isZero();
        }
        assertThat(Files.readString(trace)).endsWith("- end\n");
    }

    private static void awaitOut(Box box, String pattern) {
        org.awaitility.Awaitility.await()
                .atMost(java.time.Duration.ofSeconds(20))
                .untilAsserted(() -> assertThat(box.out()).containsPattern(pattern));
    }
}
