package evenfall.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The board's own jar as a process of its own, as on the board: nothing but that jar on its class path, 48 MB of heap. */
final class Box implements AutoCloseable {
    static final Path JAR = Path.of("target", "evenfall-controller.jar").toAbsolutePath();

    private final Path folder;
    private final Process process;

    private Box(Path folder, Process process) {
        this.folder = folder;
        this.process = process;
    }

    static Box start(Path folder, String... arguments) throws IOException {
        return run(folder, List.of(), List.of("-jar", JAR.toString()), arguments);
    }

    /** With options for the Java machine. */
    static Box startWith(Path folder, List<String> options, String... arguments) throws IOException {
        return run(folder, options, List.of("-jar", JAR.toString()), arguments);
    }

    static Box replay(Path folder, String... arguments) throws IOException {
        return run(folder, List.of(), List.of("-cp", JAR.toString(), "evenfall.app.Replay"), arguments);
    }

    private static Box run(Path folder, List<String> options, List<String> program, String... arguments)
            throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-Xmx48m");
        command.addAll(options);
        command.addAll(program);
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(folder.resolve("out.log").toFile())
                .redirectError(folder.resolve("err.log").toFile())
                .start();
        process.getOutputStream().close();
        return new Box(folder, process);
    }

    /** The documented example on the given devices and broker. */
    static Path rig(Path folder, String hub, String gnss, int brokerPort) throws IOException {
        String text = Files.readString(Path.of("docs", "example-rig.yaml"))
                .replace("/dev/ttyUSB0", hub)
                .replace("/dev/ttyUSB1", gnss)
                .replace("port: 1883", "port: " + brokerPort);
        return Files.writeString(folder.resolve("rig.yaml"), text);
    }

    String out() throws IOException {
        return Files.readString(folder.resolve("out.log"), StandardCharsets.UTF_8);
    }

    String err() throws IOException {
        return Files.readString(folder.resolve("err.log"), StandardCharsets.UTF_8);
    }

    void kill() {
        process.destroyForcibly().onExit().join();
    }

    /** Sends SIGTERM and returns the exit status. */
    int terminate() throws InterruptedException {
        process.destroy();
        return waitFor();
    }

    int waitFor() throws InterruptedException {
        if (!process.waitFor(20, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
            throw new AssertionError("the process did not end");
        }
        return process.exitValue();
    }

    boolean isAlive() {
        return process.isAlive();
    }

    long residentKb() throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status"))) {
            if (line.startsWith("VmRSS:")) {
                return Long.parseLong(line.replaceAll("[^0-9]", ""));
            }
        }
        throw new IOException("no resident size");
    }

    @Override
    public void close() {
        kill();
    }
}
