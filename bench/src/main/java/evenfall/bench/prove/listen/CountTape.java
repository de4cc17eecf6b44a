package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Step;
import evenfall.quantity.FixedDecimals;
import evenfall.wire.FlowPulses;
import evenfall.wire.HubIdentity;
import evenfall.wire.PulseCount;
import evenfall.wire.Rmc;
import evenfall.wire.WheelPulses;

/** Pulses and metres between two standstills. */
final class CountTape implements Tape {
    private static final long RANGE = 1L << 32;

    /** Without a pulse for so long it is at rest, µs; our choice: a meter that gives fewer than two pulses a second is no use. */
    private static final long REST_US = 500_000;

    /** A hub that reads its clock before its counter may tell of an edge a moment after the tick, µs; our choice. */
    private static final long AHEAD_US = 50_000;

    /**
     * Slower is standing, m/s: receivers say up to a decimetre a second when they stand, which would add up. What a start and a stop
     * lose below it is a few centimetres.
     */
    private static final double STANDING_MPS = 0.2;

    private final boolean flow;
    private final boolean wheel;
    private final boolean receiver;
    private double nowS;

    private boolean counted;
    private long lastCount;
    private long lastTick;
    private long total;
    private boolean firstAtRest;
    private boolean lastAtRest;
    private long firstEdgeUs;
    private long lastEdgeUs;
    private boolean hasEdge;
    private double countHeardS;
    private boolean restarted;
    private long boots = -1;

    private boolean moved;
    private boolean fixed;
    private double metres;
    private double lastMps;
    private double speedHeardS;
    private double movingS;
    private boolean firstStanding;
    private double longestGapS;

    CountTape(Step.Counting wanted) {
        flow = wanted == Step.Counting.FLOW;
        wheel = wanted == Step.Counting.WHEEL || wanted == Step.Counting.WHEEL_AND_RECEIVER;
        receiver = wanted == Step.Counting.RECEIVER || wanted == Step.Counting.WHEEL_AND_RECEIVER;
    }

    @Override
    public void now(double timeS) {
        nowS = timeS;
    }

    @Override
    public void onFlow(FlowPulses pulses) {
        if (flow) {
            take(pulses);
        }
    }

    @Override
    public void onWheel(WheelPulses pulses) {
        if (wheel) {
            take(pulses);
        }
    }

    @Override
    public void onHub(HubIdentity hub) {
        if ((flow || wheel) && boots >= 0 && hub.bootCount() != boots) {
            restarted = true;
        }
        boots = hub.bootCount();
    }

    private void take(PulseCount pulses) {
        long tick = pulses.tickUs();
        long sinceEdgeUs = pulses.hasLastEdge() ? Math.floorMod(tick - pulses.lastEdgeTickUs(), RANGE) : REST_US + 1;
        boolean rest = sinceEdgeUs > REST_US && sinceEdgeUs < RANGE - AHEAD_US;
        if (counted) {
            long step = Math.floorMod(pulses.count() - lastCount, RANGE);
            if (step >= RANGE / 2 || Math.floorMod(tick - lastTick, RANGE) >= RANGE / 2) {
                restarted = true;
            } else {
                total += step;
            }
            if (step > 0 && pulses.hasLastEdge()) {
                if (!hasEdge) {
                    firstEdgeUs = pulses.lastEdgeTickUs();
                    hasEdge = true;
                }
                lastEdgeUs = pulses.lastEdgeTickUs();
            }
            longestGapS = Math.max(longestGapS, nowS - countHeardS);
        } else {
            firstAtRest = rest;
            counted = true;
        }
        lastCount = pulses.count();
        lastTick = tick;
        lastAtRest = rest;
        countHeardS = nowS;
    }

    @Override
    public void onRmc(Rmc rmc) {
        if (!receiver || !rmc.hasFix() || !rmc.hasSpeed()) {
            return;
        }
        double mps = rmc.speedMps();
        if (fixed) {
            double seconds = nowS - speedHeardS;
            longestGapS = Math.max(longestGapS, seconds);
            double mean = 0.5 * (lastMps + mps);
            if (mean >= STANDING_MPS) {
                metres += mean * seconds;
                movingS += seconds;
                moved = true;
            }
        } else {
            fixed = true;
            firstStanding = mps < STANDING_MPS;
        }
        lastMps = mps;
        speedHeardS = nowS;
    }

    @Override
    public boolean heard() {
        return (!(flow || wheel) || counted) && (!receiver || fixed);
    }

    @Override
    public String wanted() {
        String pulses = flow ? "flow pulses ($PEVFQ)" : "wheel pulses ($PEVFW)";
        String speed = "a receiver's speed (RMC with a fix)";
        return receiver ? (wheel ? pulses + " and " + speed : speed) : pulses;
    }

    @Override
    public boolean atRest() {
        return (!(flow || wheel) || lastAtRest) && (!receiver || lastMps < STANDING_MPS);
    }

    @Override
    public String soFar() {
        String pulses = flow || wheel ? total + " pulses" : "";
        String driven = receiver ? FixedDecimals.text(metres, 1) + " m" : "";
        return (pulses + " " + driven).strip() + (atRest() ? ", at rest" : ", running");
    }

    @Override
    public double amount() {
        return flow || wheel ? total : metres;
    }

    @Override
    public Recording recording(double seconds) {
        boolean count = flow || wheel;
        double last = Math.max(count ? seconds - countHeardS : 0, receiver ? seconds - speedHeardS : 0);
        double passing = hasEdge ? Math.floorMod(lastEdgeUs - firstEdgeUs, RANGE) * 1e-6 : moved ? movingS : 0;
        return new Recording.Count(
                count && counted ? (Long) total : null,
                receiver && fixed ? (Double) metres : null,
                passing,
                restarted,
                (count && counted && !firstAtRest) || (receiver && fixed && !firstStanding),
                !atRest(),
                Math.max(longestGapS, last));
    }
}
