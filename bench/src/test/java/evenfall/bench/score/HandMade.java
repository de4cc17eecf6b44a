package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.received.WireTally;
import evenfall.outlet.OutletType;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/** Truth and reports made by hand: 5 moments a second, 5 m/s, everything well unless a test says otherwise. */
final class HandMade {
    /** Rate 10 %, row CV 15 %, clearance 0.15 m, ceiling 1.2 m, hold 1 s and 5 m, walking 0.5 m/s, silence 1 s. */
    static final Rig.Limits LIMITS = new Rig.Limits(0.10, 0.15, 0.15, 1.2, 1, 5, 0.5, 1, 0.9, 2);

    static final double SPEED_MPS = 5;

    /** 150 L/ha on 36 m at 5 m/s, all six sections on, at 200 kPa; three fifths of it at 10 km/h, near enough. */
    static final TruthMoment.Flows WELL = new TruthMoment.Flows(2.7e-3, 2.7e-3, 200_000, 36, 0b111111, 2.7e-3, 1.5e-3);

    /** Outlets for 100 to 400 kPa. */
    static final OutletType OUTLETS =
            new OutletType("made", "Made by hand", 200_000, 4.7e-5, 100_000, 400_000, List.of());

    private HandMade() {}

    static TruthMoment well(double atS) {
        return moment(atS, SPEED_MPS, 0.0, 0.5, 0.5, 0.05);
    }

    /** Uneven rows are the lines' doing in neither way, unless a test says otherwise. */
    static TruthMoment moment(
            double atS,
            double speedMps,
            @Nullable Double rateError,
            double leftM,
            double rightM,
            @Nullable Double rowCv) {
        return moment(
                atS, speedMps, rateError, leftM, rightM, new TruthMoment.Stretch(rowCv, 0.0, 1.0), WELL, 0.4, 0.4);
    }

    /** Rows of a CV, with lines that lie so. */
    static TruthMoment lines(double atS, double rowCv, double doubledMore, double gapTimes) {
        return moment(
                atS, SPEED_MPS, 0.0, 0.5, 0.5, new TruthMoment.Stretch(rowCv, doubledMore, gapTimes), WELL, 0.4, 0.4);
    }

    static TruthMoment flowing(double atS, double speedMps, TruthMoment.Flows flows) {
        return moment(atS, speedMps, null, 0.5, 0.5, new TruthMoment.Stretch(null, null, null), flows, 0.4, 0.4);
    }

    static TruthMoment tips(double atS, double leftM, double rightM) {
        return moment(atS, SPEED_MPS, 0.0, 0.5, 0.5, new TruthMoment.Stretch(0.05, 0.0, 1.0), WELL, leftM, rightM);
    }

    private static TruthMoment moment(
            double atS,
            double speedMps,
            @Nullable Double rateError,
            double leftM,
            double rightM,
            TruthMoment.Stretch all,
            TruthMoment.Flows flows,
            double leftTipM,
            double rightTipM) {
        TruthMoment.Stretch calm = new TruthMoment.Stretch(0.05, 0.0, 1.0);
        return new TruthMoment(
                atS,
                speedMps,
                rateError,
                all.rowCv(),
                leftM,
                rightM,
                0.35,
                0.75,
                0.5,
                all,
                calm,
                calm,
                calm,
                flows,
                new TruthMoment.Heights(leftM, rightM, leftTipM, rightTipM, List.of()));
    }

    static List<TruthMoment> truth(double untilS, DoubleFunction<TruthMoment> at) {
        List<TruthMoment> truth = new ArrayList<>();
        for (int i = 0; i <= Math.round(untilS * 5); i++) {
            truth.add(at.apply(i / 5.0));
        }
        return truth;
    }

    static ReportedMoment says(double atS, @Nullable Double rateErrorPct, @Nullable Double rowCv) {
        return new ReportedMoment(
                atS,
                atS,
                SPEED_MPS,
                null,
                null,
                null,
                150.0,
                rateErrorPct,
                rowCv,
                null,
                null,
                null,
                List.of(),
                List.of());
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

    static Score score(List<TruthMoment> truth, List<FaultDue> faults, ReportedAlert... alerts) {
        return score(truth, List.of(), faults, new Report(List.of(), List.of(alerts), WireTally.NONE, 0));
    }

    static Score strikes(List<TruthMoment> truth, List<Contact> contacts, ReportedAlert... alerts) {
        return score(truth, contacts, List.of(), new Report(List.of(), List.of(alerts), WireTally.NONE, 0));
    }

    static Score score(List<TruthMoment> truth, Blinding blinding) {
        return score(truth, List.of(), List.of(), blinding, new Report(List.of(), List.of(), WireTally.NONE, 0));
    }

    static Score score(List<TruthMoment> truth, List<Contact> contacts, List<FaultDue> faults, Report report) {
        return score(truth, contacts, faults, new Blinding(List.of()), report);
    }

    static Score misled(List<TruthMoment> truth, List<TruthMoment> shown, ReportedAlert... alerts) {
        Report report = new Report(List.of(), List.of(alerts), WireTally.NONE, 0);
        return score(truth, shown, List.of(), List.of(), new Blinding(List.of()), report);
    }

    private static Score score(
            List<TruthMoment> truth, List<Contact> contacts, List<FaultDue> faults, Blinding blinding, Report report) {
        return score(truth, truth, contacts, faults, blinding, report);
    }

    private static Score score(
            List<TruthMoment> truth,
            List<TruthMoment> shown,
            List<Contact> contacts,
            List<FaultDue> faults,
            Blinding blinding,
            Report report) {
        return new Scorer(
                        new Scorer.Truth(
                                truth,
                                shown,
                                contacts,
                                Watched.all(LIMITS, OUTLETS),
                                faults,
                                blinding,
                                LIMITS.clearanceM(),
                                List.of()),
                        GroundShare.NOTHING,
                        report)
                .score();
    }
}
