package evenfall.judge;

import evenfall.pattern.HeightWindow;
import evenfall.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * The heights that a wing may take: those in which the outlets hold the row limit at this pressure, and never below the clearance
 * nor above the ceiling. A bar holds its rows at any height, so only clearance and ceiling bind it.
 */
final class WingLimits {
    private final double clearanceM;
    private final double ceilingM;

    WingLimits(Rig.Limits limits) {
        clearanceM = limits.clearanceM();
        ceilingM = limits.ceilingM();
    }

    double lowM(@Nullable HeightWindow window) {
        return window == null ? clearanceM : Math.max(clearanceM, window.lowM());
    }

    double highM(@Nullable HeightWindow window) {
        return window == null ? ceilingM : Math.min(ceilingM, window.highM());
    }

    boolean boundByRows(boolean low, @Nullable HeightWindow window) {
        return window != null && (low ? window.lowM() > clearanceM : window.highM() < ceilingM);
    }
}
