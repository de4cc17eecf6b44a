package evenfall.wire;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.opentest4j.TestAbortedException;

/** Where the tests find recordings of receivers. */
public final class Recordings {
    private static final Path FOLDER = Path.of("..", "..", "shared", "data", "gnss");

    private Recordings() {}

    /**
     * A recording of a real receiver, which is not part of the project.
     *
     * @throws TestAbortedException when it is absent: the test then counts as skipped, and standard error says why
     */
    public static byte[] beside(String file) throws IOException {
        Path path = FOLDER.resolve(file);
        if (!Files.isRegularFile(path)) {
            String reason = "not run for want of its data: there is no "
                    + path.toAbsolutePath().normalize();
            System.err.println(file + ": " + reason);
            throw new TestAbortedException(reason);
        }
        return Files.readAllBytes(path);
    }

    /** A recording of our own making, which is always there. */
    public static byte[] invented(String file) throws IOException {
        try (InputStream in = Recordings.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IOException("there is no test resource " + file);
            }
            return in.readAllBytes();
        }
    }
}
