package evenfall.monitor;

import evenfall.pattern.HeightWindow;
import evenfall.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * Height windows of the rig's outlet by pressure, computed once per step of pressure and then kept. A step is 2 %: where a window
 * comes and goes its end moves by a centimetre for each percent, which is a height sensor's noise.
 *
 * <p>The pressure is that at the transmitter; outlets far out have up to 3 % less. Where the target height holds the row limit at the one
 * and not at the other, it is the pressure that is too low and no wing is out of its place: there is no window then.
 */
final class WindowByPressure {
    private static final double PER_STEP = StrictMath.log(1.02);

    /** The first step, Pa; the last is 1.5 MPa. */
    private static final double LEAST_PA = 10_000;

    private static final int STEPS = 254;

    /** A line loses so much of its pressure to its end, common practice, no source. */
    private static final double LINE_LOSS = 0.03;

    private final Rig rig;
    private final @Nullable HeightWindow[] window = new HeightWindow[STEPS];
    private final boolean[] computed = new boolean[STEPS];

    WindowByPressure(Rig rig) {
        this.rig = rig;
    }

    /** The window at a pressure, Pa; null where the row limit does not hold even at the target height all along the line. */
    @Nullable
    HeightWindow at(double pressurePa) {
        int step = pressurePa > LEAST_PA
                ? (int) Math.min(STEPS - 1, Math.round(StrictMath.log(pressurePa / LEAST_PA) / PER_STEP))
                : 0;
        if (!computed[step]) {
            computed[step] = true;
            double atPa = LEAST_PA * StrictMath.exp(step * PER_STEP);
            window[step] = holdsAtTarget((1 - LINE_LOSS) * atPa) ? around(atPa) : null;
        }
        return window[step];
    }

    private boolean holdsAtTarget(double pressurePa) {
        return HeightWindow.holds(
                rig.outlet(),
                rig.boom().spacingM(),
                rig.boom().rowM(),
                pressurePa,
                rig.liquid().specificGravity(),
                rig.target().heightM(),
                rig.limits().rowCv());
    }

    private @Nullable HeightWindow around(double pressurePa) {
        return HeightWindow.around(
                rig.outlet(),
                rig.boom().spacingM(),
                rig.boom().rowM(),
                pressurePa,
                rig.liquid().specificGravity(),
                rig.target().heightM(),
                rig.limits().rowCv());
    }
}
