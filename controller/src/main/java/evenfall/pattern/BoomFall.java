package evenfall.pattern;

import evenfall.rig.BoomLayout;

/**
 * What falls under a boom at one moment, for whoever sums it up over the ground: the amounts alone, without measures, and from heights of their
 * own. Built once, worked out many times.
 *
 * <p>The heights lie about those of a {@link BoomPattern} that has just been worked out, and so each line lies about where it does there: farther
 * out by what a greater height adds to its flight. To first order; from 0.1 m higher a stream that hits the ground at 4.5 m/s lands where
 * it should to a millimetre. A second pattern would cost as much as the first.
 */
public final class BoomFall {
    private final BoomPattern pattern;
    private final double rowM;
    private final double halfWidthM;
    private final Landings landings;
    private final Fall fall;
    private final Nearness near;

    /** Of the outlets that fall, from left to right: which they are, and where a stream of each lands, m right of the centre line. */
    private final int[] falling;

    private final double[] atM;
    private final double[] fartherM;
    private final double[] imageM;

    /**
     * @param pattern of the same boom and outlets, worked out before this each time
     */
    public BoomFall(BoomPattern pattern) {
        this.pattern = pattern;
        BoomLayout boom = pattern.boom();
        rowM = boom.rowM();
        halfWidthM = 0.5 * boom.widthM();
        landings = pattern.landings();
        fall = new Fall(boom, landings.reachM());
        near = new Nearness(boom.rowM(), boom.rowPhase(), boom.outlets());
        falling = new int[boom.outlets()];
        atM = new double[boom.outlets()];
        fartherM = new double[boom.outlets()];
        imageM = new double[boom.outlets()];
    }

    /**
     * Lets every outlet fall that does so in the pattern and whose height is known here.
     *
     * @param heightM height of each outlet over the ground, m; read only where {@code heightKnown}
     * @param higherM by how much higher than in the pattern streams meet the ground from, m
     * @param heightKnown whether it is known
     * @return the same object each time, filled anew
     */
    public Fall compute(double[] heightM, double[] higherM, boolean[] heightKnown) {
        fall.begin(landings.speedFactor());
        int n = 0;
        for (int k = 0; k < pattern.fallingCount(); k++) {
            int outlet = pattern.falling(k);
            if (heightKnown[outlet]) {
                falling[n++] = outlet;
                fall.outlet(outlet, heightM[outlet]);
            }
        }
        for (int i = 0; i < landings.streams(); i++) {
            landings.land(i, atM);
            landings.fartherM(i, fartherM, higherM);
            for (int j = 0; j < atM.length; j++) {
                atM[j] += fartherM[j];
            }
            for (int k = 0; n < atM.length && k < n; k++) {
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
