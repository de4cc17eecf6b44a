package evenfall.bench.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A temporary folder and all that must be closed with it, last opened first. Cleared up even when the program is told to stop in the
 * middle of a run.
 */
final class Workshop implements AutoCloseable {
    private final Path folder;
    private final ArrayDeque<AutoCloseable> open = new ArrayDeque<>();
    private final Thread onExit = new Thread(this::closeAtExit, "clear up");
    private boolean closed;

    Workshop() throws IOException {
        folder = Files.createTempDirectory(
                "evenfall-run-" + ProcessHandle.current().pid() + "-");
        Runtime.getRuntime().addShutdownHook(onExit);
    }

    Path folder() {
        return folder;
    }

    synchronized <T extends AutoCloseable> T keep(T resource) {
        open.push(resource);
        return resource;
    }

    private void closeAtExit() {
        try {
            clearUp();
        } catch (IOException e) {
            System.err.println("evenfall: " + e.getMessage());
        }
    }

    @Override
    public void close() throws IOException {
        try {
            Runtime.getRuntime().removeShutdownHook(onExit);
        } catch (IllegalStateException e) {
            // The program is on its way out, and the hook does the rest.
            return;
        }
        clearUp();
    }

    private synchronized void clearUp() throws IOException {
        if (closed) {
            return;
        }
        closed = true;
        IOException first = null;
        while (!open.isEmpty()) {
            try {
                open.pop().close();
            } catch (Exception e) {
                first = first == null ? new IOException("could not be closed: " + e.getMessage(), e) : first;
            }
        }
        for (Path file : contents()) {
            Files.deleteIfExists(file);
        }
        if (first != null) {
            throw first;
        }
    }

    private List<Path> contents() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.sorted(Comparator.reverseOrder()).toList();
        }
    }
}
