package evenfall.sense;

/**
 * Ground speed from a receiver's RMC and VTG, a wheel's pulses, or both.
 *
 * <p>A Kalman filter of two states, speed and acceleration (R. E. Kalman, 1960), whose every observation is of the moment that it was
 * measured, before the moment that it is told: {@code z = v + a · (t_measured − t_now)}. So a receiver's lateness costs no more than
 * some variance.
 *
 * <p>A receiver is late but true, a wheel prompt but slips. Their ratio is followed as a slow random walk, from the moments at which
 * both are known, and takes the wheel to the receiver's scale; so the wheel gives the quick part and the receiver the slow one. Either
 * is enough alone; the wheel's scale goes on as it was last, with growing variance.
 *
 * <p>Some receivers go on to send VTG with a speed of zero while RMC says that there is no fix; so an RMC without a fix holds VTG back,
 * until a fix comes or RMC has not been heard for the limit of silence. An RMC that has a fix but no speed holds nothing back.
 */
public final class SpeedSense {
    /**
     * Error of a receiver's speed before its scatter is measured, m/s: 0.2 m/s per axis (95 %), NAVSTAR GPS User Equipment Introduction
     * §3.7, as quoted on other pages.
     */
    static final double FIRST_SCATTER_MPS = 0.10;

    /** The least that is believed of it: 0.01 kn, which Doppler speeds approach (T. J. Chalko, 2007, abstract). */
    private static final double LEAST_SCATTER_MPS = 0.01 * 1852 / 3600;

    private static final double SCATTER_WEIGHT = 0.02;

    /** Random walk of the acceleration, m²/s⁵: a machine that accelerates by 0.5 m/s² (standard deviation) for two seconds, 2 · 0.5² / 2. */
    private static final double MOTION_M2PS5 = 0.25;

    /** From a receiver's measuring to the end of its sentence: about a tenth of a second, common practice, no source. */
    static final long RECEIVER_LATENCY_US = 100_000;

    /** RMC and VTG of one epoch come within this; the second says nothing new. Our choice: below 20 epochs a second. */
    private static final long SAME_EPOCH_US = 40_000;

    /** A wheel's tyre and its wear, before it is compared: 5 %. Our choice. */
    private static final double FIRST_SCALE_SD = 0.05;

    /** Random walk of the wheel's scale, per √s: 3 % in ten seconds, as ground grows soft. Our choice. */
    private static final double SLIP_PER_ROOT_S = 0.01;

    /** Slower than this the two are not compared, m/s; half a slow walk, our choice. */
    private static final double LEAST_COMPARED_MPS = 0.5;

    /** A wheel's speed farther than this factor from the receiver's is a fault and no slip. Our choice. */
    private static final double MOST_SLIP = 1.6;

    private static final long LONGEST_STEP_US = 5_000_000;
    private static final int KEPT = 64;

    private final long silenceUs;

    private long stateUs = -1;
    private double speedMps;
    private double accelMps2;
    private double varSpeed;
    private double varBoth;
    private double varAccel;

    private long heardUs = -1;
    private long receiverUs = -1;
    private long voidUs = -1;
    private long observedUs = Long.MIN_VALUE / 2;
    private double scatterM2ps2 = FIRST_SCATTER_MPS * FIRST_SCATTER_MPS;
    private double beforeMps;
    private double beforeThatMps;
    private int inRow;

    private long wheelUs = -1;
    private long wheelAtUs = -1;
    private double wheelMps;
    private long wheelBeforeUs = -1;
    private double wheelBeforeMps;
    private double scale = 1;
    private double varScale = FIRST_SCALE_SD * FIRST_SCALE_SD;
    private long scaledUs = -1;

    private final long[] keptUs = new long[KEPT];
    private final double[] keptMps = new double[KEPT];
    private int newest;
    private int kept;

    /**
     * @param silenceUs an RMC older than this decides nothing about VTG, µs
     */
    public SpeedSense(long silenceUs) {
        this.silenceUs = silenceUs;
    }

    /** An RMC with a fix and a speed, m/s. */
    public void onFix(long timeUs, double mps) {
        onFix(timeUs, timeUs, mps);
    }

