package evenfall.bench.prove.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import evenfall.config.ConfigException;
import evenfall.sim.chance.Chance;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.wire.HubSentences;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class HeightGuideTest {
    private static final double AIR_C = 17;

    /** Five ordinary sensors of the simulator; the third really sits 0.131 m above the outlets. */
    private final List<EchoSensor> sensors = new ArrayList<>();

    HeightGuideTest() {
        for (int i = 0; i < 5; i++) {
            sensors.add(
                    new EchoSensor(EchoSensor.Spec.usual(), i == 2 ? 0.131 : 0.10, Chance.stream(7, "sensor " + i)));
        }
    }

    private Recording.Look look(double timeS, int under, double heightM) {
        List<@Nullable Long> echoes = new ArrayList<>();
        for (int i = 0; i < sensors.size(); i++) {
            long us = sensors.get(i).echoUs(i == under ? heightM : 1.1, AIR_C);
            echoes.add(us == HubSentences.UNKNOWN ? null : (Long) us);
        }
        return new Recording.Look(timeS, echoes);
    }

    private Recording.Echoes still(int under, double heightM, int looks) {
        for (int i = 0; i < 20; i++) {
            // What it averages has settled before anybody begins.
            look(0, under, heightM);
        }
        List<Recording.Look> heard = new ArrayList<>();
        for (int i = 0; i < looks; i++) {
            heard.add(look(0.05 * i, under, heightM));
        }
        return new Recording.Echoes(heard, AIR_C, null);
    }

    private Recording.Echoes step(int under, double fromM, double toM) {
        List<Recording.Look> heard = new ArrayList<>();
        for (int i = 0; i < 80; i++) {
            heard.add(look(0.05 * i, under, 0.05 * i < 1.31 ? fromM : toM));
        }
        return new Recording.Echoes(heard, AIR_C, 1.31);
    }

    private Walk begun() throws ConfigException {
        return new Walk(Prover.HEIGHT, Optional.of(FlowGuideTest.rig()))
                .answer("air", "16.5 C")
                .answer("air_accuracy", "")
                .answer("tape_accuracy", "")
                .answer("tape_step", "")
                .answer("working_height", "");
    }

    private Walk stations(Walk walk, int under) {
        double[] heights = {0.3, 0.5, 0.7, 0.9, 1.1};
        for (int i = 1; i <= heights.length; i++) {
            if (i > 1) {
                walk.answer("sensors[1].stations[" + i + "]", "yes");
            }
            walk.answer("sensors[1].stations[" + i + "].height", heights[i - 1] + " m")
                    .heard("sensors[1].stations[" + i + "].echoes", still(under, heights[i - 1], 100));
        }
        return walk.answer("sensors[1].stations[6]", "no");
    }

    @Test
    void aSensorsHiddenMountingIsFoundWithItsStep() throws ConfigException {
        Walk walk = begun().answer("sensors[1].name", "centre").answer("sensors[1].free", "yes");
        walk.heard("sensors[1].free", still(2, 1.1, 40));
        walk.heard("sensors[1].covered", still(2, 0.3, 40)).answer("sensors[1].right", "");
        stations(walk, 2);
        for (int i = 1; i <= 3; i++) {
            walk.answer("sensors[1].steps[" + i + "]", "yes").heard("sensors[1].steps[" + i + "]", step(2, 0.3, 1.1));
        }
        Proof proof = walk.answer("sensors[1].steps[4]", "no")
                .answer("sensors[2]", "no")
                .proof();
        Constant constant = proof.constants().get(0);
        assertThat(constant.rigPlace()).isEqualTo("sensors.heights.at[3].above_outlet_m");
        assertThat(constant.estimate().holds(0.131)).isTrue();
        assertThat(constant.estimate().expanded()).isLessThan(0.005);
        JsonNode sensor = proof.result().path("sensors").path(0);
        // A weight of 0.6 for the newest: 60, 84, 93.6 % after one, two, three looks; nine tenths between the second
        // and third.
        // The first look after the step at 1.31 s is at 1.35 s, so nine tenths are reached at 1.35 + 0.05 · (1 + 6/9.6)
        // s.
        assertThat(sensor.path("step").path("settled_s").asDouble())
                .isCloseTo(1.35 + 0.05 * (1 + 6 / 9.6) - 1.31, within(0.02));
        assertThat(sensor.path("noise_sd_m").asDouble()).isCloseTo(0.004, within(0.0005));
        assertThat(sensor.path("scale_m_per_m").asDouble()).isCloseTo(1, within(0.01));
        assertThat(proof.passed()).isTrue();
        assertThat(proof.advice())
                .anyMatch(line ->
                        line.startsWith("centre: with the rig file as it is, heights are shown 31 mm too high"));
    }

    @Test
    void swappedLeadsAreSeenByTheBoard() throws ConfigException {
        Walk walk = begun().answer("sensors[1].name", "left-tip").answer("sensors[1].free", "");
        walk.heard("sensors[1].free", still(4, 1.1, 40));
        walk.refuses(new Reply.Heard(still(4, 1.09, 40)), "no sensor saw the board");
        walk.heard("sensors[1].covered", still(4, 0.3, 40));
        assertThat(walk.guide().notes())
                .anyMatch(note -> note.contains("Number 5 from the left answered, not number 1"));
        stations(walk.answer("sensors[1].right", "-17.3 m"), 4);
        Proof proof = walk.answer("sensors[1].steps[1]", "no")
                .answer("sensors[2]", "no")
                .proof();
        assertThat(proof.passed()).isFalse();
        assertThat(proof.findings())
                .filteredOn(f -> !f.met())
                .extracting(f -> f.limit().name())
                .containsExactly("sensor-order", "sensor-place");
    }

    @Test
    void tooFewHeightsTwiceTheSameAndSilenceAreRefused() throws ConfigException {
        Walk walk = begun().answer("sensors[1].name", "")
                .answer("sensors[1].free", "no")
                .answer("sensors[1].right", "");
        walk.answer("sensors[1].stations[1].height", "0.5 m");
        walk.refuses(new Reply.Heard(new Recording.Echoes(List.of(), null, null)), "no heights");
        walk.refuses(new Reply.Heard(still(0, 4.0, 40)), "fewer than 10 echoes");
        walk.refuses("abc", "no echo time");
        walk.answer("sensors[1].stations[1].echoes", "3500 3501 3502 3499 3500 - 3500 3501 3499 3500 3500 3500");
        walk.refuses("no", "too few").answer("sensors[1].stations[2]", "yes");
        walk.refuses("0.51 m", "measured already");
    }
}
