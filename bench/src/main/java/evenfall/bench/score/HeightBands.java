package evenfall.bench.score;

import evenfall.pattern.HeightWindow;
import evenfall.rig.Rig;
import evenfall.sim.scenario.FittedSpec;
import java.util.HashMap;
import java.util.Map;

/** The heights that a wing may take, by the outlets that are really fitted, at a true pressure. */
final class HeightBands {
    /** Windows are looked up to a kilopascal; a step moves an end by less than the centimetre that they are searched in. */
    private static final double STEP_PA = 1000;

    private final FittedSpec fitted;
    private final Rig.Limits limits;
    private final double targetHeightM;
    private final Map<Long, Band> known = new HashMap<>();

    /**
     * @param lowestM m
     * @param highestM m
     */
    record Band(double lowestM, double highestM) {}

    HeightBands(FittedSpec fitted, Rig belief) {
        this.fitted = fitted;
        this.limits = belief.limits();
        this.targetHeightM = belief.target().heightM();
    }

    Band at(double pressurePa) {
        return known.computeIfAbsent(Math.round(pressurePa / STEP_PA), this::band);
    }

    private Band band(long step) {
        HeightWindow window = HeightWindow.around(
                fitted.outlet(),
                fitted.boom().spacingM(),
                fitted.boom().rowM(),
                step * STEP_PA,
                fitted.specificGravity(),
                targetHeightM,
                limits.rowCv());
        if (window == null || window.isOpen()) {
            return new Band(limits.clearanceM(), limits.ceilingM());
        }
        return new Band(Math.max(window.lowM(), limits.clearanceM()), Math.min(window.highM(), limits.ceilingM()));
    }
}
