package evenfall.bench.score;

import evenfall.bench.received.ReportedMoment;
import evenfall.quantity.TradeUnits;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Sets each message beside the true moment nearest in time. */
final class Pairing {
    private static final double L_PER_MIN = 1 / TradeUnits.LPM_M3PS;

    private final List<TruthMoment> truth;
    private final List<String> sensors;
    private final List<Double> errorPoints = new ArrayList<>();
    private final List<Double> cvPoints = new ArrayList<>();
    private final Senses senses = new Senses();

    /**
     * @param sensors names of the height sensors, from the left
     */
    Pairing(List<TruthMoment> truth, List<String> sensors) {
        this.truth = truth;
        this.sensors = sensors;
    }

    void take(ReportedMoment said) {
        int at = nearest(said.atS());
        if (at < 0) {
            return;
        }
        TruthMoment beside = truth.get(at);
        Double trueErrorPct = percent(beside.rateError());
        Double cvPct = percent(said.rowCv());
        Double trueCvPct = percent(beside.rowCv());
        if (said.rateErrorPct() != null && trueErrorPct != null) {
            errorPoints.add(said.rateErrorPct() - trueErrorPct);
        }
        if (cvPct != null && trueCvPct != null) {
            cvPoints.add(cvPct - trueCvPct);
        }
        TruthMoment.Flows flows = beside.flows();
        senses.compare("speed, m/s", said.speedMps(), beside.speedMps(), 1);
        senses.compare("flow, L/min", said.flowM3ps(), flows.meterM3ps(), L_PER_MIN);
        senses.compare("pressure, kPa", said.pressurePa(), flows.feedPressurePa(), 1 / TradeUnits.KPA_PA);
        senses.compare("rate, L/ha", said.rateLpha(), rateLpha(beside, said.targetLpha()), 1);
        senses.compare(Senses.RATE, said.rateErrorPct(), trueErrorPct, 1);
        if (isSteady(at)) {
            senses.compare(Senses.RATE_STEADY, said.rateErrorPct(), trueErrorPct, 1);
        }
        for (int i = 0; i < Math.min(sensors.size(), said.heights().size()); i++) {
            senses.compare(
                    "height at " + sensors.get(i) + ", m",
                    said.heights().get(i).heightM(),
                    beside.heights().sensorM().get(i),
                    1);
        }
        senses.compare(
                "height of the left wing, m", said.leftM(), beside.heights().leftM(), 1);
        senses.compare(
                "height of the right wing, m", said.rightM(), beside.heights().rightM(), 1);
        senses.compare(Senses.ROW_CV, cvPct, trueCvPct, 1);
    }

    private static @Nullable Double percent(@Nullable Double ratio) {
        return ratio == null ? null : 100 * ratio;
    }

    private static @Nullable Double rateLpha(TruthMoment moment, @Nullable Double targetLpha) {
        Double error = moment.rateError();
        return error == null || targetLpha == null ? null : targetLpha * (1 + error);
    }

    /** Whether true speed and flow have changed by less than 2 % over the last 3 s, with the same sections on. */
    private boolean isSteady(int at) {
        TruthMoment now = truth.get(at);
        if (now.atS() < truth.get(0).atS() + ScoringRules.STEADY_S - 1e-9) {
            return false;
        }
        double slowest = now.speedMps();
        double fastest = now.speedMps();
        double least = now.flows().outletsM3ps();
        double most = least;
        for (int i = at; i >= 0 && truth.get(i).atS() >= now.atS() - ScoringRules.STEADY_S - 1e-9; i--) {
            TruthMoment moment = truth.get(i);
            if (moment.flows().sectionMask() != now.flows().sectionMask()) {
                return false;
            }
            slowest = Math.min(slowest, moment.speedMps());
            fastest = Math.max(fastest, moment.speedMps());
            least = Math.min(least, moment.flows().outletsM3ps());
            most = Math.max(most, moment.flows().outletsM3ps());
        }
        return fastest - slowest < ScoringRules.STEADY_PART * fastest && most - least < ScoringRules.STEADY_PART * most;
    }

    private int nearest(double atS) {
        int low = 0;
        int high = truth.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (truth.get(middle).atS() < atS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        int best = -1;
        for (int i = Math.max(0, low - 1); i <= Math.min(truth.size() - 1, low); i++) {
            if (best < 0 || offS(i, atS) < offS(best, atS)) {
                best = i;
            }
        }
        return best < 0 || offS(best, atS) > ScoringRules.PAIR_WITHIN_S + 1e-9 ? -1 : best;
    }

    private double offS(int i, double atS) {
        return Math.abs(truth.get(i).atS() - atS);
    }

    @Nullable
    Double errorPointsP95() {
        return Figures.p95Abs(errorPoints);
    }

    @Nullable
    Double cvPointsP95() {
        return Figures.p95Abs(cvPoints);
    }

    Senses senses() {
        return senses;
    }
}
