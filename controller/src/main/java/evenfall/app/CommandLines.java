package evenfall.app;

import picocli.CommandLine;

/** What the programs of this jar have in common at the command line. */
final class CommandLines {
    static final int WRONG_INPUT = 2;

    private CommandLines() {}

    /** Runs a command; wrong input is one line on standard error and status 2. */
    static int run(Object command, String... arguments) {
        return new CommandLine(command)
                .setParameterExceptionHandler((wrong, args) -> {
                    wrong.getCommandLine()
                            .getErr()
                            .println(String.valueOf(wrong.getMessage()).replace('\n', ' ') + "; allowed: see --help");
                    return WRONG_INPUT;
                })
                .execute(arguments);
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