    /**
     * An RMC with a fix and a speed.
     *
     * @param timeUs event time of its arrival, µs
     * @param saidUs event time at which the receiver says it, the lateness of this one sentence taken off, µs
     * @param mps m/s
     */
    public void onFix(long timeUs, long saidUs, double mps) {
        voidUs = -1;
        receiver(timeUs, saidUs, mps);
    }

    /** An RMC with a fix that says no speed: VTG may. */
    public void onFixWithoutSpeed(long timeUs) {
        heardUs = timeUs;
        voidUs = -1;
    }

    /** An RMC without a fix. */
    public void onNoFix(long timeUs) {
        heardUs = timeUs;
        voidUs = timeUs;
        // What was true before the fix was lost is not held up as true now.
        receiverUs = -1;
    }

    /** A VTG with a speed, m/s. */
    public void onTrack(long timeUs, double mps) {
        onTrack(timeUs, timeUs, mps);
    }

    /** As {@link #onFix(long, long, double)}, from a VTG. */
    public void onTrack(long timeUs, long saidUs, double mps) {
        heardUs = timeUs;
        if (voidUs < 0 || timeUs - voidUs > silenceUs) {
            receiver(timeUs, saidUs, mps);
        }
    }

    /** A VTG without a speed. */
    public void onNoTrack(long timeUs) {
        heardUs = timeUs;
    }

    private void receiver(long timeUs, long saidUs, double mps) {
        heardUs = timeUs;
        receiverUs = timeUs;
        long atUs = Math.min(saidUs, timeUs) - RECEIVER_LATENCY_US;
        if (atUs - observedUs < SAME_EPOCH_US) {
            return;
        }
        measureScatter(mps);
        observedUs = atUs;
        compareWheel(atUs, mps);
        observe(timeUs, atUs, mps, scatterM2ps2);
    }

    /** By second differences, which even driving does not enter: {@code var(v0 − 2 v1 + v2) = 6 σ²}. */
    private void measureScatter(double mps) {
        if (inRow >= 2) {
            double bend = mps - 2 * beforeMps + beforeThatMps;
            double squared = Math.min(bend * bend / 6, 9 * scatterM2ps2);
            scatterM2ps2 += SCATTER_WEIGHT * (squared - scatterM2ps2);
            scatterM2ps2 = Math.max(LEAST_SCATTER_MPS * LEAST_SCATTER_MPS, scatterM2ps2);
        }
        beforeThatMps = beforeMps;
        beforeMps = mps;
        inRow++;
    }

    /**
     * A wheel's speed.
     *
     * @param timeUs event time of its arrival, µs
     * @param atUs event time of the middle of the pulses that it rests on, µs
     * @param mps speed by its pulses, m/s
     * @param variance of that, (m/s)²
     */
    public void onWheel(long timeUs, long atUs, double mps, double variance) {
        wheelBeforeUs = wheelAtUs;
        wheelBeforeMps = wheelMps;
        wheelUs = timeUs;
        wheelAtUs = atUs;
        wheelMps = mps;
        if (receiverUs >= 0 && !isPlausible(speedMps)) {
            return;
        }
        double scaled = mps / scale;
        double lost = mps / (scale * scale);
        observe(timeUs, atUs, scaled, variance / (scale * scale) + lost * lost * varScale);
    }

    private boolean isPlausible(double mps) {
        double low = Math.min(mps, wheelMps);
        double high = Math.max(mps, wheelMps);
        return high < LEAST_COMPARED_MPS || high <= MOST_SLIP * low;
    }

    /** Wheel over receiver, at the moment that the receiver speaks of. */
    private void compareWheel(long atUs, double mps) {
        if (scaledUs >= 0) {
            double overS = Math.max(0, atUs - scaledUs) * 1e-6;
            varScale =
                    Math.min(FIRST_SCALE_SD * FIRST_SCALE_SD * 4, varScale + SLIP_PER_ROOT_S * SLIP_PER_ROOT_S * overS);
            scaledUs = Math.max(scaledUs, atUs);
        }
        if (wheelBeforeUs < 0 || wheelAtUs <= wheelBeforeUs || Math.abs(atUs - wheelAtUs) > silenceUs) {
            return;
        }
        double part = (double) (atUs - wheelBeforeUs) / (wheelAtUs - wheelBeforeUs);
        double thenMps = wheelBeforeMps + Math.max(-1, Math.min(2, part)) * (wheelMps - wheelBeforeMps);
        if (mps < LEAST_COMPARED_MPS || thenMps < LEAST_COMPARED_MPS || !isPlausible(mps)) {
            return;
        }
        double ratio = thenMps / mps;
        double variance = ratio * ratio * scatterM2ps2 / (mps * mps);
        double gain = varScale / (varScale + variance);
        scale += gain * (ratio - scale);
        varScale *= 1 - gain;
        scaledUs = atUs;
    }

