package evenfall.sense;

import org.jspecify.annotations.Nullable;

/**
 * One ultrasonic height sensor: echo time to the height of the outlets beside it, and how fast it changes.
 *
 * <p>Distance is half the echo time times the speed of sound, {@code 331.3 · √(1 + T/273.15)} m/s with T in °C (dry air; the form
 * that general acoustics pages give).
 *
 * <p><b>Following.</b> A Kalman filter of two states, height and its rate (R. E. Kalman, 1960). Between two echoes the height wanders as
 * ground does: a profile of ISO 8608 with waviness 2 is a random walk, whose steps over a way s have the variance {@code 2π² n0² Gd(n0) s}
 * (the structure function of its spectrum {@code Gd(n) = Gd(n0) (n/n0)^-2}). The rate wanders as a boom's motion does. The scatter of the
 * echoes is measured, by {@link FourthDifference}.
 *
 * <p><b>Outliers.</b> A boom's tip moves at up to {@value #FASTEST_MPS} m/s. An echo farther from where the filter expects it than that
 * and five times the scatter is not taken. When {@value #AGREE} in a row lie on one line it was the ground that jumped, or a tip that struck,
 * and the filter begins again there; echoes of twice the distance must do so for {@value #AGREE_TWICE}, for ground, boom, ground, face is an echo too.
 *
 * <p><b>Now.</b> What is asked for is the height now, so the filter's state is carried on by its rate over the echo's age and over
 * {@value #LAG_US} µs, by which such sensors are late.
 */
public final class HeightSense {
    /** Echoes from nearer or farther than this are no ground under a boom, m. Our choice, within what such sensors reach. */
    static final double NEAREST_M = 0.05;

    static final double FARTHEST_M = 3.0;

    /** What a tip can do and ground under it, m/s. Our choice: a wing of 18 m that bends by 0.2 m at 1.2 Hz moves so fast. */
    static final double FASTEST_MPS = 1.5;

    /** What a tip does that has struck the soil and comes off it, m/s. Our choice. */
    private static final double WHIPPING_MPS = 6;

    /** Three echoes: a washout's edge is taken for ground after 0.15 s. Our choice. */
    static final int AGREE = 3;

    /** A second's echoes. Our choice. */
    static final int AGREE_TWICE = 20;

    /** A sensor averages its last echoes and says so late. Our choice, from what such sensors take: some tens of milliseconds. */
    static final long LAG_US = 20_000;

    /** Random walk of the ground, m²/s: 2π² · 2.56e-6 m · 5 m/s, class C of ISO 8608 (Gd(n0) = 256e-6 m³) at 18 km/h. */
    static final double GROUND_M2PS = 2.5e-4;

    /**
     * Random walk of the rate, m²/s³: a boom that moves at 0.3 m/s (standard deviation) and forgets it in 1/(2π · 1.2 Hz), its first
     * bending, has 2 · 0.3² · 7.5.
     */
    private static final double MOTION_M2PS3 = 1.4;

    /** Scatter before any is measured, and bounds of what is believed of it, m. Our choice: 2 mm on a plate, 40 mm over crop. */
    private static final double FIRST_SCATTER_M = 0.006;

    private static final double LEAST_SCATTER_M = 0.002;
    private static final double MOST_SCATTER_M = 0.04;

    /** Weight of the newest in the measured scatter: about the last 5 s of 20 echoes a second. Our choice. */
    private static final double SCATTER_WEIGHT = 0.01;

    /** Air temperature that is not measured may be off by so much (standard deviation), °C. Our choice: within a working day. */
    private static final double FIXED_AIR_SD_C = 6;

    /** A thermometer in the shade against the air under the boom, °C. Our choice. */
    private static final double MEASURED_AIR_SD_C = 1.5;

    private final double aboveOutletM;
    private long heardUs = -1;
    private long echoUs = -1;
    private Unknown fault = Unknown.NOT_YET;
    private Unknown doubt = Unknown.NOT_YET;

    private double heightM;
    private double rateMps;
    private double varHeight;
    private double varBoth;
    private double varRate;
    private double airVariance;

    private double scatterM2 = FIRST_SCATTER_M * FIRST_SCATTER_M;
    private final FourthDifference differences = new FourthDifference();
    private double otherM;
    private double otherMps;
    private long otherUs;
    private int agreeing;
    private double soundIn = Double.NaN;
    private double soundMps;
    private double tookM = Double.NaN;
    private boolean tookAnew;

    /**
     * @param aboveOutletM how far the sensor's face is above the outlets, m
     */
    public HeightSense(double aboveOutletM) {
        this.aboveOutletM = aboveOutletM;
    }

