package evenfall.pattern;

import evenfall.rig.BoomLayout;
import java.util.Arrays;

/**
 * What a {@link BoomFall} let fall at one moment, kept apart by whose rows it meets: this pass's own lines, and the mirror images
 * that stand for the adjoining passes. Amounts are multiples of what one outlet gives. Filled again at the next moment.
 */
public final class Fall {
    /** Rows so far beyond the boom's end are kept apart, m; farther than a stream of the outlets that come along is carried sideways. */
    public static final double BESIDE_M = 4;

    private final Rows own;
    private final Rows mirrored;
    private final boolean[] fell;
    private final double reachM;
    private int fallen;
    private double heightSumM;
    private double speedFactor;

    /**
     * @param reachM how far from its outlet a line may land, and one row more, m
     */
    Fall(BoomLayout boom, double reachM) {
        double keptM = 0.5 * boom.widthM() + BESIDE_M;
        own = new Rows(boom.rowM(), boom.rowPhase(), keptM);
        mirrored = new Rows(boom.rowM(), boom.rowPhase(), keptM);
        fell = new boolean[boom.outlets()];
        this.reachM = reachM;
    }

    void begin(double factor) {
        own.clear();
        mirrored.clear();
        Arrays.fill(fell, false);
        fallen = 0;
        heightSumM = 0;
        speedFactor = factor;
    }

    void outlet(int outlet, double heightM) {
        fell[outlet] = true;
        fallen++;
        heightSumM += heightM;
    }

    /** Lets own lines fall, each of so large a share of what its outlet gives. */
    void lines(Nearness lines, double[] shares) {
        own.add(lines, shares);
    }

    void mirrorImages(Nearness images, double[] shares) {
        mirrored.add(images, shares);
    }

    /** What this pass's own lines put on rows, those up to {@link #BESIDE_M} beyond the boom's ends among them. */
    public Rows own() {
        return own;
    }

    /** What the mirror images put on rows; the same rows as those of {@link #own}. */
    public Rows mirrored() {
        return mirrored;
    }

    /** What fell beyond every row that is kept; with the rows of {@link #own} it makes {@link #fallen}. */
    public double beyond() {
        return own.beyond();
    }

    /** How many outlets fell: those that are open and whose height is known. */
    public int fallen() {
        return fallen;
    }

    /** Whether that outlet is one of them. */
    public boolean fell(int outlet) {
        return fell[outlet];
    }

    /** Mean height of the outlets that fell, m; asked for only where some did. */
    public double meanHeightM() {
        if (fallen == 0) {
            throw new IllegalStateException("asked for the height of outlets, and none fell");
        }
        return heightSumM / fallen;
    }

    /** Exit speed over the rated one. */
    public double speedFactor() {
        return speedFactor;
    }

    /** How far from an outlet the rows lie that it may feed, m. */
    public double reachM() {
        return reachM;
    }
}
