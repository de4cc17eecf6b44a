package evenfall.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.judge.Alert;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The meter against the tank, on the paper machine with the gauge that the documented example has in its remarks. */
class TankTest {
    private static Rig rig() throws Exception {
        String text = Files.readString(Path.of("docs", "example-rig.yaml")).replace("  # tank:\n", "  tank:\n");
        for (String key : List.of("port", "noise_L", "known_pct", "table")) {
            text = text.replaceAll("  #   " + key + ":", "    " + key + ":");
        }
        return RigFile.parse("example", text, Path.of("docs"));
    }

    private static HubScript script(Rig rig, double meterTimes) {
        HubScript script = new HubScript(rig);
        script.scatterPa = 800;
        script.meterTimes = meterTimes;
        script.sloshM3 = 0.040;
        return script;
    }

    private static List<String> ofTank(HubScript script) {
        return script.story.stream()
                .filter(line -> line.contains("implausible") || line.contains("tank"))
                .toList();
    }

    @Test
    void aMeterThatCountsTenInAHundredTooMuchIsToldByTheTank() throws Exception {
        HubScript script = script(rig(), 1.10).run(600);

        assertThat(ofTank(script)).containsExactly("+sensor-implausible/flow");
        Alert alert = script.raised.stream()
                .filter(a -> a.place().equals("flow"))
                .findFirst()
                .orElseThrow();
        // 181 L/min flow; the gauge and the count begin together.
        double minutes = alert.raisedUs() / 6e7;
        assertThat(alert.value()).isCloseTo(100 * (1 - 1 / 1.10), within(1.5));
        // Three standard deviations of 1 % and 1.5 %.
        assertThat(alert.limit()).isCloseTo(5.41, within(0.01));
        assertThat(alert.why()).matches("The tank says \\d+ L gone, the meter \\d+ L: (8|9|10) % apart\\.");
        double metered = Double.parseDouble(alert.why().replaceAll(".*meter (\\d+) L.*", "$1"));
        assertThat(metered).isCloseTo(1.10 * 181.1 * minutes, within(0.1 * 1.10 * 181.1 * minutes));
        assertThat(alert.act()).contains("prove flow").doesNotContain("leak");
    }

    @Test
    void aMeterThatCountsTooLittleMayBeALeakBeforeIt() throws Exception {
        HubScript script = script(rig().withUnits(Units.US), 0.90).run(600);

        assertThat(ofTank(script)).containsExactly("+sensor-implausible/flow");
        assertThat(script.raised)
                .filteredOn(a -> a.place().equals("flow"))
                .singleElement()
                .satisfies(a -> assertThat(a.why()).contains(" gal gone").doesNotContain(" L"))
                .satisfies(a -> assertThat(a.act()).contains("a leak before it"));
    }

    @Test
    void withinItsTolerancesAndTheTanksNothingIsSaid() throws Exception {
        for (double times : new double[] {1.04, 0.96}) {
            HubScript script = script(rig(), times);
            // Two fillings, each in the middle of work.
            for (int i = 0; i < 2; i++) {
                script.run(500);
                script.tankM3 = 3.6;
            }
            assertThat(ofTank(script)).as("meter counts %s times", times).isEmpty();
        }
    }

    @Test
    void fillingBeginsAnewAndWhatStoodStandsUntilTheTankSaysWell() throws Exception {
        HubScript script = script(rig(), 1.10);
        // Never long enough on one filling to be sure.
        for (int i = 0; i < 3; i++) {
            script.run(120);
            script.tankM3 = 3.6;
        }
        assertThat(ofTank(script)).isEmpty();
        script.run(500);
        assertThat(ofTank(script)).containsExactly("+sensor-implausible/flow");
        script.tankM3 = 3.9;
        script.meterTimes = 1;
        script.run(60);
        assertThat(ofTank(script)).hasSize(1);
        script.run(600);
        assertThat(ofTank(script)).containsExactly("+sensor-implausible/flow", "-sensor-implausible/flow");
    }

    @Test
    void aGaugeThatIsSilentIsToldAndSaysNothingOfTheMeter() throws Exception {
        HubScript script = script(rig(), 1.10).run(60);
        script.gaugeSpeaks = false;
        script.run(300);

        assertThat(ofTank(script)).containsExactly("+sensor-silent/tank");
    }

    @Test
    void whatPassedWhileTheHubHadNoPowerIsNotHeldAgainstTheMeter() throws Exception {
        HubScript script = script(rig(), 1).run(240);
        // Three minutes' litres gone, none counted.
        script.hubSpeaks = false;
        script.run(180);
        script.restartHub();
        script.hubSpeaks = true;
        script.run(240);

        assertThat(ofTank(script)).noneMatch(line -> line.contains("implausible"));
    }
}