    /**
     * The speed of sound in dry air.
     *
     * @param airC temperature, °C
     * @return m/s
     */
    public static double soundMps(double airC) {
        return 331.3 * Math.sqrt(1 + airC / 273.15);
    }

    /** Distance there and back in so many µs, one way, m. The air changes seldom, and a root is dear. */
    double distanceM(long roundTripUs, double airC) {
        if (airC != soundIn) {
            soundIn = airC;
            soundMps = soundMps(airC);
        }
        return 0.5e-6 * roundTripUs * soundMps;
    }

    /** As {@link #onEcho(long, long, double, boolean)}, in air whose temperature is measured. */
    public void onEcho(long timeUs, long roundTripUs, double airC) {
        onEcho(timeUs, roundTripUs, airC, true);
    }

    /**
     * Takes an echo.
     *
     * @param timeUs event time of the reading, µs; one before an earlier one's counts as that
     * @param roundTripUs echo time there and back, µs
     * @param airC air temperature, °C
     * @param airMeasured whether that is measured, and not just taken
     */
    public void onEcho(long timeUs, long roundTripUs, double airC, boolean airMeasured) {
        long atUs = Math.max(timeUs, heardUs);
        heardUs = atUs;
        tookM = Double.NaN;
        tookAnew = false;
        double distanceM = distanceM(roundTripUs, airC);
        if (distanceM < NEAREST_M || distanceM > FARTHEST_M) {
            fault = Unknown.OUT_OF_RANGE;
            differences.cut();
            return;
        }
        // Sound is 0.5 / (273 + T) faster for each degree, and so are distances.
        double perC = 0.5 * distanceM / (273.15 + airC);
        double sdC = airMeasured ? MEASURED_AIR_SD_C : FIXED_AIR_SD_C;
        airVariance = perC * perC * sdC * sdC;
        double readsM = distanceM - aboveOutletM;
        measureScatter(readsM);
        if (echoUs < 0) {
            begin(atUs, readsM, 0);
        } else {
            follow(atUs, readsM, distanceM);
        }
    }

    private void measureScatter(double readsM) {
        double square = differences.squareWith(readsM);
        if (!Double.isNaN(square)) {
            // One spike must not make all that follows look scattered.
            scatterM2 += SCATTER_WEIGHT * (Math.min(square / FourthDifference.GAIN, 9 * scatterM2) - scatterM2);
            scatterM2 =
                    Math.max(LEAST_SCATTER_M * LEAST_SCATTER_M, Math.min(MOST_SCATTER_M * MOST_SCATTER_M, scatterM2));
        }
    }

    private void begin(long atUs, double readsM, double mps) {
        heightM = readsM;
        rateMps = mps;
        varHeight = scatterM2;
        varBoth = 0;
        varRate = 0.1 * FASTEST_MPS * FASTEST_MPS;
        agreeing = 0;
        echoUs = atUs;
        tookM = readsM;
        tookAnew = true;
    }

    private void follow(long atUs, double readsM, double distanceM) {
        double dtS = (atUs - echoUs) * 1e-6;
        double expectedM = heightM + rateMps * dtS;
        if (Math.abs(readsM - expectedM) > gateM(dtS)) {
            if (!agrees(atUs, readsM, distanceM, expectedM)) {
                fault = Unknown.SCATTERED;
                return;
            }
            begin(atUs, readsM, otherMps);
            // A rate from two echoes that came as a surprise is believed only once more have borne it out.
            varRate = FASTEST_MPS * FASTEST_MPS;
            return;
        }
        agreeing = 0;
        double walk = MOTION_M2PS3 * dtS;
        double aheadHeight = varHeight + dtS * (2 * varBoth + dtS * varRate) + walk * dtS * dtS / 3 + GROUND_M2PS * dtS;
        double aheadBoth = varBoth + dtS * varRate + walk * dtS / 2;
        double aheadRate = varRate + walk;
        double perSum = 1 / (aheadHeight + scatterM2);
        double toHeight = aheadHeight * perSum;
        double toRate = aheadBoth * perSum;
        double off = readsM - expectedM;
        heightM = expectedM + toHeight * off;
        rateMps += toRate * off;
        varHeight = (1 - toHeight) * aheadHeight;
        varRate = aheadRate - toRate * aheadBoth;
        varBoth = (1 - toHeight) * aheadBoth;
        echoUs = atUs;
        tookM = readsM;
        tookAnew = false;
    }

