package evenfall.sense;

import evenfall.rig.Rig;

/**
 * A pressure transmitter on a 4 to 20 mA loop.
 *
 * <p><b>Variance.</b> That of its class, an error anywhere within {@value #CLASS} of its span (a uniform distribution, GUM 4.3.7), and that of
 * its readings about their own course, by second differences: {@code var(p0 − 2 p1 + p2) = 6 σ²}.
 *
 * <p><b>Stuck.</b> A plugged port or a frozen transmitter repeats its current to the microampere. Two findings, either is enough:
 *
 * <ul>
 *   <li>it repeats more often than it used to: each repeat is worth {@code −ln} of its own share of repeats until then, in a sequential test
 *       as in {@link HeightDoubts}, with the same false doubt in 100 hours at 10 readings a second;
 *   <li>the flow has changed meanwhile. By the orifice law ({@code p ∝ Q²}) a flow that goes from Q1 to Q2 takes the pressure from p to
 *       {@code p (Q2/Q1)²}; a difference of five standard deviations of both sensors is no chance (5.7e-7 of a normal distribution).
 * </ul>
 *
 * <p>A loop at either of its ends repeats because it can do nothing else; that says nothing.
 */
public final class PressureSense {
    /** Below 3.6 mA or above 21 mA the loop tells of a fault, not of a pressure (NAMUR NE 43, from memory). */
    static final double BROKEN_LOW_A = 0.0036;

    static final double BROKEN_HIGH_A = 0.021;

    /** Between these a transmitter measures (NAMUR NE 43, from memory). */
    private static final double LOW_END_A = 0.00385;

    private static final double HIGH_END_A = 0.02045;

    /** Accuracy class of an industrial transmitter: half a percent of span, common practice, no source. */
    static final double CLASS = 0.005;

    private static final double REPEAT_A = 0.5e-6;
    private static final double WEIGHT = 0.01;
    private static final double MOST_OF_REPEAT = 3;
    private static final double THRESHOLD = StrictMath.log(100.0 * 3600 * 10);
    private static final double FAR_BEYOND = 5;

    /** Moving readings in a row before it is believed again: a second's. Our choice. */
    private static final int MOVES_AGAIN = 10;

    /** Lines fill and boosts pass before a flow goes with its pressure. Our choice. */
    private static final long SETTLES_US = 500_000;

    private final Rig.Pressure config;
    private final double paPerA;
    private long heardUs = -1;
    private double currentA;
    private double beforeA;
    private double beforeThatA;
    private int inRow;
    private double scatterPa2;
    private boolean hasCurrent;
    private double repeatShare = 1;
    private double evidence;
    private int moved;
    private boolean stuck;
    private long runSinceUs;
    private double flowAtRunM3ps = Double.NaN;
    private double flowAtRunVariance;

    public PressureSense(Rig.Pressure config) {
        this.config = config;
        this.paPerA = (config.highPa() - config.lowPa()) / (config.highA() - config.lowA());
    }

    public void onCurrent(long timeUs, double amperes) {
        heardUs = timeUs;
        hasCurrent = true;
        if (inRow >= 1) {
            lookForRepeat(Math.abs(amperes - currentA) < REPEAT_A);
        }
        beforeThatA = beforeA;
        beforeA = currentA;
        currentA = amperes;
        inRow++;
        if (inRow >= 3) {
            double bendPa = paPerA * (currentA - 2 * beforeA + beforeThatA);
            scatterPa2 += WEIGHT * (bendPa * bendPa / 6 - scatterPa2);
        }
    }

    private void lookForRepeat(boolean repeats) {
        boolean atAnEnd = currentA < LOW_END_A || currentA > HIGH_END_A;
        if (repeats && !atAnEnd) {
            moved = 0;
            evidence += Math.min(MOST_OF_REPEAT, -StrictMath.log(repeatShare));
            stuck |= evidence > THRESHOLD;
        } else {
            evidence = 0;
            runSinceUs = heardUs;
            flowAtRunM3ps = Double.NaN;
            moved++;
            stuck &= moved < MOVES_AGAIN;
        }
        if (!stuck) {
            repeatShare += WEIGHT * ((repeats ? 1 : 0) - repeatShare);
        }
    }

    public void onNoCurrent(long timeUs) {
        heardUs = timeUs;
        hasCurrent = false;
        inRow = 0;
    }

    /**
     * Tells of the flow that the pressure drives, whenever both are looked at.
     *
     * @param flowM3ps through all open outlets; only as long as the same are open
     * @param fromUs when the stretch began over which that flow was measured, µs of event time
     */
    public void beside(Quantity flowM3ps, long fromUs) {
        // A flow from before the pressure's last change is not the flow that goes with it.
        if (!flowM3ps.isKnown() || !(flowM3ps.get() > 0) || fromUs - runSinceUs < SETTLES_US) {
            return;
        }
        if (Double.isNaN(flowAtRunM3ps)) {
            flowAtRunM3ps = flowM3ps.get();
            flowAtRunVariance = flowM3ps.variance();
            return;
        }
        double pa = readsPa();
        double ratio = flowM3ps.get() / flowAtRunM3ps;
        double wantedPa = pa * (ratio * ratio - 1);
        double perFlow = 2 * pa * ratio / flowAtRunM3ps;
        double varPa2 = 2 * scatterPa2
                + perFlow * perFlow * (flowM3ps.variance() + ratio * ratio * flowAtRunVariance)
                + unexplained(pa);
        stuck |= wantedPa * wantedPa > FAR_BEYOND * FAR_BEYOND * varPa2;
    }

    /** Pressure and flow do not change in the same moment: lines fill, boosts pass. A hundredth of the pressure, our choice. */
    private static double unexplained(double pa) {
        return 1e-4 * pa * pa;
    }

    /** Other outlets are open than before: the same pressure goes with another flow now. */
    public void otherOutlets() {
        runSinceUs = heardUs;
        flowAtRunM3ps = Double.NaN;
    }

    private double readsPa() {
        return config.lowPa() + paPerA * (currentA - config.lowA());
    }

    /**
     * Pressure at the transmitter, Pa.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is silent, µs
     */
    public Quantity pressurePa(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - heardUs;
        if (ageUs > silenceUs) {
            return Quantity.unknown(Unknown.SILENT, ageUs);
        }
        if (!hasCurrent || currentA < BROKEN_LOW_A || currentA > BROKEN_HIGH_A) {
            return Quantity.unknown(Unknown.LOOP_BROKEN, ageUs);
        }
        if (stuck) {
            return Quantity.unknown(Unknown.STUCK, ageUs);
        }
        double halfWidthPa = CLASS * (config.highPa() - config.lowPa());
        return Quantity.known(readsPa(), halfWidthPa * halfWidthPa / 3 + scatterPa2, ageUs);
    }
}
