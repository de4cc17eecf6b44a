package evenfall.app;

import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What the programs of this jar have in common at the command line. */
final class CommandLines {
    static final int WRONG_INPUT = 2;

    private CommandLines() {}

    /** Runs a command; wrong input is one line on standard error and status 2. */
    static int run(Object command, String... arguments) {
        return new CommandLine(command)
                .setParameterExceptionHandler((wrong, args) -> {
                    wrong.getCommandLine().getErr().println(complaint(wrong).replaceAll("\\s*\\R\\s*", " "));
                    return WRONG_INPUT;
                })
                .execute(arguments);
    }

    static String complaint(ParameterException wrong) {
        CommandSpec spec = wrong.getCommandLine().getCommandSpec();
        if (wrong instanceof UnmatchedArgumentException unmatched
                && !unmatched.getUnmatched().isEmpty()) {
            String word = unmatched.getUnmatched().get(0);
            return unmatched.isUnknownOption()
                    ? "option " + word + ": is not known; allowed: "
                            + spec.options().stream()
                                    .map(OptionSpec::longestName)
                                    .sorted()
                                    .collect(Collectors.joining(", "))
                    : word + ": is one word too many; allowed: " + words(spec) + " and options";
        }
        if (wrong instanceof MissingParameterException missing
                && !missing.getMissing().isEmpty()) {
            ArgSpec first = missing.getMissing().get(0);
            String allowed = String.join(" ", first.description());
            return first instanceof OptionSpec option
                    ? "option " + option.longestName() + ": has no value; allowed: " + first.paramLabel() + ", "
                            + allowed
                    : first.paramLabel() + ": is missing; allowed: " + allowed;
        }
        return wrong.getMessage() + "; allowed: see --help";
    }

    private static String words(CommandSpec spec) {
        return spec.positionalParameters().stream().map(ArgSpec::paramLabel).collect(Collectors.joining(" "));
    }

    static String version() {
        String version = Main.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }

    /** For {@code --version}. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"evenfall-controller " + version()};
        }
    }
}
