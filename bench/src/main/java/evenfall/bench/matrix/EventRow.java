package evenfall.bench.matrix;

import evenfall.bench.score.ScoredAlert;
import evenfall.bench.score.Spread;

/** What became of one kind of alert, due by the truth or by faults, over all runs. */
public final class EventRow {
    private final Spread delaysS = new Spread();
    private final Spread leadsS = new Spread();
    private int inTime;
    private int missed;
    private int tooQuick;
    private int blinded;
    private int misled;
    private int nearMisses;
    private int unfounded;
    private int causeRight;
    private int causeJudged;

    void count(ScoredAlert alert) {
        switch (alert.verdict()) {
            case RIGHT -> inTime++;
            case MISSED -> missed++;
            case TOO_QUICK -> tooQuick++;
            case BLINDED -> blinded++;
            case MISLED -> misled++;
            case NEAR_MISS -> nearMisses++;
            case FALSE -> unfounded++;
        }
        Double delayS = alert.delayS();
        if (delayS != null && alert.kind().equals("strike-ahead")) {
            if (delayS <= 0) {
                leadsS.add(-delayS);
            }
        } else if (delayS != null) {
            // One that stood before was there when it was due.
            delaysS.add(Math.max(0, delayS));
        }
        Boolean right = alert.rightCause();
        if (right != null) {
            causeJudged++;
            causeRight += right ? 1 : 0;
        }
    }

    public int due() {
        return inTime + missed;
    }

    public int inTime() {
        return inTime;
    }

    public int missed() {
        return missed;
    }

    /** Due by the truth while a fault had a sensor out of order, and not raised. */
    public int blinded() {
        return blinded;
    }

    /** Raised, or due and not raised, by what sensors showed that were wrong unseen. */
    public int misled() {
        return misled;
    }

    public int tooQuick() {
        return tooQuick;
    }

    public int nearMisses() {
        return nearMisses;
    }

    /** False ones. */
    public int unfounded() {
        return unfounded;
    }

    public int causeRight() {
        return causeRight;
    }

    public int causeJudged() {
        return causeJudged;
    }

    /** From due to raised, s. */
    public Spread delaysS() {
        return delaysS;
    }

    /** From raised to contact, s. */
    public Spread leadsS() {
        return leadsS;
    }
}
