package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The board's process on pseudo-terminals, which can be unplugged and come back under another number, as real devices do. */
class SerialPortIT {
    @TempDir
    private Path folder;

    private Mosquitto mosquitto;
    private Path hubLink;
    private Path gnssLink;
    private Path rig;

    @BeforeEach
    void prepare() throws Exception {
        mosquitto = new Mosquitto(folder).start();
        hubLink = folder.resolve("hub");
        gnssLink = folder.resolve("gnss");
        rig = Box.rig(folder, hubLink.toString(), gnssLink.toString(), mosquitto.port());
    }

    @AfterEach
    void stopBroker() throws Exception {
        mosquitto.close();
    }

    @Test
    void aPortThatIsUnpluggedComesBackByItself() throws Exception {
        PseudoTerminal hub = plug(hubLink);
        try (Box box = Box.start(folder, rig.toString());
                Ear ear = new Ear(mosquitto.port());
                PseudoTerminal gnss = plug(gnssLink)) {
            ear.await(heard -> heard.topic().endsWith("/live"));
            say(hub, gnss, 10);
            ear.await(heard -> heard.topic().endsWith("/live")
                    && heard.json().at("/pressure_kPa/value").isNumber()
                    && heard.json().at("/speed_mps/value").asDouble() > 5.4
                    && heard.json().at("/heights/4/height_m/value").isNumber());

            hub.close();
            Files.delete(hubLink);
            ear.await(heard -> heard.is("/status", "running")
                    && heard.json().at("/ports/0/why").asText().equals("it was unplugged"));
            ear.awaitState("alert/sensor-silent/hub", "standing");

            try (PseudoTerminal again = plug(hubLink)) {
                ear.forget();
                ear.await(heard -> heard.is("/status", "running")
                        && heard.json().at("/ports/0/open").asBoolean());
                say(again, gnss, 20);
                ear.awaitState("alert/sensor-silent/hub", "cleared");
                ear.awaitState("alert/sensor-silent/hub", "");
                ear.await(heard -> heard.topic().endsWith("/live")
                        && heard.json().at("/pressure_kPa/value").isNumber());
            }
            assertThat(box.residentKb()).as("resident kB with 48 MB of heap").isLessThan(120_000);
            assertThat(box.terminate()).isZero();
            assertThat(box.err()).isEmpty();
        }
    }

    @Test
    void aRecordingReplaysToTheSameBytesInAnotherProcessWithNothingButTheBoardsJar() throws Exception {
        Path trace = folder.resolve("pass.trace.gz");
        String said;
        List<Ear.Heard> heard;
        try (PseudoTerminal hub = plug(hubLink);
                PseudoTerminal gnss = plug(gnssLink);
                Box box = Box.start(folder, rig.toString(), "--trace", trace.toString());
                Ear ear = new Ear(mosquitto.port())) {
            ear.await(message -> message.topic().endsWith("/live"));
            say(hub, gnss, 25);
            hub.say("half a sentence $PEVFH,12");
            assertThat(box.terminate()).isZero();
            said = digest(box.out());
            heard = ear.all();
        }
        Path empty = Files.createDirectory(folder.resolve("empty"));
        try (Box replay = Box.replay(empty, rig.toString(), trace.toString())) {
            assertThat(replay.waitFor()).as(replay.err()).isZero();
            assertThat(digest(replay.err())).isEqualTo(said);
            assertThat(replay.err()).contains("sentences: ").contains(" accepted");
            List<String> again = replay.out().lines().toList();
            assertThat(heard.stream()
                            .filter(message -> !message.topic().endsWith("/status"))
                            .map(message -> message.topic() + " " + message.payload()))
                    .as("what the broker got, word for word")
                    .hasSizeGreaterThan(5)
                    .isSubsetOf(again);
        }
    }

    private static String digest(String text) {
        Matcher matcher = Pattern.compile("SHA-256 of them ([0-9a-f]{64})").matcher(text);
        assertThat(matcher.find()).as(text).isTrue();
        return matcher.group(1);
    }

    private static void say(PseudoTerminal hub, PseudoTerminal gnss, int rounds) throws InterruptedException {
        for (int i = 1; i <= rounds; i++) {
            hub.say(Sentences.hub(i * 100_000L));
            gnss.say(Sentences.receiver(i));
            Thread.sleep(100);
        }
    }

    /** A new device, with the link pointing at it. */
    private static PseudoTerminal plug(Path link) throws Exception {
        PseudoTerminal terminal = new PseudoTerminal();
        Files.deleteIfExists(link);
        Files.createSymbolicLink(link, Path.of(terminal.device()));
        Awaitility.await().atMost(Duration.ofSeconds(1)).until(() -> Files.exists(link));
        return terminal;
    }
}
