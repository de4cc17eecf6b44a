package evenfall.bench.sheet;

import evenfall.bench.page.Axis;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.Course;
import evenfall.quantity.Units;
import java.util.List;

/**
 * How far the axes go, so that charts of several runs can be laid over each other.
 *
 * @param lengthM of the longest run, m
 * @param seconds of the longest run, s
 * @param lowestM of all tips, 0 where none is lower, m
 * @param highestM of all tips, m
 * @param ratePct largest rate error that is shown, percent
 */
record Extent(double lengthM, double seconds, double lowestM, double highestM, double ratePct) {
    /** A rate error beyond this needs no telling apart, percent. */
    private static final double MOST_RATE_PCT = 50;

    private static final double LEAST_RATE_PCT = 20;

    static Extent of(List<RunRecord> runs) {
        double lengthM = 1;
        double seconds = 1;
        double lowestM = 0;
        double highestM = 0.1;
        double ratePct = LEAST_RATE_PCT;
        for (RunRecord run : runs) {
            lengthM = Math.max(lengthM, run.lengthM());
            seconds = Math.max(seconds, run.seconds());
            for (Course.Moment moment : run.course().moments()) {
                lowestM = Math.min(lowestM, Math.min(moment.leftTipM(), moment.rightTipM()));
                highestM = Math.max(highestM, Math.max(moment.leftTipM(), moment.rightTipM()));
                ratePct = Math.max(ratePct, moment.rateErrorPct() == null ? 0 : Math.abs(moment.rateErrorPct()));
            }
        }
        return new Extent(lengthM, seconds, lowestM, highestM, Math.min(MOST_RATE_PCT, ratePct));
    }

    Axis distance(Units units) {
        return Axis.of(
                "distance along the pass, " + Words.distanceUnit(units), 0, lengthM * Words.distancesPerMetre(units));
    }

    Axis time() {
        return Axis.of("time, s", 0, seconds);
    }

    Axis height(Units units) {
        return Axis.around(
                "height, " + units.lengthUnit(), lowestM * units.lengthsPerMetre(), highestM * units.lengthsPerMetre());
    }

    Axis rate() {
        return Axis.around("rate error, %", -ratePct, ratePct);
    }
}
