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
                "patern                            | subcommand  | patern | pattern",
                "--colour                          | --colour    | not known | --help",
            })
    void a_wrong_word_on_the_command_line_is_one_line_and_status_two(
            String line, String place, String wrong, String allowed) {
        isOneLineWithStatusTwo(Captured.run(line.split(" ")), place, wrong, allowed);
    }

    @Test
    void an_outlet_file_whose_window_is_upside_down_is_refused_with_file_and_line() throws IOException {
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
    void an_outlet_file_that_is_not_there_is_refused() {
        isOneLineWithStatusTwo(
                Captured.run("pattern", "--outlet", folder.resolve("gone.yaml").toString()),
                "gone.yaml",
                "no such file");
    }

    @Test
    void help_goes_to_standard_output_with_status_zero() {
        Captured help = Captured.run("pattern", "--help");
        assertThat(help.status()).isZero();
        assertThat(help.out()).contains("--height-m");
        assertThat(help.err()).isEmpty();
    }

    @Test
    void json_is_the_only_thing_on_standard_output() {
        Captured json = Captured.run("pattern", "--json", "--outlet", "streamer-bar");
        assertThat(json.status()).isZero();
        assertThat(json.out()).startsWith("{").endsWith("}\n");
        assertThat(json.err()).isEmpty();
    }
}
