package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WrongInputTest {
    @TempDir
    Path folder;

    private static void isOneLineWithStatusTwo(Captured captured, String... parts) {
        assertThat(captured.status()).isEqualTo(2);
        assertThat(captured.out()).isEmpty();
        assertThat(captured.err().lines()).hasSize(1);
        assertThat(captured.err()).contains(parts).contains("allowed: ");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "pattern --spacing-m -0.5          | --spacing-m | -0.5   | above 0, at most 3 m",
                "pattern --spacing-m 0             | --spacing-m | 0      | above 0, at most 3 m",
                "pattern --outlet nine-stream      | outlet      | nine-stream | three-stream, five-stream",
                "pattern --height-m 0.5,12         | --height-m  | 12     | from -1 to 5 m",
                "pattern --height-m abc            | --height-m  | abc    | a number",
                "pattern --height-m NaN            | --height-m  | NaN    | from -1 to 5 m",
                "pattern --height-m ,              | --height-m  | 0 heights | 1 to 100",
                "pattern --heigth-m 1              | --heigth-m  | not known | --height-m",
                "pattern --sg                      | --sg        | no value | a number",
                "pattern --sg 0.1                  | --sg        | 0.1    | from 0.5 to 2",
                "pattern --pressure-kPa 0          | --pressure-kPa | 0   | above 0",
                "pattern --row-m 0.001             | --row-m     | 0.001  | from 0.01",
                "pattern --count 0                 | --count     | 0      | from 1 to 1000",
                "pattern --count 1.5               | --count     | 1.5    | a whole number",
                "pattern --units furlong           | --units     | furlong | metric, us",
                "pattern --sg 1.1 --sg 1.2         | --sg        | twice  | once",
                "pattern more                      | pattern     | more   | evenfall pattern",
                "run no-such-scenario              | no-such-scenario | no such scenario | terrace-crossing",
                "run --pace fast                   | --pace      | fast   | real, max",
                "run --seed x                      | --seed      | x      | a whole number",
                "run --outlet nine-stream          | outlet      | nine-stream | three-stream",
                "run --broker nowhere              | --broker    | nowhere | HOST:PORT",
                "run --broker 127.0.0.1:99999      | --broker    | 99999  | HOST:PORT",
                "feed                              | SCENARIO    | missing | level-field",
                "feed level-field                  | --virtual   | 0 of them | one way",
                "feed level-field --virtual --trace x | --virtual | 2 of them | one way",
                "feed level-field --virtual --speed 0 | --speed  | 0      | from 0.1 to 100",
                "feed level-field --port nose=/dev/null | --port | nose   | hub, gnss",
                "replay                            | TRACE       | missing | a trace",
                "replay no-such-file               | no-such-file | no such file | a trace",
                "compare --outlets three-stream,nope | outlet    | nope   | five-stream",
                "compare level-field --outlets ,   | --outlets   | none   | three-stream",
                "score --seeds five                | --seeds     | five   | tuning, scoring",
                "score --seeds 5-3                 | --seeds     | 5-3    | A-B with A not above B",
                "score --jobs 0                    | --jobs      | 0      | from 1",
                "score --clean-hours -1            | --clean-hours | -1   | from 0",
                "score --scenario nope             | nope        | no such scenario | terrace-crossing",
                "score --outlets nope --scenario level-field | outlet | nope | five-stream",
                "score --faults-only --scenarios-only | --faults-only | beside scenarios | one of",
                "patern                            | subcommand  | patern | pattern",
                "--colour                          | --colour    | not known | --help",
            })
    void aWrongWordOnTheCommandLineIsOneLineAndStatusTwo(String line, String place, String wrong, String allowed) {
        isOneLineWithStatusTwo(Captured.run(line.split(" ")), place, wrong, allowed);
    }

    @Test
    void anOutletFileWhoseWindowIsUpsideDownIsRefusedWithFileAndLine() throws IOException {
        Path file = Files.writeString(folder.resolve("mine.yaml"), """
                id: mine
                title: Invented
                rated: {pressure_kPa: 200, flow_Lpm: 1.6}
                window: {low_kPa: 500, high_kPa: 400}
                streams:
                  - {share: 1, offset_m: 0, splay_deg: 20.2, tilt_deg: 0, exit_mps: 5}
                """);
        isOneLineWithStatusTwo(
                Captured.run("pattern", "--outlet", file.toString()), "mine.yaml:4", "window.high_kPa", "low end");
    }

    @Test
    void anOutletFileThatIsNotThereIsRefused() {
        isOneLineWithStatusTwo(
                Captured.run("pattern", "--outlet", folder.resolve("gone.yaml").toString()),
                "gone.yaml",
                "no such file");
    }

    @Test
    void aScenarioWithATypoIsRefusedWithFileAndLine() throws IOException {
        Path file = Files.writeString(folder.resolve("field.yaml"), "title: Invented\nsecond: 10\n");
        isOneLineWithStatusTwo(
                Captured.run("run", "--pace", "max", file.toString()), "field.yaml:2", "second", "seconds");
    }

    @Test
    void aRigFileWithATypoIsRefusedWithFileAndLine() throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.yaml"), "name: x\nbom: {}\n");
        Path trace = Files.writeString(folder.resolve("trace.txt"), "0 - end\n");
        isOneLineWithStatusTwo(Captured.run("replay", "--rig", rig.toString(), trace.toString()), "rig.yaml:", "boom");
    }

    @Test
    void helpGoesToStandardOutputWithStatusZero() {
        Captured help = Captured.run("pattern", "--help");
        assertThat(help.status()).isZero();
        assertThat(help.out()).contains("--height-m");
        assertThat(help.err()).isEmpty();
    }

    @Test
    void jsonIsTheOnlyThingOnStandardOutput() {
        Captured json = Captured.run("pattern", "--json", "--outlet", "streamer-bar");
        assertThat(json.status()).isZero();
        assertThat(json.out()).startsWith("{").endsWith("}\n");
        assertThat(json.err()).isEmpty();
    }
}
