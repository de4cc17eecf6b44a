package evenfall.sim.plumbing;

/**
 * What lies behind one section valve while the valve is not simply open: it fills, builds up pressure, loses it through the
 * outlets, and dribbles until it is empty.
 *
 * <p>The line gives way by {@code compliance} m³ for each pascal. When no pressure is left, liquid runs on under the head of what
 * still stands in the line, less and less, until {@code void} m³ have drained; these have to be filled first when the valve opens
 * again. Both flows, in through the valve and out through the outlets, are orifices; a step is linearly implicit (each orifice's
 * conductance {@code K/√Δp} is that of the step's beginning), so that it can neither overshoot nor lose anything.
 */
final class SectionLine {
    /** Head of a dribbling line, Pa: 0.12 m of solution; a choice of ours. */
    private static final double HEAD_PA = 1500;

    /** Below this difference the valve's conductance grows no further, Pa. */
    private static final double LEAST_DIFFERENCE_PA = 25;

    /** At this share of the feed's pressure the section is part of the boom again. */
    private static final double JOINED = 0.98;

    /** A section whose valve has been open so long is part of the boom whatever its pressure, s. */
    private static final double LONGEST_S = 2;

    /** A line that could still give less than this has drained, m³: a millionth of a drop. */
    private static final double EMPTY_M3 = 1e-13;

    private final int first;
    private final int end;
    private final double compliance;
    private final double voidM3;
    private final double valveK;

    private double k;
    private double opening = 1;
    private boolean joined = true;
    private double openForS;
    private double heldM3;
    private double pressurePa;
    private double rootIntegral;
    private double conductIn;
    private double conductOut;
    private double takes;
    private double gives;

    /**
     * @param first index of its first outlet
     * @param end index after its last outlet
     * @param compliance m³ for each Pa
     * @param voidM3 what can drain from it, m³
     * @param valveK its valve's coefficient, m³/s per √Pa
     */
    SectionLine(int first, int end, double compliance, double voidM3, double valveK) {
        this.first = first;
        this.end = end;
        this.compliance = compliance;
        this.voidM3 = voidM3;
        this.valveK = valveK;
    }

    int first() {
        return first;
    }

    int end() {
        return end;
    }

    double compliance() {
        return compliance;
    }

    /** Whether it is simply a part of the boom; all below is only for sections that are not. */
    boolean isJoined() {
        return joined;
    }

    /** Nothing moves and nothing will until it is switched. */
    boolean isAsleep() {
        return !joined && opening == 0 && heldM3 + voidM3 <= EMPTY_M3;
    }

    /** Leaves the boom's line at a pressure. */
    void leave(double feedPa) {
        joined = false;
        openForS = 0;
        pressurePa = feedPa;
        heldM3 = compliance * feedPa;
        rootIntegral = 0;
    }

    /** Has long been off and has drained. */
    void leaveEmpty() {
        joined = false;
        openForS = 0;
        opening = 0;
        pressurePa = 0;
        heldM3 = -voidM3;
        rootIntegral = 0;
    }

    /** Whether it has come to be part of the boom's line again. */
    boolean mayJoin(double feedPa) {
        return opening == 1 && heldM3 > 0 && (pressurePa >= JOINED * feedPa || openForS >= LONGEST_S);
    }

    /** Becomes part of the boom's line; says what it brings, m³. */
    double join() {
        joined = true;
        return heldM3;
    }

    /** @param k of all its outlets with what stands before them, with this liquid, m³/s per √Pa */
    void outlets(double k) {
        this.k = k;
    }

    /** Turns the valve for a step. */
    void turn(double dtS, boolean wanted, double openS, double closeS) {
        if (wanted) {
            openForS = opening == 1 ? openForS + dtS : 0;
            opening = openS > 0 ? Math.min(1, opening + dtS / openS) : 1;
        } else {
            opening = closeS > 0 ? Math.max(0, opening - dtS / closeS) : 0;
        }
    }

    /** First half of a step: how its inflow {@code takes · p − gives} depends on the feed's pressure at the step's end. */
    void prepare(double dtS, double feedPa) {
        double difference = Math.max(Math.abs(feedPa - pressurePa), LEAST_DIFFERENCE_PA);
        conductIn = opening > 0 ? opening * valveK / Math.sqrt(difference) : 0;
        conductOut = heldM3 > 0 && pressurePa >= HEAD_PA ? k / Math.sqrt(pressurePa) : 0;
        if (heldM3 > 0) {
            double whole = compliance + dtS * (conductIn + conductOut);
            takes = conductIn * (compliance + dtS * conductOut) / whole;
            gives = conductIn * compliance * pressurePa / whole;
        } else {
            takes = conductIn;
            gives = 0;
        }
    }

    double takes() {
        return takes;
    }

    double gives() {
        return gives;
    }

    /** Second half of a step, with the feed's pressure at its end. */
    void finish(double dtS, double feedPa) {
        double inM3 = dtS * (takes * feedPa - gives);
        double outM3;
        if (conductOut > 0) {
            double whole = compliance + dtS * (conductIn + conductOut);
            outM3 = dtS * conductOut * (compliance * pressurePa + dtS * conductIn * feedPa) / whole;
        } else {
            double dry = heldM3 < 0 && voidM3 > 0 ? 1 + heldM3 / voidM3 : heldM3 < 0 ? 0 : 1;
            // A dribble that grows ever thinner ends in a finite time, and at the bottom of the line at the latest.
            outM3 = Math.min(dtS * k * Math.sqrt(HEAD_PA * Math.max(0, dry)), Math.max(0, heldM3 + inM3 + voidM3));
        }
        heldM3 += inM3 - outM3;
        pressurePa = Math.max(0, heldM3 / compliance);
        if (k > 0) {
            rootIntegral += outM3 / k;
        }
    }

    /** What it holds beyond a line that is full without pressure, m³; negative when it has drained. */
    double heldM3() {
        return heldM3;
    }

    double pressurePa() {
        return pressurePa;
    }

    /** Pressure that drives its outlets now, Pa: its own, or the head of what still drains. */
    double drivingPa() {
        if (heldM3 > 0) {
            return Math.max(pressurePa, HEAD_PA);
        }
        return voidM3 > 0 ? HEAD_PA * Math.max(0, 1 + heldM3 / voidM3) : 0;
    }

    /** Integral of the driving pressure's root since the last {@link #clear}, √Pa · s. */
    double rootIntegral() {
        return rootIntegral;
    }

    void clear() {
        rootIntegral = 0;
    }
}
