package evenfall.app;

import java.util.logging.Level;
import java.util.logging.LogManager;
import java.util.logging.Logger;

/**
 * Keeps the libraries' own logging off the console: they report every lost connection with a stack trace, and what matters of it
 * is said by the program itself, in one line.
 */
final class QuietLogs {
    private static final Logger ROOT = Logger.getLogger("");

    private QuietLogs() {}

    static void keepQuiet() {
        LogManager.getLogManager().reset();
        ROOT.setLevel(Level.OFF);
    }
}
