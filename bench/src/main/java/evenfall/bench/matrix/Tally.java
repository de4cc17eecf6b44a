package evenfall.bench.matrix;

import evenfall.bench.score.ScoredAlert;

/** Runs, their hours, and what was raised in them. */
public final class Tally {
    private int runs;
    private double seconds;
    private long raised;
    private long right;
    private long missed;
    private long unfounded;
    private long nearMisses;
    private long tooQuick;
    private long blinded;
    private long misled;

    void count(Marked run) {
        runs++;
        seconds += run.seconds();
        raised += run.raised();
        for (ScoredAlert alert : run.alerts()) {
            switch (alert.verdict()) {
                case RIGHT -> right++;
                case MISSED -> missed++;
                case FALSE -> unfounded++;
                case NEAR_MISS -> nearMisses++;
                case TOO_QUICK -> tooQuick++;
                case BLINDED -> blinded++;
                case MISLED -> misled++;
            }
        }
    }

    public int runs() {
        return runs;
    }

    public double hours() {
        return seconds / 3600;
    }

    /** Alerts that the monitor raised. */
    public long raised() {
        return raised;
    }

    /** Due ones that came in time. */
    public long right() {
        return right;
    }

    public long missed() {
        return missed;
    }

    /** False ones. */
    public long unfounded() {
        return unfounded;
    }

    public long nearMisses() {
        return nearMisses;
    }

    /** Due by the truth while a fault had a sensor out of order, and not raised. */
    public long blinded() {
        return blinded;
    }

    /** Raised, or due and not raised, by what sensors showed that were wrong unseen. */
    public long misled() {
        return misled;
    }

    public long tooQuick() {
        return tooQuick;
    }

    public double unfoundedPerHour() {
        return seconds > 0 ? unfounded / hours() : 0;
    }
}
