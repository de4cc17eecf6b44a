package evenfall.sim.jet;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;

/**
 * The streams of one outlet type with one product, and where they land.
 *
 * <p>Model: each stream leaves its hole at {@code u = u_rated · √(p / (p_rated · SG))} (Bernoulli's theorem) in its direction,
 * turned with the outlet about the fore-and-aft axis; the boom's vertical speed is added; then only gravity acts: it is down
 * {@code h} after {@code t = (−u_d + √(u_d² + 2 g h)) / g} (constant acceleration). A hole at or below the ground lands its
 * stream where it is.
 *
 * <p>Landing places are kept in this object until the next call, so that nothing is allocated while a run goes on.
 */
public final class Jets {
    /** Standard gravity, m/s² (3rd General Conference on Weights and Measures, 1901). */
    private static final double GRAVITY_MPS2 = 9.80665;

    private static final double PER_GRAVITY = 1 / GRAVITY_MPS2;

    /** Up to 0.25 rad the first terms of the series are right to 1e-11, in a tenth of the time; a boom hardly tilts more. */
    private static final double SMALL_SQUARE = 0.0625;

    private final double ratedPressurePa;
    private final double specificGravity;
    private final double[] share;
    private final double[] offsetM;
    private final double[] backMps;
    private final double[] rightMps;
    private final double[] downMps;
    private final double[] landRightM;
    private final double[] landBackM;
    private final double[] flightS;

    /**
     * @param type outlet as it is fitted
     * @param specificGravity of the product
     */
    public Jets(OutletType type, double specificGravity) {
        int n = type.streams().size();
        this.ratedPressurePa = type.ratedPressurePa();
        this.specificGravity = specificGravity;
        share = new double[n];
        offsetM = new double[n];
        backMps = new double[n];
        rightMps = new double[n];
        downMps = new double[n];
        landRightM = new double[n];
        landBackM = new double[n];
        flightS = new double[n];
        for (int k = 0; k < n; k++) {
            Stream stream = type.streams().get(k);
            double sinSplay = StrictMath.sin(stream.splayRad());
            double cosSplay = StrictMath.cos(stream.splayRad());
            share[k] = stream.share();
            offsetM[k] = stream.offsetM();
            backMps[k] = stream.exitMps() * cosSplay * StrictMath.sin(stream.tiltRad());
            rightMps[k] = stream.exitMps() * sinSplay;
            downMps[k] = stream.exitMps() * cosSplay * StrictMath.cos(stream.tiltRad());
        }
    }

    public int streams() {
        return share.length;
    }

    /** A stream's share of its outlet's flow; all shares sum to 1. */
    public double share(int stream) {
        return share[stream];
    }

    /**
     * Lets all streams of one outlet land.
     *
     * @param pressurePa at the outlet, Pa
     * @param heightM of the outlet over the ground under it, m; negative when it is in the ground
     * @param rollRad turn of the outlet about the fore-and-aft axis, rad, positive when its right side is up
     * @param verticalMps speed of the outlet, m/s, up
     */
    public void land(double pressurePa, double heightM, double rollRad, double verticalMps) {
        double factor = pressurePa <= 0 ? 0 : Math.sqrt(pressurePa / (ratedPressurePa * specificGravity));
        double square = rollRad * rollRad;
        boolean small = square < SMALL_SQUARE;
        double sin = small ? sinSeries(rollRad, square) : StrictMath.sin(rollRad);
        double cos = small ? cosSeries(square) : StrictMath.cos(rollRad);
        for (int k = 0; k < share.length; k++) {
            double holeHeightM = heightM + offsetM[k] * sin;
            double holeRightM = offsetM[k] * cos;
            if (holeHeightM <= 0) {
                landRightM[k] = holeRightM;
                landBackM[k] = 0;
                flightS[k] = 0;
                continue;
            }
            double toRightMps = factor * (rightMps[k] * cos + downMps[k] * sin);
            double downwardsMps = factor * (downMps[k] * cos - rightMps[k] * sin) - verticalMps;
            double timeS = (-downwardsMps + Math.sqrt(downwardsMps * downwardsMps + 2 * GRAVITY_MPS2 * holeHeightM))
                    * PER_GRAVITY;
            landRightM[k] = holeRightM + toRightMps * timeS;
            landBackM[k] = factor * backMps[k] * timeS;
            flightS[k] = timeS;
        }
    }

    private static double sinSeries(double x, double square) {
        return x * (1 - square * (1.0 / 6) * (1 - square * (1.0 / 20) * (1 - square * (1.0 / 42))));
    }

    private static double cosSeries(double square) {
        return 1 - square * 0.5 * (1 - square * (1.0 / 12) * (1 - square * (1.0 / 30) * (1 - square * (1.0 / 56))));
    }

    /** Where a stream of the last {@link #land} fell, m to the right of the outlet. */
    public double rightM(int stream) {
        return landRightM[stream];
    }

    /**
     * Where a stream of the last {@link #land} fell, m behind the outlet as it is when the stream comes down. The stream carries
     * the machine's forward speed with it (no drag yet), so over the ground it falls {@code v · flight − back} ahead of where it
     * left.
     */
    public double backM(int stream) {
        return landBackM[stream];
    }

    /** Time in the air of a stream of the last {@link #land}, s. */
    public double flightS(int stream) {
        return flightS[stream];
    }
}
