package evenfall.sense;

import evenfall.rig.Rig;
import java.util.Arrays;
import java.util.List;

/**
 * From the heights at a few sensors to the height of every outlet, with a variance.
 *
 * <p>The height of an outlet over the ground is that of a boom over a profile. What is known of both before any echo:
 *
 * <ul>
 *   <li>the boom: a straight centre frame at any height and slope; from the hinge on a wing that may be tilted against it and that
 *       bends, as a beam held at its root under its own inertia does, about as the square of the distance from the hinge (the usual one-term
 *       shape for a clamped beam's first mode; Rayleigh's method);
 *   <li>the ground: a random walk across the boom, as a profile of ISO 8608 with waviness 2 is one; over a way s its steps have the variance
 *       {@code 2π² n0² Gd(n0) s}. Between two sensors it is a Brownian bridge, beyond the outermost it wanders off.
 * </ul>
 *
 * <p>All of it together is a Gaussian prior, and the height of an outlet is its best linear estimate from the sensors (kriging, G. Matheron,
 * Economic Geology 58, 1963): weights that depend on places alone, worked out anew only when another set of sensors is known or the ground is found to be of another roughness. With a
 * sensor missing the variance grows where it was needed; where it grows beyond {@link #MOST_SD_M} the height is not known.
 */
public final class BoomShape {
    /** An outlet's height that is worse known than this is not known. Our choice: about half the height window of three streams. */
    static final double MOST_SD_M = 0.10;

    /** The boom as a whole: any height, and slopes of 5 % (standard deviations; so wide that they pull at nothing). */
    private static final double HEIGHT_SD_M = 10;

    private static final double SLOPE_SD = 0.05;

    /** A wing's tilt against the centre frame: 0.3 m at the tip of a wing of 16 m. Our choice: what a height control does. */
    private static final double TILT_SD = 0.02;

    /** A wing's bending at its tip, and the ground's bow under a wing: a terrace is 0.2 to 0.3 m high. Our choice. */
    private static final double BEND_SD_M = 0.30;

    /** On smoother ground wings tilt and bend less; but a terrace may come on any: half as far as on class D, as variance. Our choice. */
    private static final double LEAST_WINGS = 0.25;

    /** 2π² · 1.024e-5 m: class D of ISO 8608, Gd(n0) = 1024e-6 m³ at n0 = 0.1 per m. */
    private static final double GROUND_M2PM = 2.02e-4;

    /** What a height sensor errs by beside that, for the weights: about what the sensors of a boom have. Our choice. */
    private static final double READING_SD_M = 0.008;

    /** How fast the shape between sensors changes, per second: that of bending at 1 Hz, 2π. */
    private static final double SHAPE_RATE_PS = 2 * Math.PI;

    private final double[] sensorRightM;
    private final double[] outletRightM;
    private final double hingeM;
    private final double wingM;

    /** For each sensor what it counts for at each outlet, and the square of that: along the boom, for loops that run on vectors. */
    private final double[][] weight;

    private final double[][] weightSquare;
    private final double[] shapeVariance;
    private final boolean[] known;
    private final HeightReadings taken;
    private boolean ready;
    private int solved;
    private double groundM2pm = GROUND_M2PM;
    private double wings = 1;

    /**
     * @param sensors from left to right
     * @param outletRightM place of each outlet, m
     * @param hingeM the wings begin here, m from the centre line
     */
    public BoomShape(List<Rig.Height> sensors, double[] outletRightM, double hingeM) {
        this.outletRightM = outletRightM.clone();
        this.hingeM = hingeM;
        sensorRightM = new double[sensors.size()];
        double farM = hingeM;
        for (int i = 0; i < sensorRightM.length; i++) {
            sensorRightM[i] = sensors.get(i).rightM();
            farM = Math.max(farM, Math.abs(sensorRightM[i]));
        }
        for (double atM : outletRightM) {
            farM = Math.max(farM, Math.abs(atM));
        }
        wingM = Math.max(1e-3, farM - hingeM);
        weight = new double[sensorRightM.length][outletRightM.length];
        weightSquare = new double[sensorRightM.length][outletRightM.length];
        shapeVariance = new double[outletRightM.length];
        known = new boolean[sensorRightM.length];
        taken = new HeightReadings(sensorRightM.length);
    }

