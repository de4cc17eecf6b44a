package evenfall.bench.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;

/** The real monitor as a process of its own, started as on the board. */
public final class ControllerProcess implements AutoCloseable {
    private static final String JAR = "controller/target/evenfall-controller.jar";
    private static final long POLL_MS = 5;
    private static final long STOP_PATIENCE_S = 5;

    private final Process process;
    private final Path log;
    private final Thread onExit;

    private ControllerProcess(Process process, Path log) {
        this.process = process;
        this.log = log;
        this.onExit = new Thread(process::destroy, "stop the monitor");
        Runtime.getRuntime().addShutdownHook(onExit);
    }

    /**
     * The jar that the build made.
     *
     * @throws IOException when there is none
     */
    public static Path jar() throws IOException {
        String home = System.getProperty("evenfall.home");
        Path start = Path.of(home == null ? "" : home).toAbsolutePath();
        for (Path at = start; at != null; at = at.getParent()) {
            if (Files.isRegularFile(at.resolve(JAR))) {
                return at.resolve(JAR);
            }
        }
        throw new IOException("there is no " + JAR + " in " + start + " or above it; build it with: mvn package");
    }

    /**
     * Starts it. It ends with this process if not before.
     *
     * @param log gets all that it prints
     * @param trace where it shall record its inputs; empty for nowhere
     */
    public static ControllerProcess start(Path rigFile, Path log, Optional<Path> trace) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx48m",
                "-jar",
                jar().toString()));
        trace.ifPresent(file -> {
            command.add("--trace");
            command.add(file.toString());
        });
        command.add(rigFile.toString());
        Process process = new ProcessBuilder(command)
                .redirectInput(Path.of("/dev/null").toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        return new ControllerProcess(process, log);
    }

    /**
     * Waits until it holds all the devices open.
     *
     * @throws IOException when it ends before, or takes longer than that
     */
    public void awaitOpen(List<Path> devices, double patienceS) throws IOException, InterruptedException {
        Set<Path> wanted = new HashSet<>();
        for (Path device : devices) {
            wanted.add(device.toRealPath());
        }
        long endNs = System.nanoTime() + (long) (patienceS * 1e9);
        while (!openFiles().containsAll(wanted)) {
            if (!process.isAlive()) {
                throw new IOException("the monitor ended with status " + process.exitValue() + ": " + lastWords());
            }
            if (System.nanoTime() > endNs) {
                throw new IOException(
                        "the monitor did not open its ports within " + Math.round(patienceS) + " s: " + lastWords());
            }
            Thread.sleep(POLL_MS);
        }
    }

    private Set<Path> openFiles() {
        Set<Path> open = new HashSet<>();
        Path folder = Path.of("/proc", Long.toString(process.pid()), "fd");
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            for (Path entry : entries) {
                open.add(target(entry));
            }
        } catch (IOException e) {
            // Not up yet, or gone again; whoever asks looks at that himself.
            return Set.of();
        }
        return open;
    }

    private static Path target(Path entry) {
        try {
            return Files.readSymbolicLink(entry);
        } catch (IOException e) {
            return entry;
        }
    }

    public boolean isAlive() {
        return process.isAlive();
    }

    /** The last line that it printed. */
    public String lastWords() {
        try {
            String last = "it said nothing";
            for (String line : Files.readAllLines(log, StandardCharsets.UTF_8)) {
                last = line.isBlank() ? last : line.strip();
            }
            return last;
        } catch (IOException e) {
            return "what it printed cannot be read";
        }
    }

    /**
     * Asks it to stop, as the board's supervisor would.
     *
     * @return its exit status
     * @throws IOException when it does not stop; it is killed then
     */
    public int stop() throws IOException, InterruptedException {
        process.destroy();
        if (!process.waitFor(STOP_PATIENCE_S, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IOException("the monitor did not stop within " + STOP_PATIENCE_S + " s and was killed");
        }
        return process.exitValue();
    }

    @Override
    public void close() {
        process.destroyForcibly();
        try {
            Runtime.getRuntime().removeShutdownHook(onExit);
        } catch (IllegalStateException e) {
            // The whole program is on its way out; the hook does the same.
            return;
        }
    }
}
