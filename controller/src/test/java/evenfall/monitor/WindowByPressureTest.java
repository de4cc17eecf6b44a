package evenfall.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.pattern.HeightWindow;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class WindowByPressureTest {
    @Test
    void aWindowThatShrinksOntoTheTargetIsNone() throws Exception {
        int shrunk = 0;
        for (String type : new String[] {"three-stream", "six-stream", "seven-stream"}) {
            String text =
                    Files.readString(Path.of("docs", "example-rig.yaml")).replace("type: five-stream", "type: " + type);
            Rig rig = RigFile.parse("rig", text, Path.of("docs"));
            WindowByPressure windows = new WindowByPressure(rig);
            for (int kPa = 30; kPa <= 400; kPa += 10) {
                HeightWindow seen = windows.at(1000.0 * kPa);
                HeightWindow around = HeightWindow.around(
                        rig.outlet(),
                        rig.boom().spacingM(),
                        rig.boom().rowM(),
                        1000.0 * kPa,
                        rig.liquid().specificGravity(),
                        rig.target().heightM(),
                        rig.limits().rowCv());
                boolean near = around != null && (0.5 - around.lowM() < 0.03 || around.highM() - 0.5 < 0.03);
                assertThat(seen).as("%s at %s kPa", type, kPa).isEqualTo(near ? null : around);
                shrunk += near ? 1 : 0;
            }
            assertThat(windows.at(200_000)).as(type).isNotNull();
        }
        assertThat(shrunk).isPositive();
    }
}
