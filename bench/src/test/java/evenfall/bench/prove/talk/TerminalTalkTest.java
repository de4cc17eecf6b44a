package evenfall.bench.prove.talk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Setup;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.Instruments;
import evenfall.bench.prove.listen.PortTroubleException;
import evenfall.bench.prove.listen.Session;
import evenfall.bench.prove.record.AnswersDraft;
import evenfall.bench.report.Paint;
import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TerminalTalkTest {
    private static final String BEGIN = "jug\n0.05 L\n0.01 L\n14 C\n";

    private final ByteArrayOutputStream shown = new ByteArrayOutputStream();
    private Guide last = guide();

    @TempDir
    Path folder;

    /** A meter whose port is taken by another program at the first try. */
    private static final class BusyOnce implements Instruments {
        private int tries;

        @Override
        public boolean canRecord(Step.Signal signal) {
            return true;
        }

        @Override
        public Session start(Step.Signal signal) throws PortTroubleException {
            tries++;
            if (tries == 1) {
                throw new PortTroubleException("/dev/x is in use by another program");
            }
            return new Session() {
                @Override
                public double seconds() {
                    return 0;
                }

                @Override
                public void mark() {}

                @Override
                public String soFar() {
                    return "1500 pulses, at rest";
                }

                @Override
                public Recording finish() {
                    return new Recording.Count(1500L, null, 30, false, false, false, 0.1);
                }

                @Override
                public void close() {}
            };
        }
    }

    private static Guide guide() {
        return Guide.begin(Prover.FLOW, new Setup(Optional.empty(), Units.METRIC, Map.of()));
    }

    private TerminalTalk talk(String typed) {
        return new TerminalTalk(
                new Lines(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8))),
                new PrintStream(shown, true, StandardCharsets.UTF_8),
                Paint.OFF,
                false,
                100,
                new BusyOnce());
    }

    private Proof lead(String typed) throws ConfigException, InterruptedException {
        Guide end = Conversation.lead(guide(), talk(typed), guide -> last = guide);
        return ((Step.Finished) end.step()).proof();
    }

    @Test
    void aBusyPortIsSaidAndTriedAgainAndNothingIsLost() throws Exception {
        String run = "low\n0 L\n\n\n10 L\n";
        String first = "low\n0 L\n\n\n\n10 L\n";
        Proof proof = lead(BEGIN + first + "yes\n" + run + "yes\n" + run + "no\n");
        assertThat(proof.result().path("k_factor").path("value_pulses_per_L").asDouble())
                .isEqualTo(150);
        assertThat(shown.toString(StandardCharsets.UTF_8))
                .contains("! /dev/x is in use by another program; allowed: a port that is free and speaks")
                .contains("Caution: liquid under pressure.");
    }

    @Test
    void aWrongAnswerIsAskedAgainAndBackGoesBack() throws Exception {
        String runs = "1500 in 30 s\n10 L\nyes\nlow\n0 L\n1500 in 30 s\n10 L\nyes\nlow\n0 L\n1500 in 30 s\n10 L\nno\n";
        Proof proof = lead("cup\njug\n0.05\n0.5 L\nback\n0.05 L\n0.01 L\n14 C\nlow\n0 L\n" + runs);
        assertThat(proof.result()
                        .path("k_factor")
                        .path("components")
                        .path(1)
                        .path("standard_uncertainty_pulses_per_L")
                        .asDouble())
                .as("of 0.05 L, not 0.5")
                .isEqualTo(Math.round(1e9 * 150 * 0.005 / Math.sqrt(3)) / 1e9);
        assertThat(shown.toString(StandardCharsets.UTF_8))
                .contains("! \"cup\" is none of the choices; allowed: scale, jug")
                .contains("! \"0.05\" has no unit");
    }

    @Test
    void whatWasAnsweredBeforeTheEndOfInputGoesOnFromItsDraft() throws Exception {
        assertThatThrownBy(() -> lead(BEGIN + "low\n0 L\n1500 in 30 s\n10 L\n"))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("the answers ended before the test did");
        Path draft = Files.writeString(folder.resolve("draft"), AnswersDraft.of(Prover.FLOW, last.given()));
        TerminalTalk person = talk("yes\nlow\n0 L\n1500 in 30 s\n10 L\nyes\nlow\n0 L\n1500 in 30 s\n10 L\nno\n");
        Guide end = Conversation.lead(
                guide(), new AnswersFile(draft, Prover.FLOW, new BusyOnce(), line -> {}, person), guide -> {});
        assertThat(((Step.Finished) end.step())
                        .proof()
                        .result()
                        .path("flows")
                        .path(0)
                        .path("runs_pulses_per_L"))
                .hasSize(3);
    }

    @Test
    void theExampleInTheDocumentIsTakenAsItStands() throws Exception {
        String document = Files.readString(Path.of("docs/proving.md"));
        int from = document.indexOf("```yaml\n") + 8;
        String yaml = document.substring(from, document.indexOf("```", from));
        Path file = Files.writeString(
                folder.resolve("answers.yaml"),
                yaml + yaml.lines().reduce((a, b) -> b).orElseThrow() + "\n");
        // Its second and third run listen; this meter counts 1500 each time.
        BusyOnce meter = new BusyOnce();
        assertThatThrownBy(() -> meter.start(Step.Counting.FLOW)).isInstanceOf(PortTroubleException.class);
        String quick = Files.readString(file).replace("listen 60 s", "listen 0.01 s");
        Files.writeString(file, quick);
        Guide end =
                Conversation.lead(guide(), new AnswersFile(file, Prover.FLOW, meter, line -> {}, null), guide -> {});
        assertThat(((Step.Finished) end.step())
                        .proof()
                        .result()
                        .path("flows")
                        .path(0)
                        .path("runs_pulses_per_L"))
                .hasSize(3);
    }
}
