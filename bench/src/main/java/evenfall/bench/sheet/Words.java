package evenfall.bench.sheet;

import evenfall.bench.received.ReportedMoment;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.ScoredAlert;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the sheets say in words. */
final class Words {
    static final String NOT_KNOWN = "not known";

    /** A live message stands for so long, s. */
    private static final double LIVE_S = 0.2;

    private Words() {}

    /** The word after a distance along the pass. */
    static String distanceUnit(Units units) {
        return units == Units.US ? "ft" : "m";
    }

    /** How many of the unit a metre of distance is. */
    static double distancesPerMetre(Units units) {
        return units == Units.US ? 1 / TradeUnits.FOOT_M : 1;
    }

    static String distance(double metres, Units units) {
        return FixedDecimals.text(metres * distancesPerMetre(units), 0) + " " + distanceUnit(units);
    }

    /** What ran, with which machine. */
    static String what(RunRecord run, Units units) {
        Rig rig = run.rig();
        return "Scenario " + run.scenario() + ", seed " + run.seed() + ": "
                + FixedDecimals.text(run.seconds(), 0) + " s, " + distance(run.lengthM(), units) + ", "
                + distance(rig.boom().widthM(), units) + " boom, "
                + rig.outlet().id() + " outlets, target "
                + units.rate(rig.target().rateM()) + " at "
                + units.length(rig.target().heightM()) + ".";
    }

    /** Which limits apply. */
    static String limits(Rig rig, Units units) {
        Rig.Limits limits = rig.limits();
        return "Limits of the rig file: rate within " + Units.percent(limits.rateError())
                + " of the target, row CV at most "
                + Units.percent(limits.rowCv()) + ", outlets from "
                + units.lengths(limits.clearanceM(), limits.ceilingM())
                + " over the ground; an alert waits for " + FixedDecimals.text(limits.holdS(), 1) + " s and "
                + distance(limits.holdM(), units)
                + ". The height window is where this outlet type keeps the row CV at the pressure of"
                + " the moment, within those heights.";
    }

    /** What all of it rests on. */
    static final String RESTS_ON =
            "Truth is the simulator's own ledger, which the monitor never sees; reported is what the monitor said"
                    + " from sensor bytes alone. The monitor computes where streams land without air drag, and neither knows the wind. Leaf burn"
                    + " and yield depend on far more than geometry; nothing here predicts either.";

    static String verdict(ScoredAlert.Verdict verdict) {
        return switch (verdict) {
            case RIGHT -> "true";
            case MISSED -> "missed";
            case BLINDED -> "no sensor";
            case TOO_QUICK -> "too quick";
            case FALSE -> "false";
            case MISLED -> "misled";
            case NEAR_MISS -> "near miss";
        };
    }

    static String seconds(@Nullable Double value) {
        return value == null ? "-" : FixedDecimals.text(value, 1);
    }

    static String percent(@Nullable Double ratio) {
        return ratio == null ? NOT_KNOWN : Units.percentNumber(ratio, 1);
    }

    static String number(@Nullable Double value) {
        return value == null ? NOT_KNOWN : FixedDecimals.text(value, 1);
    }

    static String signed(@Nullable Double value) {
        return value == null ? NOT_KNOWN : Units.signed(value, 1);
    }

    /** The answer in a sentence or two. */
    static String lead(RunRecord run) {
        Double cv = run.truth().rowCvMean();
        double limit = run.rig().limits().rowCv();
        StringBuilder text = new StringBuilder();
        if (cv == null) {
            text.append("Nothing fell, so no row got anything. ");
        } else {
            double worst = run.truth().rowCvP95() == null ? 0 : run.truth().rowCvP95();
            boolean inPlaces = cv <= limit && worst > limit;
            text.append(
                            cv > limit
                                    ? "Rows were uneven"
                                    : inPlaces ? "Rows were even, but not everywhere" : "Rows were even")
                    .append(": row CV ")
                    .append(Units.percentNumber(cv, 1))
                    .append(" % on average")
                    .append(inPlaces ? ", above " + Units.percentNumber(worst, 0) + " % on the worst twentieth" : "")
                    .append(", the limit is ")
                    .append(Units.percent(limit))
                    .append(". ");
        }
        int due = 0;
        int right = 0;
        int missed = 0;
        int unfounded = 0;
        for (ScoredAlert alert : run.alerts()) {
            due += alert.dueS() == null ? 0 : 1;
            right += alert.verdict() == ScoredAlert.Verdict.RIGHT ? 1 : 0;
            missed += alert.verdict() == ScoredAlert.Verdict.MISSED ? 1 : 0;
            unfounded += alert.verdict() == ScoredAlert.Verdict.FALSE ? 1 : 0;
        }
        if (due == 0) {
            text.append("No alert was due");
        } else {
            text.append(right)
                    .append(" of ")
                    .append(due)
                    .append(due == 1 ? " alert" : " alerts")
                    .append(" due came in time");
            text.append(missed == 0 ? "" : ", " + missed + " missed");
        }
        text.append(unfounded == 0 ? "; none came without a cause." : "; " + unfounded + " without a cause.");
        return text.toString();
    }

    /** What the monitor did not know, and why; each once, with how long. */
    static List<String> unknown(RunRecord run) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (ReportedMoment moment : run.report().moments()) {
            for (ReportedMoment.Gap gap : moment.gaps()) {
                counts.merge(gap.what() + ": " + gap.why(), 1, Integer::sum);
            }
        }
        List<String> lines = new ArrayList<>();
        counts.forEach((what, count) -> lines.add(what + " (" + FixedDecimals.text(count * LIVE_S, 1) + " s)"));
        return lines;
    }
}
