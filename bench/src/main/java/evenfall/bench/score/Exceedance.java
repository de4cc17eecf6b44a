package evenfall.bench.score;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of time in which the truth was past a limit without a break.
 *
 * @param fromS first moment past it, s
 * @param toS first moment no longer past it, s; the last moment of all where it goes on to the end
 * @param dueS when the hold was completed, s; null where it never was
 * @param causes those of the watched thing's kinds that the truth named in at least half of its moments; may be none
 */
record Exceedance(double fromS, double toS, @Nullable Double dueS, Set<String> causes) {

    /** All of one watched thing, in order of time. */
    static List<Exceedance> of(Watched watched, List<TruthMoment> truth) {
        List<Exceedance> found = new ArrayList<>();
        Open open = null;
        TruthMoment before = null;
        for (TruthMoment moment : truth) {
            if (watched.isOver(moment)) {
                if (open == null) {
                    open = new Open(watched, moment.atS());
                }
                open.take(moment, before);
            } else if (open != null) {
                found.add(open.close(moment.atS()));
                open = null;
            }
            before = moment;
        }
        if (open != null && before != null) {
            found.add(open.close(before.atS()));
        }
        return found;
    }

    boolean counts() {
        return dueS != null && toS - dueS >= ScoringRules.COUNTS_AFTER_S - 1e-9;
    }

    private static final class Open {
        private final Watched watched;
        private final double fromS;
        private double drivenM;
        private @Nullable Double dueS;
        private int moments;
        private final int[] named;

        Open(Watched watched, double fromS) {
            this.watched = watched;
            this.fromS = fromS;
            this.named = new int[watched.kinds().size()];
        }

        void take(TruthMoment moment, @Nullable TruthMoment before) {
            if (moments > 0 && before != null) {
                drivenM += 0.5 * (before.speedMps() + moment.speedMps()) * (moment.atS() - before.atS());
            }
            moments++;
            if (watched.hasCauses()) {
                Set<String> causes = watched.causes(moment);
                for (int i = 0; i < named.length; i++) {
                    named[i] += causes.contains(watched.kinds().get(i)) ? 1 : 0;
                }
            }
            boolean held = moment.atS() - fromS >= watched.holdS() - 1e-9 && drivenM >= watched.holdM() - 1e-9;
            if (dueS == null && held) {
                dueS = moment.atS();
            }
        }

        Exceedance close(double toS) {
            Set<String> causes = new LinkedHashSet<>();
            for (int i = 0; i < named.length; i++) {
                if (2 * named[i] >= moments) {
                    causes.add(watched.kinds().get(i));
                }
            }
            return new Exceedance(fromS, toS, dueS, causes);
        }
    }
}
