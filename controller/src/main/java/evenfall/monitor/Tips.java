package evenfall.monitor;

import evenfall.judge.Tip;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sense.BoomShape;
import evenfall.sense.HeightReadings;
import evenfall.sense.OutletHeights;

/** Both ends of the boom: the lower one of the two outlets that bound each wing's outer quarter. */
final class Tips {
    private static final int LEFT_END = 0;
    private static final int LEFT_QUARTER = 1;
    private static final int RIGHT_QUARTER = 2;
    private static final int RIGHT_END = 3;

    private final Inputs inputs;
    private final boolean fitted;
    private final BoomShape shape;
    private final HeightReadings sensors;
    private final OutletHeights ends = OutletHeights.of(4);
    private Tip left = Tip.UNKNOWN;
    private Tip right = Tip.UNKNOWN;

    Tips(Rig rig, Inputs inputs) {
        this.inputs = inputs;
        this.fitted = !rig.sensors().heights().isEmpty();
        BoomLayout boom = rig.boom();
        double endM = boom.outletRightM(boom.outlets() - 1);
        double quarterM = endM - 0.25 * Math.max(0, endM - boom.hingeM());
        this.sensors = new HeightReadings(rig.sensors().heights().size());
        this.shape =
                new BoomShape(rig.sensors().heights(), new double[] {-endM, -quarterM, quarterM, endM}, boom.hingeM());
    }

    void look(long nowUs) {
        if (!fitted) {
            return;
        }
        inputs.readHeights(nowUs, sensors);
        shape.spread(sensors, ends);
        shape.spreadRates(sensors, ends);
        left = tip(LEFT_END, LEFT_QUARTER);
        right = tip(RIGHT_END, RIGHT_QUARTER);
    }

    private Tip tip(int end, int quarter) {
        if (!ends.known()[end] || !ends.known()[quarter]) {
            return Tip.UNKNOWN;
        }
        int lower = ends.heightM()[end] <= ends.heightM()[quarter] ? end : quarter;
        return new Tip(true, ends.heightM()[lower], ends.rateMps()[lower], ends.rateVariance()[lower]);
    }

    Tip left() {
        return left;
    }

    Tip right() {
        return right;
    }
}
