package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run through a broker of somebody else: Debian's Mosquitto, the independent peer; and through none. */
class OutsideBrokerIT {
    @TempDir
    Path folder;

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private Path scenario() throws IOException {
        Path file = folder.resolve("short-terrace.yaml");
        try (InputStream in = OutsideBrokerIT.class.getResourceAsStream("/evenfall/bench/short-terrace.yaml")) {
            return Files.write(file, in.readAllBytes());
        }
    }

    private static String mosquitto() {
        return Stream.of("/usr/sbin/mosquitto", "/usr/bin/mosquitto", "/usr/local/sbin/mosquitto")
                .filter(path -> Files.isExecutable(Path.of(path)))
                .findFirst()
                .orElseThrow(() -> new AssertionError("mosquitto is not installed; bench/verify installs it"));
    }

    @Test
    void theWholeChainRunsThroughMosquitto() throws Exception {
        int port = freePort();
        Process broker = new ProcessBuilder(mosquitto(), "-p", Integer.toString(port))
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("mosquitto.txt").toFile())
                .start();
        try {
            Awaitility.await().atMost(Duration.ofSeconds(10)).until(() -> answers(port));
            Captured run = Captured.run("run", scenario().toString(), "--json", "--broker", "127.0.0.1:" + port);
            assertThat(run.status()).as(run.err()).isZero();
            JsonNode result = JsonMapper.builder().build().readTree(run.out());
            assertThat(result.at("/score/alerts")).isNotEmpty();
            assertThat(result.at("/reported/row_cv/mean").isNumber()).isTrue();
            assertThat(result.at("/score/missed").asInt()).isZero();
        } finally {
            broker.destroy();
            broker.waitFor();
        }
    }

    private static boolean answers(int port) {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress("127.0.0.1", port), 200);
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void aBrokerThatIsDownIsOneLineAndStatusTwo() throws IOException {
        int port = freePort();
        Captured run = Captured.run("run", scenario().toString(), "--json", "--broker", "127.0.0.1:" + port);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err())
                .contains("option --broker: no MQTT broker answers at 127.0.0.1:" + port, "; allowed: HOST:PORT");
    }
}
