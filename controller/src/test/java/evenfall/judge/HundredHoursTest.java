package evenfall.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.liquid.Application;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The stated time between false alarms, on the noise of ordinary sensors: 100 h of looks, five a second. */
class HundredHoursTest {
    private static final int LOOKS = 100 * 3600 * 5;
    private static final Quantity UNKNOWN = Quantity.unknown(Unknown.NOT_FITTED, -1);

    private final Rig rig;

    HundredHoursTest() throws Exception {
        rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
    }

    private Situation situation(int look, double rateError, double flowM3ps, double pressurePa) {
        return new Situation(
                200_000L * look,
                0.2,
                1.1,
                Quantity.known(5.5, 0),
                Quantity.known(rateError, 0),
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                null,
                null,
                List.of(),
                List.of(),
                new Situation.Plumbing(
                        Quantity.known(flowM3ps, 0),
                        Quantity.known(pressurePa, 0),
                        Quantity.known(72, 0),
                        0x3F,
                        UNKNOWN,
                        UNKNOWN));
    }

    /** Times that the watch begins to be sure. */
    private int alarms(RateWatch watch, double bias, double sigma) {
        Random random = new Random(5);
        double shared = random.nextGaussian();
        int alarms = 0;
        boolean before = false;
        for (int i = 1; i <= LOOKS; i++) {
            double sum = shared + random.nextGaussian();
            shared = random.nextGaussian();
            double error = bias + sigma * (sum + shared) / Math.sqrt(3);
            boolean sure = watch.verdict(situation(i, error, 3e-3, 2e5)) == Verdict.OVER;
            alarms += sure && !before ? 1 : 0;
            before = sure;
        }
        return alarms;
    }

    @Test
    void ratesJustBelowTheirLimitAlarmAboutOnceAtMost() {
        // Of a Poisson number with a mean of 1, one in fifty thousand is above 7.
        assertThat(alarms(new RateWatch(true, rig), 0.95 * 0.10, 0.0032)).isLessThanOrEqualTo(7);
        assertThat(alarms(new RateWatch(false, rig), -0.95 * 0.10, 0.02)).isLessThanOrEqualTo(7);
        assertThat(alarms(new RateWatch(true, rig), 0.05, 0.0032)).isZero();
        assertThat(alarms(new RateWatch(true, rig), 0.10, 0.0032)).isGreaterThan(1000);
    }

    @Test
    void aCleanMachineHasNoBlockedAndNoOpenOutlets() {
        Conductance conductance = new Conductance(rig);
        Random random = new Random(6);
        double flowM3ps =
                Application.flowM3ps(rig.target().rateM(), 5.5, rig.boom().widthM());
        double pressurePa =
                rig.outlet().orifice().pressurePa(flowM3ps / 72, rig.liquid().specificGravity());
        int steps = 0;
        for (int i = 1; i <= LOOKS; i++) {
            double shownPa = pressurePa + 800 * random.nextGaussian();
            conductance.look(situation(i, 0, flowM3ps, shownPa));
            if (!conductance.steps().isEmpty()) {
                steps++;
                conductance.steps().clear();
            }
        }

        assertThat(steps).isLessThanOrEqualTo(1);
    }
}
