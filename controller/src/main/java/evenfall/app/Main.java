package evenfall.app;

import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.serial.SerialLibrary;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The program of the board: {@code java -jar evenfall-controller.jar RIG.yaml}. */
@Command(
        name = "evenfall-controller",
        description = "Watches rate, rows and boom height, and warns over MQTT and on the console.",
        mixinStandardHelpOptions = true,
        versionProvider = CommandLines.Version.class,
        exitCodeListHeading = "Exit status:%n",
        exitCodeList = {
            "0:stopped by a signal",
            "1:could not go on",
            "2:the input is wrong; one line on standard error says what and what is allowed"
        })
@SuppressWarnings("NullAway.Init")
public final class Main implements Callable<Integer> {
    private static final long NS_PER_US = 1000;

    @Parameters(
            index = "0",
            paramLabel = "RIG.yaml",
            description = "the machine: boom, outlets, sensors, limits, ports, broker")
    private Path rigFile;

    @Option(
            names = "--trace",
            paramLabel = "FILE",
            description =
                    "record every input, to be replayed later; a file that exists is not touched, the name gets a number")
    private @Nullable Path trace;

    @Option(names = "--quiet", description = "no line a second on the console; alerts and changes are still shown")
    private boolean quiet;

    private Main() {}

    /** Runs until a signal stops it. */
    public static void main(String[] arguments) {
        QuietLogs.keepQuiet();
        System.exit(CommandLines.run(new Main(), arguments));
    }

    @Override
    public Integer call() throws InterruptedException {
        Rig rig;
        Writer recording = null;
        try {
            rig = RigFile.read(rigFile);
            String noLibrary = SerialLibrary.load();
            if (noLibrary != null) {
                System.err.println(noLibrary);
                // Not by way of exit: the library's own hook would fail once more, with a stack trace.
                Runtime.getRuntime().halt(1);
            }
            if (trace != null) {
                recording = create(trace);
            }
        } catch (ConfigException e) {
            System.err.println(e.getMessage());
            return CommandLines.WRONG_INPUT;
        }
        Console console = new Console(System.out);
        console.start();
        // Event time begins here, not with the process: what it takes to read the rig file is not silence of a port.
        long startNs = System.nanoTime();
        LongSupplier clockUs = () -> (System.nanoTime() - startNs) / NS_PER_US;
        Controller controller = new Controller(rig, CommandLines.version(), recording, console, quiet, clockUs);
        Thread.setDefaultUncaughtExceptionHandler(
                (thread, unexpected) -> controller.unexpected("thread " + thread.getName() + " ended by", unexpected));
        SerialLibrary.whenStopping(new Thread(() -> stop(controller), "stop"));
        controller.start();
        controller.await();
        return controller.exitStatus();
    }

    /**
     * Ends the process with the status of the controller: a signal is the way to stop it, and Java's own status for that would tell
     * a supervisor that it had failed.
     */
    private static void stop(Controller controller) {
        try {
            controller.stop();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(controller.exitStatus());
    }

    private static Writer create(Path wanted) throws ConfigException {
        try {
            return TraceFiles.create(wanted);
        } catch (IOException e) {
            throw ConfigException.ofOption(
                    "--trace",
                    wanted + " cannot be written (" + FileCheck.reason(e) + ")",
                    "a file in a folder that exists");
        }
    }
}
