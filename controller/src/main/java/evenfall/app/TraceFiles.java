package evenfall.app;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.zip.GZIPOutputStream;

/** Files to record into: one that exists is never written over. */
final class TraceFiles {
    private static final int MOST = 10_000;
    private static final int BUFFER = 8192;

    private TraceFiles() {}

    /**
     * Creates the file, or the first of {@code name-2.ext}, {@code name-3.ext} … that is free. A name that ends with
     * {@code .gz} is compressed.
     */
    static Writer create(Path wanted) throws IOException {
        for (int number = 1; number <= MOST; number++) {
            try {
                OutputStream file = Files.newOutputStream(numbered(wanted, number), StandardOpenOption.CREATE_NEW);
                // With every flush all that was written so far can be read: the power may go at any time.
                OutputStream out = wanted.toString().endsWith(".gz") ? new GZIPOutputStream(file, BUFFER, true) : file;
                return new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.US_ASCII), BUFFER);
            } catch (FileAlreadyExistsException e) {
                // Somebody's recording: the next number.
            }
        }
        throw new IOException("there are " + MOST + " recordings of that name");
    }

    static Path numbered(Path wanted, int number) {
        if (number == 1) {
            return wanted;
        }
        String name = String.valueOf(wanted.getFileName());
        int dot = name.indexOf('.', 1);
        String numbered = dot < 0 ? name + "-" + number : name.substring(0, dot) + "-" + number + name.substring(dot);
        return wanted.resolveSibling(numbered);
    }
}
