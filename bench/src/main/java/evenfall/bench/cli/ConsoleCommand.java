package evenfall.bench.cli;

import evenfall.bench.console.ConsolePage;
import evenfall.bench.workbench.Workbench;
import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
        name = "console",
        description = "A web page: drive, break and compare runs, choose outlets, and lead bench tests step by step.")
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

    @Option(names = "--rig", paramLabel = "RIG.yaml", description = "The machine that is tested on the bench page.")
    private @Nullable Path rig;

    @Option(
            names = "--device",
            paramLabel = "DEVICE",
            description = "A serial port that this system does not list; may be given several times.")
    private List<String> devices = new ArrayList<>();

    @Option(
            names = "--keep",
            paramLabel = "DIR",
            description = "Where results of bench tests are kept; this folder if absent.")
    private Path keep = Path.of("");

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
        Path folder = keep.toAbsolutePath().normalize();
        if (!Files.isDirectory(folder) || !Files.isWritable(folder)) {
            throw ConfigException.ofOption(
                    "--keep", keep + " cannot be written", "a folder that is there and can be written to");
        }
        Optional<Rig> machine = rig == null ? Optional.empty() : Optional.of(RigFile.read(rig));
        ConsolePage page;
        try {
            page = new ConsolePage(host, port, Optional.ofNullable(token), new Workbench(machine, devices, folder));
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
