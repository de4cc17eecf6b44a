package evenfall.bench.cli;

import evenfall.bench.console.ConsolePage;
import evenfall.config.ConfigException;
import java.io.IOException;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(name = "console", description = "A web page for training: drive, break and compare runs, and choose outlets.")
final class ConsoleCommand implements Callable<Integer> {
    private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "::1");
    private static final Pattern TOKEN = Pattern.compile("[A-Za-z0-9]{12,80}");
    private static final int HIGHEST_PORT = 65_535;

    private final Terminal terminal;

    @Option(
            names = "--host",
            paramLabel = "HOST",
            defaultValue = "127.0.0.1",
            description = "Where to listen; beyond this machine it needs a token.")
    private String host = "127.0.0.1";

    @Option(names = "--port", paramLabel = "N", defaultValue = "8037", description = "TCP port; 0 for any free one.")
    private int port = 8037;

    @Option(
            names = "--token",
            paramLabel = "TOKEN",
            description = "12 to 80 letters and digits that every page has to bring.")
    private @Nullable String token;

    @Option(names = Evenfall.DEBUG, description = "Show where in the program an unexpected error arose.")
    boolean debug;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    boolean help;

    ConsoleCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        if (port < 0 || port > HIGHEST_PORT) {
            throw ConfigException.ofOption("--port", port + " is no TCP port", "0 to 65535");
        }
        if (token != null && !TOKEN.matcher(token).matches()) {
            throw ConfigException.ofOption("--token", "this cannot be used", "12 to 80 letters and digits");
        }
        if (token == null && !LOOPBACK.contains(host)) {
            throw ConfigException.ofOption(
                    "--token",
                    "is missing, and " + host + " is seen from beyond this machine",
                    "12 to 80 letters and digits");
        }
        ConsolePage page;
        try {
            page = new ConsolePage(host, port, Optional.ofNullable(token));
        } catch (IOException | IllegalArgumentException e) {
            throw new IOException(
                    "cannot listen at " + host + ":" + port + " (" + e.getMessage() + "); another --port may be free",
                    e);
        }
        page.start();
        Runtime.getRuntime().addShutdownHook(new Thread(page::close));
        terminal.out().println("Open " + page.address() + " in a browser. Ctrl-C ends it.");
        terminal.out().flush();
        new CountDownLatch(1).await();
        return Evenfall.DONE;
    }
}
