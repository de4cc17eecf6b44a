package evenfall.bench.cli;

import evenfall.bench.report.Paint;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Where a command writes.
 *
 * @param out results
 * @param err everything else
 * @param live whether a person watches {@code out}, so that it may be redrawn in place
 * @param paint colours, where they are wanted
 * @param columns characters a line
 */
record Terminal(PrintStream out, PrintStream err, boolean live, Paint paint, int columns) {
    private static final int USUAL_COLUMNS = 80;
    private static final int FEWEST_COLUMNS = 60;
    private static final int MOST_COLUMNS = 200;

    /** Of this process. The launcher knows whether it stands on a terminal and how wide that is; Java 17 does not. */
    static Terminal ofProcess() {
        boolean live = Boolean.getBoolean("evenfall.terminal");
        String noColor = System.getenv("NO_COLOR");
        boolean colours = live && (noColor == null || noColor.isEmpty()) && !"dumb".equals(System.getenv("TERM"));
        int columns = Integer.getInteger("evenfall.columns", USUAL_COLUMNS);
        return new Terminal(
                stream(FileDescriptor.out),
                stream(FileDescriptor.err),
                live,
                Paint.of(colours),
                Math.max(FEWEST_COLUMNS, Math.min(MOST_COLUMNS, columns)));
    }

    private static PrintStream stream(FileDescriptor descriptor) {
        return new PrintStream(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
    }

    void print(List<String> lines) {
        for (String line : lines) {
            out.println(line);
        }
        out.flush();
    }
}
