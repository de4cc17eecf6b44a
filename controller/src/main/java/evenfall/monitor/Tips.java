package evenfall.monitor;

import evenfall.judge.Tip;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sense.BoomOutlook;
import evenfall.sense.BoomShape;
import evenfall.sense.HeightReadings;
import evenfall.sense.OutletHeights;
import java.util.stream.IntStream;

/**
 * Both ends of the boom, now and ahead: at the two outlets that bound each wing's outer quarter.
 *
 * <p>Ahead by the motion of the whole boom, which knows a swing from a slope. Where a height falls as no motion of this boom explains,
 * that over a ditch's wall or of a wing that gives way, a straight line is all that is left, and then only as much of a fall as is
 * sure counts.
 */
final class Tips {
    private static final int LEFT_END = 0;
    private static final int LEFT_QUARTER = 1;
    private static final int RIGHT_QUARTER = 2;
    private static final int RIGHT_END = 3;
    private static final int PLACES = 4;

    /** A fall less so many standard deviations of it is sure, but for one chance in six. Our choice. */
    private static final double SURELY = 1;

    private final Inputs inputs;
    private final boolean fitted;
    private final double clearanceM;
    private final double nearM;
    private final double aheadS;
    private final BoomShape shape;
    private final BoomOutlook outlook;
    private final HeightReadings sensors;
    private final int[] leftSensors;
    private final int[] rightSensors;
    private final OutletHeights ends = OutletHeights.of(PLACES);
    private Tip left = Tip.UNKNOWN;
    private Tip right = Tip.UNKNOWN;

    Tips(Rig rig, Inputs inputs) {
        this.inputs = inputs;
        this.fitted = !rig.sensors().heights().isEmpty();
        this.clearanceM = rig.limits().clearanceM();
        // A forecast that is off by as much as half of what lies between says nothing either way.
        this.nearM = 0.5 * (clearanceM + rig.target().heightM());
        this.aheadS = rig.limits().strikeS();
        BoomLayout boom = rig.boom();
        double endM = boom.outletRightM(boom.outlets() - 1);
        double quarterM = endM - 0.25 * Math.max(0, endM - boom.hingeM());
        this.sensors = new HeightReadings(rig.sensors().heights().size());
        this.shape =
                new BoomShape(rig.sensors().heights(), new double[] {-endM, -quarterM, quarterM, endM}, boom.hingeM());
        this.outlook = new BoomOutlook(inputs.motion(), shape, PLACES, aheadS);
        this.leftSensors = onSide(rig, -1);
        this.rightSensors = onSide(rig, 1);
    }

    private static int[] onSide(Rig rig, int side) {
        return IntStream.range(0, rig.sensors().heights().size())
                .filter(i -> side * rig.sensors().heights().get(i).rightM() > 0)
                .toArray();
    }

    void look(long nowUs) {
        if (!fitted) {
            return;
        }
        inputs.readHeights(nowUs, sensors);
        shape.spread(sensors, ends);
        boolean foretold = outlook.look(nowUs);
        left = foretold ? tip(LEFT_END, LEFT_QUARTER, leftSensors) : Tip.UNKNOWN;
        right = foretold ? tip(RIGHT_END, RIGHT_QUARTER, rightSensors) : Tip.UNKNOWN;
    }

    private Tip tip(int end, int quarter, int[] wing) {
        if (!ends.known()[end] || !ends.known()[quarter]) {
            return Tip.UNKNOWN;
        }
        if (isFalling(wing)) {
            shape.spreadRates(sensors, ends);
            int lower = surelyM(end) < surelyM(quarter) ? end : quarter;
            if (surelyM(lower) < clearanceM) {
                return byLine(lower, wing);
            }
        }
        if (!outlook.likeliestUnder(clearanceM, nearM, end, quarter)) {
            return Tip.FAR;
        }
        return new Tip(
                true,
                !isSuspect(wing),
                Math.min(ends.heightM()[end], ends.heightM()[quarter]),
                outlook.heightM(),
                Math.sqrt(outlook.varianceM2()),
                outlook.inS());
    }

    /** Where a straight line gets to with a fall that is sure. */
    private double surelyM(int place) {
        double surelyMps = Math.min(0, ends.rateMps()[place] + SURELY * Math.sqrt(ends.rateVariance()[place]));
        return ends.heightM()[place] + aheadS * surelyMps;
    }

    private Tip byLine(int place, int[] wing) {
        double nowM = Math.max(0, ends.heightM()[place]);
        double thenM = Math.max(0, surelyM(place));
        double fallM = ends.heightM()[place] - surelyM(place);
        double inS = fallM > 0 ? aheadS * Math.min(1, nowM / fallM) : 0;
        return new Tip(true, !isSuspect(wing), ends.heightM()[place], thenM, 0, inS);
    }

    private boolean isFalling(int[] wing) {
        for (int sensor : wing) {
            if (sensors.isKnown(sensor) && inputs.motion().isFalling(sensor)) {
                return true;
            }
        }
        return false;
    }

    private boolean isSuspect(int[] wing) {
        for (int sensor : wing) {
            if (inputs.isSuspect(sensor)) {
                return true;
            }
        }
        return false;
    }

    Tip left() {
        return left;
    }

    Tip right() {
        return right;
    }
}
