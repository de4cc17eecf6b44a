package evenfall.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.pattern.HeightWindow;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class WindowByPressureTest {
    private static Rig rig(String type) throws Exception {
        String text =
                Files.readString(Path.of("docs", "example-rig.yaml")).replace("type: five-stream", "type: " + type);
        return RigFile.parse("rig", text, Path.of("docs"));
    }

    private static HeightWindow exactly(Rig rig, double pressurePa) {
        return HeightWindow.around(
                rig.outlet(),
                rig.boom().spacingM(),
                rig.boom().rowM(),
                pressurePa,
                rig.liquid().specificGravity(),
                rig.target().heightM(),
                rig.limits().rowCv());
    }

    @Test
    void aPressureThatFarOutletsLackLeavesNoWindow() throws Exception {
        for (String type : new String[] {"three-stream", "seven-stream"}) {
            Rig rig = rig(type);
            WindowByPressure windows = new WindowByPressure(rig);
            int pressureAtFault = 0;
            for (int kPa = 60; kPa <= 200; kPa++) {
                HeightWindow seen = windows.at(1000.0 * kPa);
                // A step either way is 1 %.
                if (exactly(rig, 0.97 * 0.98 * 1000 * kPa) != null) {
                    assertThat(seen).as("%s at %s kPa", type, kPa).isNotNull();
                } else if (exactly(rig, 0.97 * 1.02 * 1000 * kPa) == null) {
                    assertThat(seen).as("%s at %s kPa", type, kPa).isNull();
                    pressureAtFault += exactly(rig, 1000.0 * kPa) != null ? 1 : 0;
                }
            }
            assertThat(pressureAtFault)
                    .as("%s: holds at the transmitter and not far out", type)
                    .isPositive();
        }
    }

    @Test
    void aStepMovesAnEndByNoMoreThanASensorScatters() throws Exception {
        Rig rig = rig("seven-stream");
        WindowByPressure windows = new WindowByPressure(rig);
        for (int kPa = 100; kPa <= 300; kPa++) {
            assertThat(windows.at(1000.0 * kPa).lowM())
                    .as("at %s kPa", kPa)
                    .isBetween(
                            exactly(rig, 1010.0 * kPa).lowM() - 0.0101,
                            exactly(rig, 990.0 * kPa).lowM() + 0.0101);
        }
    }

    @Test
    void noPressureHasNoWindowOrThatOfTheLeast() throws Exception {
        WindowByPressure windows = new WindowByPressure(rig("three-stream"));
        assertThat(windows.at(0)).isNull();
        assertThat(windows.at(5e6)).isEqualTo(windows.at(4e6));
    }
}