    private void observe(long timeUs, long atUs, double mps, double variance) {
        if (stateUs < 0 || timeUs - stateUs > LONGEST_STEP_US) {
            stateUs = timeUs;
            speedMps = mps;
            accelMps2 = 0;
            varSpeed = variance;
            varBoth = 0;
            varAccel = MOTION_M2PS5;
            kept = 0;
            keep(atUs, mps);
            return;
        }
        carryTo(timeUs);
        double agoS = (atUs - stateUs) * 1e-6;
        double ofSpeed = varSpeed + agoS * varBoth;
        double ofAccel = varBoth + agoS * varAccel;
        double sum = ofSpeed + agoS * ofAccel + variance;
        double off = mps - (speedMps + agoS * accelMps2);
        double toSpeed = ofSpeed / sum;
        double toAccel = ofAccel / sum;
        speedMps += toSpeed * off;
        accelMps2 += toAccel * off;
        varSpeed -= toSpeed * ofSpeed;
        varBoth -= toSpeed * ofAccel;
        varAccel -= toAccel * ofAccel;
        keep(atUs, speedMps + agoS * accelMps2);
    }

    private void carryTo(long timeUs) {
        double dtS = Math.max(0, timeUs - stateUs) * 1e-6;
        speedMps += accelMps2 * dtS;
        varSpeed += dtS * (2 * varBoth + dtS * varAccel) + MOTION_M2PS5 * dtS * dtS * dtS / 3;
        varBoth += dtS * varAccel + MOTION_M2PS5 * dtS * dtS / 2;
        varAccel += MOTION_M2PS5 * dtS;
        stateUs = Math.max(stateUs, timeUs);
    }

    private void keep(long atUs, double mps) {
        newest = (newest + 1) % KEPT;
        keptUs[newest] = atUs;
        keptMps[newest] = Math.max(0, mps);
        kept = Math.min(kept + 1, KEPT);
    }

    /**
     * Mean ground speed over a stretch of time in the past, for what was measured in that stretch.
     *
     * @param fromUs event time, µs
     * @param toUs event time, µs
     * @return m/s; the filter's speed at the middle of the stretch where nothing was measured in it
     */
    public double meanMps(long fromUs, long toUs) {
        double sum = 0;
        int n = 0;
        long newestUs = Long.MIN_VALUE;
        for (int back = 0; back < kept; back++) {
            int i = Math.floorMod(newest - back, KEPT);
            if (keptUs[i] < fromUs - LONGEST_STEP_US) {
                break;
            }
            newestUs = Math.max(newestUs, keptUs[i]);
            if (keptUs[i] >= fromUs && keptUs[i] <= toUs) {
                sum += keptMps[i] + accelMps2 * (0.5 * (fromUs + toUs) - keptUs[i]) * 1e-6;
                n++;
            }
        }
        double middleMps = speedMps + accelMps2 * (0.5 * (fromUs + toUs) - stateUs) * 1e-6;
        return Math.max(0, n == 0 ? middleMps : sum / n);
    }

    /** Variance of {@link #meanMps}, (m/s)²: that of the filter. */
    public double variance() {
        return varSpeed;
    }

    /**
     * Ground speed now, m/s.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is not known, µs
     */
    public Quantity speedMps(long nowUs, long silenceUs) {
        long newestUs = Math.max(receiverUs, wheelUs);
        if (newestUs >= 0 && nowUs - newestUs <= silenceUs) {
            double overS = Math.max(0, nowUs - stateUs) * 1e-6;
            double variance =
                    varSpeed + overS * (2 * varBoth + overS * varAccel) + MOTION_M2PS5 * overS * overS * overS / 3;
            return Quantity.known(Math.max(0, speedMps + accelMps2 * overS), variance, nowUs - newestUs);
        }
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - heardUs;
        return Quantity.unknown(ageUs > silenceUs ? Unknown.SILENT : Unknown.NO_FIX, ageUs);
    }
}
