package evenfall.bench.score;

import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of time in which the truth was past a limit without a break.
 *
 * @param fromS first moment past it, s
 * @param toS first moment no longer past it, s; the last moment of all where it goes on to the end
 * @param dueS when the hold was completed, s; null where it never was
 */
record Exceedance(double fromS, double toS, @Nullable Double dueS) {

    /** All of one watched thing, in order of time. */
    static List<Exceedance> of(Watched watched, List<TruthMoment> truth, Rig.Limits limits) {
        List<Exceedance> found = new ArrayList<>();
        double fromS = Double.NaN;
        double drivenM = 0;
        Double dueS = null;
        TruthMoment before = null;
        for (TruthMoment moment : truth) {
            boolean running = !Double.isNaN(fromS);
            if (watched.isOver(moment)) {
                if (!running || before == null) {
                    fromS = moment.atS();
                    drivenM = 0;
                    dueS = null;
                } else {
                    drivenM += 0.5 * (before.speedMps() + moment.speedMps()) * (moment.atS() - before.atS());
                }
                boolean held = moment.atS() - fromS >= limits.holdS() - 1e-9 && drivenM >= limits.holdM() - 1e-9;
                if (dueS == null && held) {
                    dueS = moment.atS();
                }
            } else if (running) {
                found.add(new Exceedance(fromS, moment.atS(), dueS));
                fromS = Double.NaN;
            }
            before = moment;
        }
        if (!Double.isNaN(fromS) && before != null) {
            found.add(new Exceedance(fromS, before.atS(), dueS));
        }
        return found;
    }

    boolean counts() {
        return dueS != null && toS - dueS >= ScoringRules.COUNTS_AFTER_S - 1e-9;
    }
}
