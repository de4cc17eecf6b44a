package evenfall.sim.plumbing;

import evenfall.liquid.Orifice;
import java.util.Arrays;

/**
 * The pipe along the boom and the outlets on it. It is fed at the centre; each half loses pressure outwards.
 *
 * <p>Loss over a stretch is in proportion to ρ times the square of what flows through it (turbulent; Darcy and Weisbach), and so
 * is an outlet's. So all pressures keep their proportions whatever the feed's pressure, and the network is solved once for each
 * set of open sections: outlet i sees {@code φ_i · p} and lets through {@code K_i √(φ_i p / SG)}.
 */
final class BoomLine {
    private static final int ROUNDS = 60;

    private final double[] k;
    private final double specificGravity;
    private final double lossPerSquare;
    private final double[] pressureShare;
    private final double[] coefficient;
    private double sum;

    /**
     * @param k flow of each outlet with water at 1 Pa, m³/s per √Pa, from the left
     * @param lineLoss pressure lost to the tips with everything on, as a share
     */
    BoomLine(double[] k, double specificGravity, double lineLoss) {
        this.k = k.clone();
        this.specificGravity = specificGravity;
        pressureShare = new double[k.length];
        coefficient = new double[k.length];
        double[] all = new double[k.length];
        Arrays.fill(all, 1);
        this.lossPerSquare = lineLoss / evenLossToTip(k);
        open(all);
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
     * @param openness of each outlet: 1 where its section is on, 0 where it is off
     */
    void open(double[] openness) {
        int n = k.length;
        Arrays.fill(pressureShare, 1);
        for (int round = 0; round < ROUNDS; round++) {
            side(openness, n / 2 - 1, -1, -1);
            side(openness, n / 2, n, 1);
        }
        sum = 0;
        for (int i = 0; i < n; i++) {
            coefficient[i] = openness[i] * k[i] * Math.sqrt(pressureShare[i] / specificGravity);
            sum += coefficient[i];
        }
    }

    /** One round of fixed-point iteration on one half, from the feed outwards. */
    private void side(double[] openness, int from, int end, int step) {
        double through = 0;
        for (int i = from; i != end; i += step) {
            through += openness[i] * k[i] * Math.sqrt(pressureShare[i]);
        }
        double left = 1;
        for (int i = from; i != end; i += step) {
            left -= lossPerSquare * through * through;
            through -= openness[i] * k[i] * Math.sqrt(pressureShare[i]);
            pressureShare[i] = Math.max(0, left);
        }
    }

    /** Flow of everything that is open at a feed pressure of 1 Pa, m³/s per √Pa. */
    double sum() {
        return sum;
    }

    /** Flow of one outlet at a feed pressure of 1 Pa, m³/s per √Pa; 0 where it is off. */
    double coefficient(int outlet) {
        return coefficient[outlet];
    }

    /** Pressure at an outlet as a share of the feed's. */
    double pressureShare(int outlet) {
        return pressureShare[outlet];
    }

    /** K of outlets of one orifice, each with its own deviation. */
    static double[] outlets(Orifice orifice, double[] deviation) {
        double[] k = new double[deviation.length];
        for (int i = 0; i < k.length; i++) {
            k[i] = orifice.k() * (1 + deviation[i]);
        }
        return k;
    }
}
