package evenfall.bench.sense;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One cause, one alert: a fault of a sensor on rough ground is named at its place, and nothing else is. */
class SensorDoubtTest {
    private static Witness with(String fault, String... pairs) throws Exception {
        String[] all = new String[pairs.length + 4];
        System.arraycopy(pairs, 0, all, 0, pairs.length);
        all[pairs.length] = "roughness: B";
        all[pairs.length + 1] = "roughness: C";
        all[pairs.length + 2] = "  air_C: 12\n";
        all[pairs.length + 3] = "  air_C: 12\n  faults:\n    - {" + fault + "}\n";
        return Witness.of("level-field", "five-stream", all);
    }

    @ParameterizedTest
    @CsvSource({
        "height-foam, left-tip", "height-foam, centre",
        "height-stuck, left-tip", "height-stuck, right-mid",
        "height-loose, left-tip", "height-loose, centre",
        "height-double-echo, right-tip", "height-double-echo, left-mid"
    })
    void aFaultyHeightSensorIsNamed(String fault, String sensor) throws Exception {
        Witness run = with("fault: " + fault + ", at_s: 8, for_s: 12, where: " + sensor);

        // A rattling sensor at a tip can look like a tip that falls, until it is found out.
        assertThat(run.story)
                .filteredOn(line -> !fault.equals("height-loose") || !line.contains("strike-ahead"))
                .containsExactly("+sensor-implausible/" + sensor, "-sensor-implausible/" + sensor);
    }

    /** The monitor cannot know which of the two pairs it is; one alert speaks for all four. */
    @ParameterizedTest
    @CsvSource({"left-tip", "right-mid"})
    void twoSensorsWhoseLeadsAreChangedOverAreFoundOut(String sensor) throws Exception {
        Witness run = Witness.of(
                "level-field",
                "five-stream",
                "roughness: B",
                "roughness: C",
                "seconds: 30",
                "seconds: 400",
                "  air_C: 12\n",
                "  air_C: 12\n  faults:\n    - {fault: height-pair-swapped, at_s: 8, for_s: 200, where: " + sensor
                        + "}\n");

        assertThat(run.story).containsExactly("+sensor-implausible/left-tip", "-sensor-implausible/left-tip");
    }

    @Test
    void aPluggedPressureIsNamed() throws Exception {
        Witness run = with("fault: pressure-plugged, at_s: 8, for_s: 12");

        assertThat(run.story).containsExactly("+sensor-implausible/pressure", "-sensor-implausible/pressure");
    }

    @Test
    void aHubThatLosesItsPowerForAMomentIsSaidToHaveStartedAnew() throws Exception {
        Witness run = with("fault: hub-brown-out, at_s: 8, for_s: 0.6");

        assertThat(run.story).containsExactly("+hub-restarted/hub", "-hub-restarted/hub");
        assertThat(run.errors((live, truth, errors) -> {
                            if (live.rateError().isKnown() && truth.rateError().isPresent()) {
                                errors.addValue(live.rateError().get()
                                        - truth.rateError().getAsDouble());
                            }
                        })
                        .getMax())
                .isLessThan(0.05);
    }

    @ParameterizedTest
    @CsvSource({"B, five-stream", "C, five-stream", "D, seven-stream", "B, three-stream"})
    void soundSensorsRaiseNothing(String roughness, String outlet) throws Exception {
        Witness run = Witness.of(
                "level-field", outlet, "roughness: B", "roughness: " + roughness, "seconds: 30", "seconds: 120");

        assertThat(run.story).noneMatch(told -> told.contains("sensor") || told.contains("hub"));
    }
}
