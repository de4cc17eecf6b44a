package evenfall.monitor;

import evenfall.pattern.HeightWindow;
import evenfall.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * Height windows of the rig's outlet by pressure, computed once per step of pressure and then kept. In a step of 10 kPa the window
 * moves by less than a height sensor's noise.
 */
final class WindowByPressure {
    private static final double STEP_PA = 10_000;
    private static final int STEPS = 256;

    private final Rig rig;
    private final @Nullable HeightWindow[] window = new HeightWindow[STEPS];
    private final boolean[] computed = new boolean[STEPS];

    WindowByPressure(Rig rig) {
        this.rig = rig;
    }

    /** The window at a pressure, Pa; null where the row limit does not hold even at the target height. */
    @Nullable
    HeightWindow at(double pressurePa) {
        int step = (int) Math.max(1, Math.min(STEPS - 1, Math.round(pressurePa / STEP_PA)));
        if (!computed[step]) {
            computed[step] = true;
            window[step] = HeightWindow.around(
                    rig.outlet(),
                    rig.boom().spacingM(),
                    rig.boom().rowM(),
                    step * STEP_PA,
                    rig.liquid().specificGravity(),
                    rig.target().heightM(),
                    rig.limits().rowCv());
        }
        return window[step];
    }
}
