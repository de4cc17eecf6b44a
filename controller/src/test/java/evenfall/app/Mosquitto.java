package evenfall.app;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A Mosquitto of the test's own on a free port, keeping nothing on disk. */
final class Mosquitto {
    private static final Path PROGRAM = Path.of("/usr/sbin/mosquitto");

    private final Path folder;
    private final int port;
    private Process process;

    Mosquitto(Path folder) throws Exception {
        if (!Files.isExecutable(PROGRAM)) {
            throw new AssertionError("there is no " + PROGRAM
                    + ": this test needs Debian's mosquitto as an independent broker; bench/verify installs it");
        }
        this.folder = folder;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            this.port = free.getLocalPort();
        }
    }

    int port() {
        return port;
    }

    Mosquitto start() throws Exception {
        Path config = folder.resolve("mosquitto.conf");
        Files.writeString(config, "listener " + port + " 127.0.0.1\nallow_anonymous true\npersistence false\n");
        process = new ProcessBuilder(PROGRAM.toString(), "-c", config.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("mosquitto.log").toFile())
                .start();
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
        while (!answers()) {
            if (!process.isAlive() || System.nanoTime() > until) {
                throw new AssertionError(
                        "mosquitto did not start: " + Files.readString(folder.resolve("mosquitto.log")));
            }
            Thread.sleep(20);
        }
        return this;
    }

    private boolean answers() {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return socket.isConnected();
        } catch (IOException e) {
            return false;
        }
    }

    /** As a power cut would: nothing is said to anybody. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** Leaves its connections open and answers nothing until {@link #thaw}. */
    void freeze() throws Exception {
        signal("STOP");
    }

    void thaw() throws Exception {
        signal("CONT");
    }

    private void signal(String name) throws Exception {
        int status = new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                .start()
                .waitFor();
        if (status != 0) {
            throw new AssertionError("mosquitto could not be sent " + name);
        }
    }

    void close() throws Exception {
        if (process != null && process.isAlive()) {
            signal("CONT");
            process.destroyForcibly().waitFor();
        }
    }
}
