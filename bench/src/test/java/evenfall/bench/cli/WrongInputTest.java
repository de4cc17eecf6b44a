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
                "run --broker 127.0.0.1:1          | --broker    | no MQTT broker answers at 127.0.0.1:1 | HOST:PORT",
                "run --pace max --keep /dev/null/x | --keep      | /dev/null/x | a folder",
                "feed level-field --trace /nonexistent/x | --trace | /nonexistent/x cannot be written: there is no folder /nonexistent | a file in a folder",
                "feed level-field --trace /dev     | --trace     | /dev is a folder | a file in a folder",
                "feed level-field --virtual --rig /nonexistent/x | --rig | no folder /nonexistent | a file",
                "feed level-field --port hub=/dev/no-such-port | --port | there is no serial port /dev/no-such-port | NAME=DEVICE",
                "feed level-field --port hub=/dev/null | --port  | /dev/null cannot be opened | NAME=DEVICE",
                "compare --picture /nonexistent/x  | --picture   | no folder /nonexistent | a file",
                "feed                              | SCENARIO    | missing | level-field",
                "feed level-field                  | --virtual   | 0 of them | one way",
                "feed level-field --virtual --trace x | --virtual | 2 of them | one way",
                "feed level-field --virtual --speed 0 | --speed  | 0      | from 0.1 to 100",
                "feed level-field --port nose=/dev/null | --port | nose   | hub, gnss",
                "replay                            | TRACE       | missing | a trace",
                "replay no-such-file               | no-such-file | no such file | a trace",
                "replay .                          | .           | is a folder | a trace",
                "replay /dev/null                  | /dev/null   | is a device | a trace",
                "run .                             | .           | is a folder | terrace-crossing",
                "compare --outlets three-stream,nope | outlet    | nope   | five-stream",
                "compare level-field --outlets ,   | --outlets   | none   | three-stream",
                "choose --rate-Lpha 250-150        | --rate-Lpha | 250-150 begins above its end | the lower first",
                "choose --rate-Lpha 150..250       | --rate-Lpha | 150..250 | low-high in L/ha",
                "choose --rate-Lpha 0-250          | --rate-Lpha | 0 cannot | from 1 to 5000 L/ha",
                "choose --rate 150-250             | --rate      | not known | --rate-Lpha",
                "choose --rate-Lpha 150-250 --rate-galpac 10-60 | --rate-Lpha | beside --rate-galpac | one of the two",
                "choose --speed-kmh 8-14 --speed-mph 5-9 | --speed-kmh | beside --speed-mph | one of the two",
                "choose --speed-mph -5             | --speed-mph | -5     | low-high in mph",
                "choose --pressure-psi 60-15       | --pressure-psi | begins above | the lower first",
                "choose --pressure-kPa 100-9000    | --pressure-kPa | 9000 | from 1 to 2000 kPa",
                "choose --spacing-in 0             | --spacing-in | 0     | from",
                "choose --spacing-m 0.5 --spacing-in 20 | --spacing-m | beside --spacing-in | one of the two",
                "choose --row-m x                  | --row-m     | x      | a number in m",
                "choose --height-m 0               | --height-m  | 0      | from 0.02 to 2 m",
                "choose --height-wander-m 0.1 --height-within-in 8 | --height-within | beside | one of the two",
                "choose --air-C 10 --air-F 50      | --air-C     | beside | one of the two",
                "choose --air-F 500                | --air-F     | 500    | from -40 to 130",
                "choose --product milk             | --product   | milk   | uan-28",
                "choose --thiosulphate-share 15    | --thiosulphate-share | 15 | from 0 to 1",
                "choose --density-kgpL 12          | --density-kgpL | 12  | from 0.7 to 1.8 kg/L",
                "choose --limit-cv-pct 0           | --limit-cv-pct | 0   | above 0",
                "choose --width-m 0.2              | --width-m   | 0.2    | from 1 to 100 m",
                "choose --outlets three-stream,three-stream | --outlets | twice | each type once",
                "choose --outlets nine-stream      | outlet      | nine-stream | three-stream",
                "choose --outlets ,                | --outlets   | none   | three-stream",
                "choose --weigh price=2            | --weigh     | price=2 | cost, tolerance",
                "choose --prices no-such-file      | no-such-file | no such file | readable file",
                "choose --html no/such/folder.html | --html      | cannot be written | folder",
                "score --seeds five                | --seeds     | five   | tuning, scoring",
                "score --seeds 5-3                 | --seeds     | 5-3    | A-B with A not above B",
                "score --jobs 0                    | --jobs      | 0      | from 1",
                "score --clean-hours -1            | --clean-hours | -1   | from 0",
                "score --scenario nope             | nope        | no such scenario | terrace-crossing",
                "score --outlets nope --scenario level-field | outlet | nope | five-stream",
                "score --outlets , --scenario level-field | --outlets | none | three-stream",
                "study --out x --outlets ,         | --outlets   | none   | three-stream",
                "score --faults-only --scenarios-only | --faults-only | beside scenarios | one of",
                "patern                            | subcommand  | patern | pattern",
                "--colour                          | --colour    | not known | --help",
            })
    void aWrongWordOnTheCommandLineIsOneLineAndStatusTwo(String line, String place, String wrong, String allowed) {
        isOneLineWithStatusTwo(Captured.run(line.split(" ")), place, wrong, allowed);
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "pattern | --height-m | ''    | --height-m: an empty text cannot be used; allowed: a number",
                "pattern | --height-m | 1e300 | --height-m: 1.0E300 cannot be used; allowed: from -1 to 5 m",
                "pattern | --height-m | 1e-300,9 | --height-m: 9 cannot be used",
                "pattern | --outlet   | ''    | --outlet: an empty text cannot be used; allowed: three-stream",
                "feed    | --port     | hub   | --port: hub cannot be used; allowed: NAME=DEVICE",
                "run     | ''         | --json | SCENARIO: an empty name cannot be used; allowed: level-field",
                "replay  | ''         | --json | FILE: an empty name cannot be used; allowed: a trace",
            })
    void whatIsEmptyOrAbsurdIsNamedPlainly(String command, String option, String value, String said) {
        Captured captured = Captured.run(command, option, value);
        isOneLineWithStatusTwo(captured, said);
        assertThat(captured.err()).hasSizeLessThan(500);
    }

    @Test
    void aHugeWordIsCutShort() {
        Captured captured = Captured.run("pattern", "--count", "9".repeat(5_000));
        isOneLineWithStatusTwo(captured, "--count: 999", "…");
        assertThat(captured.err()).hasSizeLessThan(200);
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
    void anOutletFileThatTakesTheIdOfABuiltInTypeIsRefused() throws IOException {
        String text = """
                # Invented.
                id: five-stream
                title: Invented
                rated: {pressure_kPa: 200, flow_Lpm: 1.6}
                window: {low_kPa: 100, high_kPa: 400}
                streams:
                  - {share: 1, offset_m: 0, splay_deg: 20.2, tilt_deg: 0, exit_mps: 5}
                """;
        Path file = Files.writeString(folder.resolve("mine.yaml"), text);
        isOneLineWithStatusTwo(
                Captured.run("pattern", "--outlet", file.toString()),
                "mine.yaml:2: id: five-stream is a built-in type; allowed: an id of its own");
        Files.writeString(file, text.replace("id: five-stream", "id: mine"));
        assertThat(Captured.run("pattern", "--outlet", file.toString()).status())
                .isZero();
    }

    @Test
    void aPressureOutsideTheWindowIsWarnedOfOnStandardError() {
        Captured low = Captured.run("pattern", "--json", "--pressure-kPa", "50");
        assertThat(low.status()).isZero();
        assertThat(low.out()).startsWith("{").contains("\"outside_window\" : true");
        assertThat(low.err())
                .hasLineCount(1)
                .contains("50 kPa lies outside the window of five-stream, 100 kPa to 400 kPa");
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
    void aTraceInWhichNothingHappensIsRefused() throws IOException {
        Path trace = Files.writeString(folder.resolve("trace.txt"), "# nothing came\n9000000 - end\n");
        isOneLineWithStatusTwo(
                Captured.run("replay", "--json", trace.toString()),
                "trace.txt:",
                "the file has no sentence",
                "one event");
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
