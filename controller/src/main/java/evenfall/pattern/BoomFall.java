package evenfall.pattern;

import evenfall.outlet.OutletType;
import evenfall.rig.BoomLayout;

/**
 * What falls under a boom at one moment, for whoever sums it up over the ground: the amounts alone, without measures. Built once, worked out
 * many times.
 */
public final class BoomFall {
    private final double rowM;
    private final double halfWidthM;
    private final Landings landings;
    private final Fall fall;

    /** As {@link BoomPattern#BoomPattern}. */
    public BoomFall(BoomLayout boom, OutletType type, double targetHeightM, double specificGravity) {
        rowM = boom.rowM();
        halfWidthM = 0.5 * boom.widthM();
        landings = new Landings(boom, type, targetHeightM, specificGravity);
        fall = new Fall(boom, landings.reachM());
    }

    /**
     * Lets every open outlet fall; as {@link BoomPattern#compute(double[], double[], boolean[], boolean[], double, double)}.
     *
     * @return the same object each time, filled anew
     */
    public Fall compute(
            double[] heightM,
            double[] rateMps,
            boolean[] heightKnown,
            boolean[] open,
            double speedFactor,
            double travelMps) {
        fall.begin(speedFactor);
        landings.fly(heightM, rateMps, speedFactor, travelMps);
        for (int outlet = 0; outlet < open.length; outlet++) {
            if (open[outlet] && heightKnown[outlet]) {
                fall.outlet(outlet, heightM[outlet]);
                lines(outlet);
            }
        }
        return fall;
    }

    private void lines(int outlet) {
        for (int i = 0; i < landings.streams(); i++) {
            double atM = landings.landsM(i)[outlet];
            fall.line(atM, landings.share(i));
            if (halfWidthM - Math.abs(atM) < rowM) {
                fall.mirrorImage(Math.copySign(2 * halfWidthM, atM) - atM, landings.share(i));
            }
        }
    }

    /** How far from an outlet the rows lie that it may feed, m. */
    public double reachM() {
        return landings.reachM();
    }
}
