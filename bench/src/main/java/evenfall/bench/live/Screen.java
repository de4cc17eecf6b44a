package evenfall.bench.live;

import java.io.PrintStream;
import java.util.List;

/** Draws frames over one another at the end of a terminal. */
public final class Screen {
    private static final String TO_LINE_END = "\u001b[K";
    private static final String TO_SCREEN_END = "\u001b[J";

    private final PrintStream out;
    private int drawn;

    public Screen(PrintStream out) {
        this.out = out;
    }

    public void draw(List<String> lines) {
        StringBuilder text = new StringBuilder(up());
        for (String line : lines) {
            text.append(line).append(TO_LINE_END).append('\n');
        }
        text.append(TO_SCREEN_END);
        out.print(text);
        out.flush();
        drawn = lines.size();
    }

    /** Takes the last frame away, so that the result stands in its place. */
    public void clear() {
        out.print(up() + TO_SCREEN_END);
        out.flush();
        drawn = 0;
    }

    private String up() {
        return drawn == 0 ? "" : "\u001b[" + drawn + "A";
    }
}
