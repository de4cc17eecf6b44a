package evenfall.bench.cli;

import evenfall.bench.report.Paint;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The bench's main program. */
@Command(
        name = "evenfall",
        description = "Even nitrogen under a wide boom: simulate, monitor, score.",
        synopsisSubcommandLabel = "SUBCOMMAND")
public final class Evenfall implements Runnable {
    static final String DEBUG = "--debug";
    static final int DONE = 0;
    static final int FAILED = 1;
    static final int WRONG_INPUT = 2;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    boolean help;

    private Evenfall() {}

    public static void main(String[] args) {
        System.exit(run(Terminal.ofProcess(), args));
    }

    /** Runs one command and gives its exit status; never throws. */
    static int run(Terminal terminal, String... args) {
        Complaints complaints = new Complaints(terminal.err());
        CommandLine line = new CommandLine(new Evenfall());
        line.addSubcommand(new RunCommand(terminal));
        line.addSubcommand(new FeedCommand(terminal));
        line.addSubcommand(new ReplayCommand(terminal));
        line.addSubcommand(new CompareCommand(terminal));
        line.addSubcommand(new ReportCommand(terminal));
        line.addSubcommand(new ScoreCommand(terminal));
        line.addSubcommand(new StudyCommand(terminal));
        line.addSubcommand(new PatternCommand(terminal));
        line.addSubcommand(new ProveCommand(terminal));
        line.addSubcommand(new ChooseCommand(terminal));
        line.addSubcommand(new ConsoleCommand(terminal));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setOut(new PrintWriter(terminal.out(), true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(terminal.err(), true, StandardCharsets.UTF_8));
        line.setParameterExceptionHandler(complaints);
        line.setExecutionExceptionHandler(complaints);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(
                terminal.paint() == Paint.ON ? CommandLine.Help.Ansi.ON : CommandLine.Help.Ansi.OFF));
        line.setUsageHelpWidth(terminal.columns());
        try {
            return line.execute(args);
        } catch (RuntimeException | Error e) {
            return complaints.unexpected(e, args);
        }
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}
