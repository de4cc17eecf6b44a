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
    private final Nearness near;

    /** Of the outlets that fall, from left to right: which they are, and where a stream of each lands, m right of the centre line. */
    private final int[] falling;

    private final double[] atM;
    private final double[] imageM;

    /** As {@link BoomPattern#BoomPattern}. */
    public BoomFall(BoomLayout boom, OutletType type, double targetHeightM, double specificGravity) {
        rowM = boom.rowM();
        halfWidthM = 0.5 * boom.widthM();
        landings = new Landings(boom, type, targetHeightM, specificGravity);
        fall = new Fall(boom, landings.reachM());
        near = new Nearness(boom.rowM(), boom.rowPhase(), boom.outlets());
        falling = new int[boom.outlets()];
        atM = new double[boom.outlets()];
        imageM = new double[boom.outlets()];
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
        int n = 0;
        for (int outlet = 0; outlet < open.length; outlet++) {
            if (open[outlet] && heightKnown[outlet]) {
                falling[n++] = outlet;
                fall.outlet(outlet, heightM[outlet]);
            }
        }
        for (int i = 0; i < landings.streams(); i++) {
            landings.land(i, atM);
            for (int k = 0; n < open.length && k < n; k++) {
                atM[k] = atM[falling[k]];
            }
            lines(i, n);
        }
        return fall;
    }

    private void lines(int stream, int n) {
        near.find(atM, n);
        fall.lines(near, landings.share(stream));
        int images = 0;
        for (int k = 0; k < n; k++) {
            if (halfWidthM - Math.abs(atM[k]) < rowM) {
                imageM[images++] = Math.copySign(2 * halfWidthM, atM[k]) - atM[k];
            }
        }
        near.find(imageM, images);
        fall.mirrorImages(near, landings.share(stream));
    }

    /** How far from an outlet the rows lie that it may feed, m. */
    public double reachM() {
        return landings.reachM();
    }
}
