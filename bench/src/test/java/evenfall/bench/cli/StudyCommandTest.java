package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudyCommandTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--ground X | there is no class X",
                "--ground B,B | given twice",
                "--outlets no-such | no-such",
                "--speed-kmh fast | fast is no number",
                "--speed-kmh 8, | is no number",
                "--speed-kmh 90 | from 2 to 40 km/h",
                "--speed-kmh 8 --speed-mph 5 | one of the two",
                "--height-m 3 | from 0.1 to 1.5 m",
                "--seeds 5-1 | cannot be used",
                "--seconds 1 | from 5 to 3600",
                "--jobs 0 | from 1",
                "--resume | holds no study"
            })
    void wrongInputIsOneLineAndStatusTwo(String args, String says) {
        Captured said = Captured.run(("study --out " + folder.resolve("s") + " " + args).split(" "));
        assertThat(said.status()).as(said.err()).isEqualTo(2);
        assertThat(said.err().strip()).contains(says).doesNotContain("\n");
    }
}
