package evenfall.bench.matrix;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that is to be reached.
 *
 * @param what in words
 * @param toReach the limit, in {@code unit}
 * @param atLeast whether the measured value must not be below it; else not above it
 * @param measured null where it was not measured
 * @param unit {@code %}, {@code points} or empty for a count
 * @param failing what does not reach it
 */
public record Limit(
        String what,
        double toReach,
        boolean atLeast,
        @Nullable Double measured,
        String unit,
        List<String> failing) {

    /** Of the observable faults, each must be raised in time in this share of its runs. */
    private static final double RAISED_PCT = 95;

    private static final double ROW_CV_C_POINTS = 3;
    private static final double ROW_CV_D_POINTS = 6;
    private static final double RATE_POINTS = 1;

    public Limit {
        failing = List.copyOf(failing);
    }

    /** Null where it was not measured. */
    public @Nullable Boolean reached() {
        if (measured == null) {
            return null;
        }
        return atLeast ? measured >= toReach : measured <= toReach;
    }

    /** All that the matrix is held to. */
    public static List<Limit> of(Matrix matrix) {
        List<Limit> limits = new ArrayList<>();
        limits.add(faults(matrix));
        limits.add(clean(matrix));
        limits.add(rowCv(matrix, "C", ROW_CV_C_POINTS));
        limits.add(rowCv(matrix, "D", ROW_CV_D_POINTS));
        limits.add(new Limit(
                "rate error in steady running, off by, p95",
                RATE_POINTS,
                false,
                matrix.steadyRate().p95(),
                "points",
                List.of()));
        return limits;
    }

    /** Whether one of them was measured and not reached. */
    public static boolean anyMissed(List<Limit> limits) {
        return limits.stream().anyMatch(limit -> Boolean.FALSE.equals(limit.reached()));
    }

    private static Limit faults(Matrix matrix) {
        Double worst = null;
        List<String> failing = new ArrayList<>();
        for (var entry : matrix.alone().entrySet()) {
            Double share = entry.getValue().share();
            if (share == null) {
                continue;
            }
            double pct = 100 * share;
            worst = worst == null ? pct : Math.min(worst, pct);
            if (pct < RAISED_PCT) {
                failing.add(entry.getKey());
            }
        }
        return new Limit("each observable fault raised in time, runs", RAISED_PCT, true, worst, "%", failing);
    }

    private static Limit clean(Matrix matrix) {
        Tally hours = matrix.groups().get(Group.CLEAN);
        List<String> failing = new ArrayList<>();
        matrix.unfoundedInCleanHours().forEach((kind, times) -> failing.add(kind + " " + times));
        return new Limit(
                "false alarms in the clean hours",
                0,
                false,
                hours == null ? null : (double) hours.unfounded(),
                "",
                failing);
    }

    private static Limit rowCv(Matrix matrix, String ground, double toReach) {
        Double worst = null;
        List<String> failing = new ArrayList<>();
        for (Cell cell : matrix.grounds()) {
            Double p95 = cell.ground().equals(ground) ? cell.rowCvPoints().p95() : null;
            if (p95 == null) {
                continue;
            }
            worst = worst == null ? p95 : Math.max(worst, p95);
            if (p95 > toReach) {
                failing.add(cell.outlet());
            }
        }
        return new Limit(
                "row CV on class " + ground + ", each outlet type, off by, p95",
                toReach,
                false,
                worst,
                "points",
                failing);
    }
}
