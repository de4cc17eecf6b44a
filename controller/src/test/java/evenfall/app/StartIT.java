package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wrong input: one line that says what, and status 2. */
class StartIT {
    @TempDir
    private Path folder;

    @Test
    void aRigFileThatIsNotThere() throws Exception {
        assertRefused("nowhere.yaml: there is no such file; allowed: the path of a readable file", "nowhere.yaml");
    }

    @Test
    void aFolderInPlaceOfARigFile() throws Exception {
        assertRefused(folder + ": is a folder; allowed: the path of a readable file", folder.toString());
    }

    @Test
    void aRigFileWithAWrongValueNamesTheLine() throws Exception {
        Path rig = Box.rig(folder, "/dev/a", "/dev/b", 1883);
        Files.writeString(rig, Files.readString(rig).replace("spacing_m: 0.508", "spacing_m: -0.508"));
        assertRefused("rig.yaml:6: boom.spacing_m: -0.508 cannot be used; allowed: a number, above 0", rig.toString());
    }

    @Test
    void anOptionThatDoesNotExist() throws Exception {
        assertRefused(
                "option --shout: is not known; allowed: --help, --quiet, --trace, --version",
                Box.rig(folder, "/dev/a", "/dev/b", 1883).toString(),
                "--shout");
    }

    @Test
    void aRecordingThatCannotBeWritten() throws Exception {
        assertRefused(
                "option --trace: /nowhere/at/all.trace cannot be written (there is no such file or folder)",
                Box.rig(folder, "/dev/a", "/dev/b", 1883).toString(),
                "--trace",
                "/nowhere/at/all.trace");
    }

    @Test
    void aTraceThatIsNone() throws Exception {
        Path rig = Box.rig(folder, "/dev/a", "/dev/b", 1883);
        Path trace = Files.writeString(folder.resolve("shopping.trace"), "milk, bread\n");
        try (Box replay = Box.replay(folder, rig.toString(), trace.toString())) {
            assertThat(replay.waitFor()).isEqualTo(2);
            assertThat(replay.err())
                    .contains("shopping.trace:1: ")
                    .contains("allowed: ")
                    .hasLineCount(1);
        }
    }

    @Test
    void aBoardOnWhichTheSerialLibraryCannotBeUnpacked() throws Exception {
        Path rig = Box.rig(folder, "/dev/a", "/dev/b", 1883);
        List<String> readOnly = List.of("-Djava.io.tmpdir=/proc", "-Duser.home=/proc");
        try (Box box = Box.startWith(folder, readOnly, rig.toString())) {
            assertThat(box.waitFor()).isEqualTo(1);
            assertThat(box.err()).contains("serial ports").contains("allowed: ").hasLineCount(1);
        }
    }

    @Test
    void helpAndVersionAreThere() throws Exception {
        try (Box box = Box.start(folder, "--version")) {
            assertThat(box.waitFor()).isZero();
            assertThat(box.out()).matches("evenfall-controller \\d+\\.\\d+.*\\n");
        }
        try (Box box = Box.start(folder, "--help")) {
            assertThat(box.waitFor()).isZero();
            assertThat(box.out()).contains("RIG.yaml").contains("--trace=FILE").contains("--quiet");
        }
    }

    private void assertRefused(String said, String... arguments) throws Exception {
        try (Box box = Box.start(folder, arguments)) {
            assertThat(box.waitFor()).isEqualTo(2);
            assertThat(box.err()).contains(said).contains("allowed: ").hasLineCount(1);
            assertThat(box.out()).isEmpty();
        }
    }
}
