package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

class CommandLinesTest {
    @Command(name = "box", mixinStandardHelpOptions = true)
    static final class Box implements Runnable {
        @Parameters(index = "0", paramLabel = "RIG.yaml", description = "the machine")
        String rig = "";

        @Option(names = "--trace", paramLabel = "FILE", description = "a file to record into")
        String trace = "";

        @Option(names = "--times", description = "how often")
        int times;

        @Override
        public void run() {}
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "a --shout        | option --shout: is not known; allowed: --help, --times, --trace, --version",
                "a b              | b: is one word too many; allowed: RIG.yaml and options",
                "--trace x        | RIG.yaml: is missing; allowed: the machine",
                "a --trace        | option --trace: has no value; allowed: FILE, a file to record into",
                "a --times once   | Invalid value for option '--times': 'once' is not an int; allowed: see --help",
            })
    void aWrongWordIsSaidInOneLine(String line, String said) {
        CommandLine command = new CommandLine(new Box());
        try {
            command.parseArgs(line.split(" "));
        } catch (ParameterException e) {
            assertThat(CommandLines.complaint(e)).isEqualTo(said);
            return;
        }
        throw new AssertionError(line + " was taken");
    }
}
