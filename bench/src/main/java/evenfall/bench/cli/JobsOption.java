package evenfall.bench.cli;

import evenfall.config.ConfigException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How much is done at a time. */
final class JobsOption {
    private static final int MOST = 256;

    @Option(names = "--jobs", paramLabel = "N", description = "Runs at a time; as many as there are cores if absent.")
    private @Nullable Integer jobs;

    int runsAtATime() throws ConfigException {
        int many = jobs == null ? Runtime.getRuntime().availableProcessors() : jobs;
        Ranges.within("--jobs", many, 1, MOST, "");
        return many;
    }
}
