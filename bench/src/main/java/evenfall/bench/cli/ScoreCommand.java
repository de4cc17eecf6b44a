package evenfall.bench.cli;

import evenfall.bench.matrix.Limit;
import evenfall.bench.matrix.Matrix;
import evenfall.bench.matrix.MatrixJson;
import evenfall.bench.matrix.MatrixText;
import evenfall.bench.matrix.Runs;
import evenfall.bench.matrix.Wanted;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "score",
        description =
                "Every scenario with every outlet type, every fault alone, and ground with nothing wrong: what was"
                        + " raised, how soon, what without cause, and how far the senses are off. Status 1 when a limit is not met.")
final class ScoreCommand implements Callable<Integer> {
    private static final int MOST_HOURS = 1000;

    /** A line for each twentieth part, where nobody watches. */
    private static final int LINES = 20;

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Option(
            names = "--scenario",
            paramLabel = "NAME|FILE",
            split = ",",
            splitSynopsisLabel = ",",
            description = "Only these scenarios.")
    private List<String> scenarios = List.of();

    @Mixin
    private OutletTypesOption types = new OutletTypesOption();

    @Option(names = "--faults-only", description = "Only the faults, each alone.")
    private boolean faultsOnly;

    @Option(
            names = "--scenarios-only",
            description =
                    "One line a scenario, each with its own outlets, and with its own seed if no seeds are given.")
    private boolean scenariosOnly;

    @Option(
            names = "--seeds",
            paramLabel = "A-B|tuning|scoring",
            description = "From A to B; tuning is 1-5, scoring, which is taken if absent, 101-105.")
    private @Nullable String seeds;

    @Option(
            names = "--clean-hours",
            paramLabel = "N",
            defaultValue = "0",
            description = "Also N hours of work with nothing wrong, on ground of class B and C.")
    private int cleanHours;

    @Mixin
    private JobsOption jobs = new JobsOption();

    ScoreCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException, InterruptedException {
        int many = jobs.runsAtATime();
        Ranges.within("--clean-hours", cleanHours, 0, MOST_HOURS, "hours");
        Wanted wanted = wanted();
        long startNs = System.nanoTime();
        Matrix matrix = Runs.make(wanted, many, this::progress);
        double seconds = (System.nanoTime() - startNs) / 1e9;
        terminal.err().printf("%d runs in %.0f s, %d at a time%n", matrix.runs(), seconds, many);
        if (common.json) {
            terminal.out().println(Json.text(MatrixJson.of(matrix)));
        } else if (scenariosOnly) {
            terminal.print(new MatrixText(terminal.paint()).scenarios(matrix));
        } else {
            terminal.print(new MatrixText(terminal.paint()).lines(matrix));
        }
        return Limit.anyMissed(Limit.of(matrix)) ? Evenfall.FAILED : Evenfall.DONE;
    }

    private Wanted wanted() throws ConfigException {
        if (faultsOnly && (scenariosOnly || !scenarios.isEmpty())) {
            throw ConfigException.ofOption(
                    "--faults-only",
                    "stands beside scenarios",
                    "one of --faults-only, --scenarios-only and --scenario");
        }
        List<String> outlets = types.idsOrFiles();
        boolean all = !faultsOnly && !scenariosOnly && scenarios.isEmpty();
        List<Long> from = scenariosOnly && seeds == null && cleanHours == 0
                ? List.of()
                : Seeds.of(seeds == null ? "scoring" : seeds);
        return new Wanted(
                faultsOnly ? List.of() : scenarios.isEmpty() ? Scenarios.names() : scenarios,
                scenariosOnly && !types.isGiven() ? List.of() : outlets,
                from,
                all || faultsOnly,
                all,
                cleanHours);
    }

    private void progress(int runs, int of) {
        if (terminal.live()) {
            terminal.err().print("\r" + runs + " of " + of + " runs ");
            if (runs == of) {
                terminal.err().print("\r");
            }
            terminal.err().flush();
        } else if (runs * LINES / of != (runs - 1) * LINES / of) {
            terminal.err().println(runs + " of " + of + " runs");
        }
    }
}
