package evenfall.bench.cli;

import evenfall.bench.received.ReportedAlert;
import evenfall.bench.replay.ReplayJson;
import evenfall.bench.replay.ReplayResult;
import evenfall.bench.replay.ReplayText;
import evenfall.bench.replay.Replaying;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.quantity.FixedDecimals;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.trace.TraceEnd;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "replay",
        description = "A recorded trace, or a receiver's raw log, through the monitor's core.",
        showDefaultValues = true)
@SuppressWarnings("NullAway.Init")
final class ReplayCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Parameters(paramLabel = "TRACE", description = "A trace or a receiver's raw log, packed by gzip or not.")
    private Path trace;

    @Option(
            names = "--rig",
            paramLabel = "FILE",
            description = "The rig file of the machine it was recorded on; without it only the receiver is watched.")
    private @Nullable Path rigFile;

    @Option(
            names = "--pace",
            paramLabel = "real|max",
            defaultValue = "max",
            description = "As recorded, or as fast as it goes.")
    private Replaying.Pace pace = Replaying.Pace.MAX;

    ReplayCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException {
        Rig rig = rigFile == null ? Replaying.receiverOnly() : RigFile.read(rigFile);
        ReplayText text = new ReplayText(common.units, terminal.paint());
        ReplayResult result = Replaying.of(trace, rig, pace, new Replaying.Watcher() {
            @Override
            public void alert(ReportedAlert alert) {
                if (pace == Replaying.Pace.REAL) {
                    terminal.err().println(text.line(alert));
                }
            }

            @Override
            public void coreRestarted(double atS, String unexpected) {
                terminal.err()
                        .println("evenfall: at " + FixedDecimals.text(atS, 1) + " s the core was started anew after "
                                + unexpected);
            }
        });
        if (result.end() instanceof TraceEnd.TornTail torn) {
            terminal.err()
                    .println("evenfall: " + trace + ":" + torn.line() + ": ends in the middle of a line; what came "
                            + "of a sentence counts as malformed, anything else is left out");
        }
        if (common.json) {
            terminal.out().println(Json.text(ReplayJson.of(result)));
        } else {
            terminal.print(text.lines(result));
        }
        return Evenfall.DONE;
    }
}
