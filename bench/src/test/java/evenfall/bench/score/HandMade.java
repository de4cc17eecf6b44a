package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.received.WireTally;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/** Truth and reports made by hand: 5 moments a second, 5 m/s, everything well unless a test says otherwise. */
final class HandMade {
    /** Rate 10 %, row CV 15 %, clearance 0.15 m, ceiling 1.2 m, hold 1 s and 5 m, walking 0.5 m/s, silence 1 s. */
    static final Rig.Limits LIMITS = new Rig.Limits(0.10, 0.15, 0.15, 1.2, 1, 5, 0.5, 1, 0.9);

    static final double SPEED_MPS = 5;

    private HandMade() {}

    static TruthMoment well(double atS) {
        return moment(atS, SPEED_MPS, 0.0, 0.5, 0.5, 0.05, 0.5);
    }

    static TruthMoment moment(
            double atS,
            double speedMps,
            @Nullable Double rateError,
            double leftM,
            double rightM,
            @Nullable Double rowCv,
            double heightM) {
        TruthMoment.Stretch all = new TruthMoment.Stretch(rowCv, heightM);
        TruthMoment.Stretch calm = new TruthMoment.Stretch(0.05, 0.5);
        return new TruthMoment(atS, speedMps, rateError, leftM, rightM, 0.35, 0.75, 0.5, all, calm, calm, calm);
    }

    static List<TruthMoment> truth(double untilS, DoubleFunction<TruthMoment> at) {
        List<TruthMoment> truth = new ArrayList<>();
        for (int i = 0; i <= Math.round(untilS * 5); i++) {
            truth.add(at.apply(i / 5.0));
        }
        return truth;
    }

    static ReportedMoment says(double atS, @Nullable Double rateErrorPct, @Nullable Double rowCv) {
        return new ReportedMoment(atS, atS, SPEED_MPS, null, 150.0, rateErrorPct, rowCv, List.of());
    }

    static ReportedAlert alert(String kind, String place, double raisedS, @Nullable Double clearedS) {
        return new ReportedAlert(kind, place, raisedS - 1, raisedS, clearedS, 12.0, 10.0, "%", "why", "act");
    }

    static Score scoreOfLevelPass(double seconds, List<FaultDue> faults, ReportedAlert... alerts) {
        return score(truth(seconds, HandMade::well), faults, alerts);
    }

    static Score score(List<TruthMoment> truth, ReportedAlert... alerts) {
        return score(truth, List.of(), alerts);
    }

    private static Score score(List<TruthMoment> truth, List<FaultDue> faults, ReportedAlert... alerts) {
        return new Scorer(
                        LIMITS,
                        truth,
                        GroundShare.NOTHING,
                        faults,
                        new Report(List.of(), List.of(alerts), WireTally.NONE, 0))
                .score();
    }
}