    /**
     * Says how rough the ground is, as {@link BoomMotion#roughness()}.
     *
     * @param times variance of what it is on class D of ISO 8608
     */
    public void over(double times) {
        ready &= times * GROUND_M2PM == groundM2pm;
        groundM2pm = times * GROUND_M2PM;
        wings = Math.max(LEAST_WINGS, Math.min(1, times));
    }

    /**
     * Spreads the sensors' heights over the outlets.
     *
     * @param sensorM height at each sensor
     * @param into takes height, variance and whether it is known
     */
    public void spread(List<Quantity> sensorM, OutletHeights into) {
        take(sensorM, taken.heightM, taken.heightVariance);
        spread(taken, into);
    }

    /** As {@link #spread(List, OutletHeights)}. */
    public void spread(HeightReadings sensors, OutletHeights into) {
        solveFor(sensors.known);
        double[] heightM = into.heightM();
        double[] variance = into.variance();
        boolean[] heightKnown = into.known();
        System.arraycopy(shapeVariance, 0, variance, 0, variance.length);
        combine(sensors.heightM, sensors.heightVariance, heightM, variance);
        for (int outlet = 0; outlet < heightM.length; outlet++) {
            heightKnown[outlet] = variance[outlet] <= MOST_SD_M * MOST_SD_M;
            heightM[outlet] = heightKnown[outlet] ? heightM[outlet] : 0;
        }
    }

    /**
     * Spreads how fast the heights change: the same weights, for the shape is the same. Known where heights are.
     *
     * @param sensorMps rate at each sensor; known where the height was
     * @param into takes rate and its variance
     */
    public void spreadRates(List<Quantity> sensorMps, OutletHeights into) {
        take(sensorMps, taken.rateMps, taken.rateVariance);
        spreadRates(taken, into);
    }

    /** As {@link #spreadRates(List, OutletHeights)}. */
    public void spreadRates(HeightReadings sensors, OutletHeights into) {
        solveFor(sensors.known);
        double[] variance = into.rateVariance();
        for (int outlet = 0; outlet < variance.length; outlet++) {
            variance[outlet] = SHAPE_RATE_PS * SHAPE_RATE_PS * shapeVariance[outlet];
        }
        combine(sensors.rateMps, sensors.rateVariance, into.rateMps(), variance);
    }

    /**
     * Spreads how unsure it is from which height streams meet the ground.
     *
     * @param sensors as {@link BoomMotion#now} fills them
     * @param meetsSdM filled with the standard deviation at each outlet, m
     */
    public void spreadMeets(HeightReadings sensors, double[] meetsSdM) {
        solveFor(sensors.known);
        System.arraycopy(shapeVariance, 0, meetsSdM, 0, meetsSdM.length);
        for (int i = 0; i < known.length; i++) {
            if (known[i]) {
                addTimes(weightSquare[i], sensors.meetsVariance[i], meetsSdM);
            }
        }
        for (int outlet = 0; outlet < meetsSdM.length; outlet++) {
            meetsSdM[outlet] = Math.sqrt(meetsSdM[outlet]);
        }
    }

    private void take(List<Quantity> sensors, double[] value, double[] variance) {
        for (int i = 0; i < value.length; i++) {
            Quantity sensor = sensors.get(i);
            taken.known[i] = sensor.isKnown();
            value[i] = sensor.number();
            variance[i] = sensor.variance();
        }
    }

    /** Fills the values, and adds the readings' part to variances that hold the shape's. */
    private void combine(double[] sensor, double[] sensorVariance, double[] value, double[] variance) {
        Arrays.fill(value, 0);
        for (int i = 0; i < known.length; i++) {
            if (known[i]) {
                addTimes(weight[i], sensor[i], value);
                addTimes(weightSquare[i], sensorVariance[i], variance);
            }
        }
    }

