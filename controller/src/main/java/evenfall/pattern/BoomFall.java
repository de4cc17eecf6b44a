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
    private final Landings landings;
    private final Fall fall;
    private final Nearness near;

    /** Which outlets fall, from left to right. */
    private final int[] falling;

    /** Of the lines that fall, stream by stream: where, m right of the centre line, and what share each is of what its outlet gives. */
    private final double[] atM;

    private final double[] fartherM;

    /** Where not all fall: which lines those are, as the order of {@link Landings#land} counts, and their shares. */
    private final int[] lineOf;

    private final double[] partShare;
    private final MirrorImages images;

    /**
     * @param pattern of the same boom and outlets, worked out before this each time
     */
    public BoomFall(BoomPattern pattern) {
        this.pattern = pattern;
        BoomLayout boom = pattern.boom();
        landings = pattern.landings();
        fall = new Fall(boom, landings.reachM());
        falling = new int[boom.outlets()];
        int lines = landings.lines();
        near = new Nearness(boom.rowM(), boom.rowPhase(), lines);
        atM = new double[lines];
        fartherM = new double[lines];
        lineOf = new int[lines];
        partShare = new double[lines];
        images = new MirrorImages(boom, landings.reachM(), lines);
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
        landings.land(atM);
        landings.fartherM(fartherM, higherM);
        for (int line = 0; line < atM.length; line++) {
            atM[line] += fartherM[line];
        }
        double[] share = landings.shareOfLine();
        int count = atM.length;
        if (n < heightKnown.length) {
            count = landings.linesOf(falling, n, lineOf);
            for (int k = 0; k < count; k++) {
                atM[k] = atM[lineOf[k]];
                partShare[k] = share[lineOf[k]];
            }
            share = partShare;
        }
        lines(share, count);
        return fall;
    }

    private void lines(double[] share, int count) {
        near.find(atM, count);
        fall.lines(near, share);
        images.find(atM, share, count);
        near.find(images.atM, images.count);
        fall.mirrorImages(near, images.share);
    }

    /** How far from an outlet the rows lie that it may feed, m. */
    public double reachM() {
        return landings.reachM();
    }
}
