package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A study whose program is killed in the middle, without a word of warning, as by a power cut or an empty battery. */
class StudyKillIT {
    private static final String[] ASKED = {
        "study",
        "--ground",
        "B,D",
        "--outlets",
        "three-stream,five-stream,streamer-bar",
        "--speed-kmh",
        "8,16",
        "--height-m",
        "0.4,0.6",
        "--seeds",
        "1-2",
        "--seconds",
        "6",
        "--out"
    };

    @TempDir
    Path folder;

    private static Process started(Path out, String... more) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                // A killed one leaves SQLite's library where it was unpacked.
                "-Djava.io.tmpdir=" + out.toAbsolutePath().getParent(),
                "-cp",
                System.getProperty("java.class.path"),
                "evenfall.bench.cli.Evenfall"));
        command.addAll(Arrays.asList(ASKED));
        command.add(out.toString());
        command.addAll(Arrays.asList(more));
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private static void awaitLine(BufferedReader err, String starts) throws Exception {
        String line = err.readLine();
        while (line != null && !line.startsWith(starts)) {
            line = err.readLine();
        }
        assertThat(line).as("the study ended before it could be killed").isNotNull();
    }

    @Test
    void killedTwiceItEndsAsOneThatWasNeverKilled() throws Exception {
        Path killed = folder.resolve("killed");
        String[] lines = {"5 of 48", "20 of 48"};
        for (int i = 0; i < lines.length; i++) {
            Process process = i == 0 ? started(killed) : started(killed, "--resume");
            try (BufferedReader err =
                    new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8))) {
                awaitLine(err, lines[i]);
                process.destroyForcibly();
                assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
            }
            assertThat(killed.resolve("study.csv")).doesNotExist();
        }
        Captured resumed = Captured.run("study", "--out", killed.toString(), "--resume");
        assertThat(resumed.status()).as(resumed.err()).isZero();
        // What was told before the kill is not made again.
        int made = Integer.parseInt(resumed.err()
                .lines()
                .filter(line -> line.contains(" runs in "))
                .findFirst()
                .orElseThrow()
                .split(" ")[0]);
        assertThat(made).isBetween(1, 48 - 20);

        Path whole = folder.resolve("whole");
        List<String> args = new ArrayList<>(Arrays.asList(ASKED));
        args.add(whole.toString());
        assertThat(Captured.run(args.toArray(new String[0])).status()).isZero();
        List<String> rows = Files.readAllLines(killed.resolve("study.csv"));
        assertThat(rows).isEqualTo(Files.readAllLines(whole.resolve("study.csv")));
        assertThat(rows).hasSize(49).doesNotHaveDuplicates();
    }

    /** The signal that Ctrl-C sends, as a terminal would. */
    @Test
    void ctrlCEndsItCleanly() throws Exception {
        Path out = folder.resolve("stopped");
        Process process = started(out);
        List<String> said = new ArrayList<>();
        try (BufferedReader err =
                new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8))) {
            awaitLine(err, "5 of 48");
            new ProcessBuilder("kill", "-INT", Long.toString(process.pid()))
                    .start()
                    .waitFor();
            err.lines().forEach(said::add);
        }
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(130);
        assertThat(said)
                .anyMatch(line -> line.contains("--resume goes on"))
                .noneMatch(line -> line.contains("Exception"));
        assertThat(out.resolve("study.sqlite-wal")).doesNotExist();
    }
}