    private static void addTimes(double[] weights, double times, double[] into) {
        for (int outlet = 0; outlet < into.length; outlet++) {
            into[outlet] += weights[outlet] * times;
        }
    }

    private void solveFor(boolean[] knownNow) {
        if (!ready || !Arrays.equals(known, knownNow)) {
            System.arraycopy(knownNow, 0, known, 0, known.length);
            solve();
            solved++;
            ready = true;
        }
    }

    /** How often the weights have been worked out: they are the same while this is. */
    int solved() {
        return solved;
    }

    /** How much of each sensor's height goes into an outlet's; of those that are not known, nothing. A new array. */
    double[] weights(int outlet) {
        double[] ofSensor = new double[known.length];
        for (int i = 0; i < known.length; i++) {
            ofSensor[i] = known[i] ? weight[i][outlet] : 0;
        }
        return ofSensor;
    }

    /** What the sensors leave unknown of an outlet's height, m². */
    double shapeVariance(int outlet) {
        return shapeVariance[outlet];
    }

    /** Weights {@code w = K⁻¹ k} and what is left of the shape's variance, {@code k(x,x) − wᵀk − wᵀR w}, R being the readings' part. */
    private void solve() {
        int n = 0;
        int[] at = new int[known.length];
        for (int i = 0; i < known.length; i++) {
            if (known[i]) {
                at[n++] = i;
            }
        }
        double[][] root = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                root[i][j] = covariance(sensorRightM[at[i]], sensorRightM[at[j]])
                        + (i == j ? READING_SD_M * READING_SD_M : 0);
            }
        }
        choleskyInPlace(root);
        double[] k = new double[n];
        for (int outlet = 0; outlet < outletRightM.length; outlet++) {
            double atM = outletRightM[outlet];
            for (int i = 0; i < n; i++) {
                k[i] = covariance(atM, sensorRightM[at[i]]);
            }
            double left = covariance(atM, atM);
            double[] w = solved(root, k);
            for (int i = 0; i < n; i++) {
                left -= w[i] * k[i] + w[i] * w[i] * READING_SD_M * READING_SD_M;
                weight[at[i]][outlet] = w[i];
                weightSquare[at[i]][outlet] = w[i] * w[i];
            }
            shapeVariance[outlet] = Math.max(0, left);
        }
    }

    private double covariance(double oneM, double otherM) {
        double ground = oneM * otherM > 0 ? Math.min(Math.abs(oneM), Math.abs(otherM)) : 0;
        double both = HEIGHT_SD_M * HEIGHT_SD_M + SLOPE_SD * SLOPE_SD * oneM * otherM + groundM2pm * ground;
        double oneBeyondM = Math.abs(oneM) - hingeM;
        double otherBeyondM = Math.abs(otherM) - hingeM;
        if (oneM * otherM <= 0 || oneBeyondM <= 0 || otherBeyondM <= 0) {
            return both;
        }
        double lever = oneBeyondM * otherBeyondM;
        double bend = lever / (wingM * wingM);
        return both + wings * (TILT_SD * TILT_SD * lever + BEND_SD_M * BEND_SD_M * bend * bend);
    }

    /** Lower triangle L of {@code A = L Lᵀ} in place (A. L. Cholesky; any book on numerical linear algebra). */
    private static void choleskyInPlace(double[][] a) {
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int m = 0; m < j; m++) {
                    sum -= a[i][m] * a[j][m];
                }
                a[i][j] = i == j ? Math.sqrt(sum) : sum / a[j][j];
            }
        }
    }

    private static double[] solved(double[][] root, double[] k) {
        double[] x = k.clone();
        for (int i = 0; i < x.length; i++) {
            for (int m = 0; m < i; m++) {
                x[i] -= root[i][m] * x[m];
            }
            x[i] /= root[i][i];
        }
        for (int i = x.length - 1; i >= 0; i--) {
            for (int m = i + 1; m < x.length; m++) {
                x[i] -= root[m][i] * x[m];
            }
            x[i] /= root[i][i];
        }
        return x;
    }
}
