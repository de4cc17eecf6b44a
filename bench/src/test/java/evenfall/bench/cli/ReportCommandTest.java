package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReportCommandTest {
    @TempDir
    Path folder;

    @Test
    void aRunThatWasKeptStandsBesideOneThatIsDrivenNow() throws Exception {
        Path kept = folder.resolve("kept");
        assertThat(Captured.run("run", "level-field", "--pace", "max", "--keep", kept.toString())
                        .status())
                .isZero();
        Path html = folder.resolve("page.html");
        Path svg = folder.resolve("svg");
        Captured said = Captured.run(
                "report",
                kept.toString(),
                "--before",
                "level-field",
                "--html",
                html.toString(),
                "--svg",
                svg.toString());
        assertThat(said.status()).as(said.err()).isZero();
        assertThat(said.out()).contains("wrote " + html);
        assertThat(Files.readString(html)).contains("before and after", "Boom heights over distance");
        try (var files = Files.list(svg)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .contains("before-left-tip.svg", "after-rate.svg");
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "nowhere | no such scenario",
                "terrace-crossing --compare --before level-field | one of the two",
                "missing.json | cannot be read",
                "terrace-crossing --html /nowhere/x.html | there is no folder",
                "terrace-crossing --before-outlet no-such | no-such"
            })
    void wrongInputIsOneLineAndStatusTwo(String args, String says) {
        Captured said = Captured.run(("report " + args).split(" "));
        assertThat(said.status()).isEqualTo(2);
        assertThat(said.err().strip()).contains(says).doesNotContain("\n");
    }
}
