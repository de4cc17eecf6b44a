package evenfall.sim.plumbing;

import java.util.Arrays;

/**
 * The pipe along the boom and the outlets on it. It is fed at the centre; each half loses pressure outwards.
 *
 * <p>Loss over a stretch is in proportion to ρ times the square of what flows through it (turbulent; Darcy and Weisbach), and so
 * is an outlet's. So all pressures keep their proportions whatever the feed's pressure, and the network is solved once for each
 * set of open sections and of outlets as they are: outlet i sees {@code φ_i · p} and lets through {@code K_i √(φ_i p / SG)}.
 */
final class BoomLine {
    private static final int ROUNDS = 60;

    /** Shares that move by less than this have settled. */
    private static final double SETTLED = 1e-14;

    private final double specificGravity;
    private final double lossPerSquare;
    private final double[] trunkShare;
    private final double[] pressureShare;
    private final double[] coefficient;
    private double sum;

    /**
     * @param k flow of each outlet as it should be with water at 1 Pa, m³/s per √Pa, from the left
     * @param lineLoss pressure lost to the tips with everything on, as a share
     */
    BoomLine(double[] k, double specificGravity, double lineLoss) {
        this.specificGravity = specificGravity;
        trunkShare = new double[k.length];
        pressureShare = new double[k.length];
        coefficient = new double[k.length];
        this.lossPerSquare = lineLoss / evenLossToTip(k);
    }

    /** The sum of squares of the line's flow on the way to the left tip, every outlet taken at the feed's pressure. */
    private static double evenLossToTip(double[] k) {
        double square = 0;
        double flow = 0;
        for (int i = 0; i < k.length / 2; i++) {
            flow += k[i];
            square += flow * flow;
        }
        return square;
    }

    /**
     * Solves the line anew.
     *
     * @param k of the outlets as they are, m³/s per √Pa
     * @param through what stands before each outlet: 1 where nothing does, 0 where its section is off, between them the root of the
     *     share of pressure that a section's strainer leaves
     */
    void solve(double[] k, double[] through) {
        int n = k.length;
        Arrays.fill(trunkShare, 1);
        double moved = 1;
        for (int round = 0; round < ROUNDS && moved > SETTLED; round++) {
            moved = Math.max(side(k, through, n / 2 - 1, -1, -1), side(k, through, n / 2, n, 1));
        }
        sum = 0;
        for (int i = 0; i < n; i++) {
            pressureShare[i] = through[i] * through[i] * trunkShare[i];
            coefficient[i] = through[i] * k[i] * Math.sqrt(trunkShare[i] / specificGravity);
            sum += coefficient[i];
        }
    }

    /** One round of fixed-point iteration on one half, from the feed outwards; says how far the shares have moved. */
    private double side(double[] k, double[] through, int from, int end, int step) {
        double flow = 0;
        for (int i = from; i != end; i += step) {
            flow += through[i] * k[i] * Math.sqrt(trunkShare[i]);
        }
        double left = 1;
        double moved = 0;
        for (int i = from; i != end; i += step) {
            left -= lossPerSquare * flow * flow;
            flow -= through[i] * k[i] * Math.sqrt(trunkShare[i]);
            double share = Math.max(0, left);
            moved = Math.max(moved, Math.abs(share - trunkShare[i]));
            trunkShare[i] = share;
        }
        return moved;
    }

    /** Flow of everything that is open at a feed pressure of 1 Pa, m³/s per √Pa. */
    double sum() {
        return sum;
    }

    /** Flow of one outlet at a feed pressure of 1 Pa, m³/s per √Pa; 0 where it is off. */
    double coefficient(int outlet) {
        return coefficient[outlet];
    }

    /** Pressure at an outlet as a share of the feed's; 0 where it is off. */
    double pressureShare(int outlet) {
        return pressureShare[outlet];
    }

    /** Pressures at all outlets, Pa, into a row that begins anywhere in an array. */
    void pressuresPa(double feedPa, double[] into, int from) {
        for (int i = 0; i < pressureShare.length; i++) {
            into[from + i] = pressureShare[i] * feedPa;
        }
    }

    /** What all outlets have let through, m³, over a time with this integral of the root of the feed's pressure, √Pa · s. */
    void flowed(double rootIntegral, double[] into) {
        for (int i = 0; i < coefficient.length; i++) {
            into[i] = coefficient[i] * rootIntegral;
        }
    }
}
