package evenfall.app;

import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.judge.Alert;
import evenfall.message.Publisher;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.replay.CoreBrokenException;
import evenfall.replay.TraceReplay;
import evenfall.rig.RigFile;
import evenfall.trace.TraceFormatException;
import evenfall.trace.TraceSource;
import evenfall.wire.WireCounts;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A recorded trace through the core of this jar, without ports or broker: what it says now, it said then. */
@Command(
        name = "evenfall-replay",
        description = "Prints every message that the trace leads to, then their digest and the counts of the decoders.",
        mixinStandardHelpOptions = true,
        versionProvider = CommandLines.Version.class)
@SuppressWarnings("NullAway.Init")
public final class Replay implements Callable<Integer> {
    private static final int BUFFER_BYTES = 1 << 16;

    @Parameters(index = "0", paramLabel = "RIG.yaml", description = "the machine that the trace was recorded on")
    private Path rigFile;

    @Parameters(index = "1", paramLabel = "TRACE", description = "a trace, or the raw log of a receiver")
    private Path trace;

    private Replay() {}

    /** Messages on standard output, everything else on standard error. */
    public static void main(String[] arguments) {
        QuietLogs.keepQuiet();
        System.exit(CommandLines.run(new Replay(), arguments));
    }

    @Override
    public Integer call() throws IOException {
        PrintStream out =
                new PrintStream(new BufferedOutputStream(System.out, BUFFER_BYTES), false, StandardCharsets.UTF_8);
        try (InputStream in = open()) {
            Publisher printer = (topic, payload, retained, delivery) -> {
                out.print(topic);
                out.print(' ');
                out.write(payload.bytes(), 0, payload.length());
                out.print('\n');
            };
            TraceReplay.Outcome outcome = TraceReplay.run(
                    RigFile.read(rigFile),
                    TraceSource.open(in, trace.toString()).notEmpty(trace.toString())::next,
                    printer,
                    new Unheard(),
                    (timeUs, unexpected) -> System.err.println(
                            ConsoleText.note(timeUs, "the core was started anew after " + unexpected)));
            out.flush();
            System.err.println(summary(outcome));
            return 0;
        } catch (ConfigException e) {
            System.err.println(e.getMessage());
            return CommandLines.WRONG_INPUT;
        } catch (TraceFormatException e) {
            System.err.println(e.getMessage());
            return CommandLines.WRONG_INPUT;
        } catch (CoreBrokenException e) {
            System.err.println(e.getMessage());
            return 1;
        }
    }

    private InputStream open() throws ConfigException {
        String allowed = "a trace, or a receiver's raw log";
        FileCheck.isReadable(trace, trace.toString(), allowed);
        try {
            return Files.newInputStream(trace);
        } catch (IOException e) {
            throw new ConfigException(
                    trace.toString(), 0, null, "cannot be read (" + FileCheck.reason(e) + ")", allowed);
        }
    }

    private static String summary(TraceReplay.Outcome outcome) {
        WireCounts wire = outcome.wire();
        return outcome.messages() + " messages, SHA-256 of them " + outcome.digest() + "\n" + wire.sentences()
                + " sentences: " + wire.accepted() + " accepted, " + wire.ignored() + " ignored, rejected "
                + wire.rejectedChecksum() + " for their checksum, " + wire.rejectedMalformed() + " malformed, "
                + wire.rejectedTooLong() + " too long";
    }

    private static final class Unheard implements Outputs {
        @Override
        public void live(Live live) {}

        @Override
        public void raised(Alert alert) {}

        @Override
        public void cleared(Alert alert, long clearedUs) {}
    }
}