    /** Whether enough echoes in a row lie on one line that a boom can move along, this one among them. */
    private boolean agrees(long atUs, double readsM, double distanceM, double expectedM) {
        double dtS = Math.max(1, atUs - otherUs) * 1e-6;
        if (agreeing == 1 && Math.abs(readsM - otherM) <= WHIPPING_MPS * dtS) {
            agreeing = 2;
            otherMps = (readsM - otherM) / dtS;
        } else if (agreeing >= 2 && Math.abs(readsM - otherM - otherMps * dtS) <= gateM(dtS)) {
            agreeing++;
            otherMps = (readsM - otherM) / dtS;
        } else {
            agreeing = 1;
            otherMps = 0;
        }
        otherM = readsM;
        otherUs = atUs;
        double expectedDistanceM = expectedM + aboveOutletM;
        boolean twice = Math.abs(distanceM - 2 * expectedDistanceM) < 0.2 * expectedDistanceM;
        return agreeing >= (twice ? AGREE_TWICE : AGREE);
    }

    private double gateM(double dtS) {
        return FASTEST_MPS * dtS + 5 * Math.sqrt(scatterM2);
    }

    /** The sensor was asked and heard nothing back. */
    public void onNoEcho(long timeUs) {
        heardUs = Math.max(timeUs, heardUs);
        tookM = Double.NaN;
        tookAnew = false;
        fault = Unknown.NO_ECHO;
        differences.cut();
    }

    /** The height that the last reading gave, m, if it was taken; else NaN. */
    double tookM() {
        return tookM;
    }

    /** The height that it has followed up to its last echo that was taken, m; NaN where there is none. */
    double followsM() {
        return echoUs < 0 ? Double.NaN : heightM;
    }

    boolean isDoubted() {
        return doubt.isDoubt();
    }

    /** Whether that reading did not go on from those before. */
    boolean tookAnew() {
        return tookAnew;
    }

    /** How readings scatter, variance, m². */
    double scatterM2() {
        return scatterM2;
    }

    /**
     * Says whether the sensor is believed.
     *
     * @param reason why not; {@link Unknown#NOT_YET} when it is
     */
    void doubt(Unknown reason) {
        doubt = reason;
    }

    /**
     * Height of the outlets over what the sensor sees.
     *
     * @param nowUs event time, µs
     * @param silenceUs without a good echo for so long it is not known, µs
     * @return m
     */
    public Quantity heightM(long nowUs, long silenceUs) {
        Quantity missing = missing(nowUs, silenceUs);
        if (missing != null) {
            return missing;
        }
        double overS = overS(nowUs);
        return Quantity.known(heightAfterM(overS), heightVarianceAfter(overS), nowUs - echoUs);
    }

    private double overS(long nowUs) {
        return Math.max(0, nowUs - echoUs + LAG_US) * 1e-6;
    }

    private double heightAfterM(double overS) {
        return heightM + rateMps * overS;
    }

    private double heightVarianceAfter(double overS) {
        return varHeight
                + overS * (2 * varBoth + overS * varRate)
                + MOTION_M2PS3 * overS * overS * overS / 3
                + GROUND_M2PS * overS
                + airVariance;
    }

    private double rateVarianceAfter(double overS) {
        return varRate + MOTION_M2PS3 * overS;
    }

    /**
     * The numbers of {@link #heightM} and {@link #rateMps}.
     *
     * @param into filled at the place of this sensor
     */
    public void read(long nowUs, long silenceUs, HeightReadings into, int sensor) {
        boolean known = missing(nowUs, silenceUs) == null;
        into.known[sensor] = known;
        if (known) {
            double overS = overS(nowUs);
            into.heightM[sensor] = heightAfterM(overS);
            into.heightVariance[sensor] = heightVarianceAfter(overS);
            into.rateMps[sensor] = rateMps;
            into.rateVariance[sensor] = rateVarianceAfter(overS);
        }
    }

    /**
     * How fast that height changes: the boom's own motion and the slope of the ground it passes over, without the ground's roughness;
     * positive as it grows.
     *
     * @param nowUs event time, µs
     * @param silenceUs without a good echo for so long it is not known, µs
     * @return m/s
     */
    public Quantity rateMps(long nowUs, long silenceUs) {
        Quantity missing = missing(nowUs, silenceUs);
        if (missing != null) {
            return missing;
        }
        return Quantity.known(rateMps, rateVarianceAfter(overS(nowUs)), nowUs - echoUs);
    }

    private @Nullable Quantity missing(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        if (nowUs - heardUs > silenceUs) {
            return forget(Unknown.SILENT, nowUs);
        }
        if (doubt.isDoubt()) {
            return Quantity.unknown(doubt, nowUs - heardUs);
        }
        return echoUs < 0 || nowUs - echoUs > silenceUs ? forget(fault, nowUs) : null;
    }

    private Quantity forget(Unknown reason, long nowUs) {
        long newestUs = Math.max(heardUs, echoUs);
        // What was measured before a silence must not lead what comes after it.
        echoUs = -1;
        differences.cut();
        agreeing = 0;
        return Quantity.unknown(reason, nowUs - newestUs);
    }
}
