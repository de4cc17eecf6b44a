package evenfall.bench.cli;

import evenfall.quantity.Units;
import picocli.CommandLine.Option;

/** Options of every subcommand that prints a result. */
final class CommonOptions {
    @Option(names = "--json", description = "Print one JSON document; everything else goes to standard error.")
    boolean json;

    @Option(
            names = "--units",
            paramLabel = "metric|us",
            defaultValue = "metric",
            description = "Units for people; JSON carries its units in its keys.")
    Units units = Units.METRIC;

    @Option(names = Evenfall.DEBUG, description = "Show where in the program an unexpected error arose.")
    boolean debug;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    boolean help;
}
