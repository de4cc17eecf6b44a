package evenfall.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import evenfall.rig.RigFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConfigFileTest {
    private static final ConfigSchema RIG = ConfigSchema.resource(RigFile.class, "rig.schema.json");

    @TempDir
    Path folder;

    private static String complaint(String text) {
        Throwable thrown = catchThrowable(() -> ConfigFile.parse("my.yaml", text, RIG));
        assertThat(thrown).isInstanceOf(ConfigException.class);
        assertThat(thrown.getMessage()).doesNotContainPattern("\\p{Cntrl}").contains("; allowed: ");
        assertThat(thrown.getMessage().length()).isLessThan(400);
        return thrown.getMessage();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a: &a [*a]                 | my.yaml:1: a[1]: an alias (*a) cannot be used; allowed: the value written out",
                "a: &a {b: *a}              | my.yaml:1: a.b: an alias (*a) cannot be used",
                "name: &n x~title: *n       | my.yaml:2: title: an alias (*n)",
                "name: x~boom: {}~name: y   | my.yaml:3: name: stands twice, first on line 1; allowed: each key once",
                "boom: {row_m: 1, row_m: 2} | my.yaml:1: boom.row_m: stands twice, first on line 1",
                "name: x~boom:~  row_m: .nan| my.yaml:3: boom.row_m: .nan cannot be used; allowed: a number in digits",
                "ports: [1, -.inf]          | my.yaml:1: ports[2]: -.inf cannot be used; allowed: a number in digits",
                "name: !!str x              | my.yaml:1: name: a tag (tag:yaml.org,2002:str) cannot be used",
                "? [a, b]~: 1               | my.yaml:1: a key that is itself a group or a list",
                "name: x~---~name: y        | my.yaml:2: a second document begins here; allowed: one document in a file",
                "name: [a~title: x          | my.yaml:2: is not YAML (expected ',' or ']', but got :)",
                "name: \u0001x              | my.yaml: is not YAML (special characters are not allowed)",
            })
    void whatGoesBeyondPlainKeysAndValuesIsNamedWithItsPlace(String text, String says) {
        assertThat(complaint(text.replace('~', '\n'))).startsWith(says);
    }

    @Test
    void nestingHasALimitWhateverItsDepth() {
        for (int depth : new int[] {KeyLines.DEEPEST, 1_000, 100_000}) {
            assertThat(complaint("name: " + "[".repeat(depth) + "]".repeat(depth)))
                    .startsWith("my.yaml:1: more than 20 levels of groups and lists");
            assertThat(complaint("name: " + "{a: ".repeat(depth) + "}".repeat(depth)))
                    .startsWith("my.yaml:1: more than 20 levels of groups and lists");
        }
        assertThat(complaint("name: " + "[".repeat(KeyLines.DEEPEST - 1) + "]".repeat(KeyLines.DEEPEST - 1)))
                .startsWith("my.yaml:1: name: this list cannot be used");
    }

    @Test
    void aValueOfSeveralLinesIsShownInOne() {
        assertThat(complaint("name: \"one\\n\\n two\\u2028three\"\ntitle: x\n"))
                .contains("name: one two three cannot be used");
        assertThat(complaint("\"na\\nme\": x\n")).contains("na me: is not known here");
        assertThat(complaint("x".repeat(1000) + ": 1\n")).contains("x…: is not known here");
    }

    @Test
    void aByteOrderMarkIsPassedOver() throws Exception {
        String text = Files.readString(Path.of("docs", "example-rig.yaml"));
        ConfigFile marked = ConfigFile.parse("my.yaml", "\uFEFF" + text, RIG);
        ConfigFile plain = ConfigFile.parse("my.yaml", text, RIG);
        assertThat(marked.root().toJson()).isEqualTo(plain.root().toJson());
        assertThat(marked.root().lineOf("name")).isEqualTo(plain.root().lineOf("name"));
    }

    @Test
    void aFolderIsNotCalledAFileThatIsMissing() {
        assertThat(catchThrowable(() -> ConfigFile.read(folder, RIG)))
                .isInstanceOf(ConfigException.class)
                .hasMessage(folder + ": is a folder; allowed: the path of a readable file");
        assertThat(catchThrowable(() -> ConfigFile.read(folder.resolve("gone"), RIG)))
                .hasMessageContaining("there is no such file");
        assertThat(catchThrowable(() -> ConfigFile.read(Path.of("/dev/null"), RIG)))
                .hasMessageContaining("is a device or a pipe");
    }
}
