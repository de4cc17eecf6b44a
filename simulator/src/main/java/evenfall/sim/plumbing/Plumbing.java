package evenfall.sim.plumbing;

import evenfall.outlet.OutletType;
import evenfall.rig.BoomLayout;
import evenfall.sim.chance.Chance;
import java.util.Arrays;

/**
 * Rate controller, regulating valve and boom, stepped together.
 *
 * <p>The controller wants {@code A · v · W} with the speed that the cab shows, which is late; it compares that with its own flow
 * reading, which is late too, and turns the valve at a speed in proportion to the difference, never faster than the valve's motor
 * goes. The valve is a changing orifice between a pump of fixed pressure and the boom: {@code Q = V √(pump − p)}. So while the
 * machine slows, too much flows, and while it speeds up, too little.
 */
public final class Plumbing {
    /** The valve's smallest opening: it does not shut, the section valves do that. */
    private static final double LEAST_OPENING = 0.01;

    private final PlumbingSpec spec;
    private final BoomLayout boom;
    private final double targetRateM;
    private final BoomLine line;
    private final double valveK;
    private final double[] openness;
    private final double[] drainedM3;

    private double opening;
    private double cabSpeedMps;
    private double meteredM3ps;
    private double feedPa;
    private double root;
    private double widthOnM;
    private double rootIntegral;

    /**
     * A boom with everything on, settled at a speed.
     *
     * @param boom outlets and sections
     * @param type outlet as it is fitted
     * @param specificGravity of the product
     * @param targetRateM what the operator has set, m³/m²
     * @param speedMps speed that the machine has been driving at
     * @param chance for the outlets' tolerance
     */
    public Plumbing(
            PlumbingSpec spec,
            BoomLayout boom,
            OutletType type,
            double specificGravity,
            double targetRateM,
            double speedMps,
            Chance chance) {
        this.spec = spec;
        this.boom = boom;
        this.targetRateM = targetRateM;
        double[] deviation = new double[boom.outlets()];
        for (int i = 0; i < deviation.length; i++) {
            double sigmas = Math.max(-3, Math.min(3, chance.nextGaussian()));
            deviation[i] = spec.outletSpread() * sigmas;
        }
        line = new BoomLine(BoomLine.outlets(type.orifice(), deviation), specificGravity, spec.lineLoss());
        openness = new double[boom.outlets()];
        drainedM3 = new double[boom.outlets()];
        Arrays.fill(openness, 1);
        widthOnM = boom.widthM();
        // Fully open, the valve leaves four fifths of the pump's pressure to the boom.
        valveK = 2 * line.sum();
        cabSpeedMps = speedMps;
        settle();
    }

    private void settle() {
        double wantedM3ps = Math.max(targetRateM * cabSpeedMps * widthOnM, idleM3ps());
        double wantedPa = Math.min(wantedM3ps / line.sum() * (wantedM3ps / line.sum()), 0.75 * spec.pumpPa());
        opening = clamp(line.sum() / valveK * Math.sqrt(wantedPa / (spec.pumpPa() - wantedPa)), LEAST_OPENING, 1);
        feedPa = settledPa();
        root = Math.sqrt(feedPa);
        meteredM3ps = line.sum() * root;
    }

    private double idleM3ps() {
        return line.sum() * Math.sqrt(spec.idlePa());
    }

    /** Pressure at which the valve lets through what the boom takes. */
    private double settledPa() {
        double valve = opening * valveK;
        double valveSquare = valve * valve;
        return spec.pumpPa() * valveSquare / (valveSquare + line.sum() * line.sum());
    }

    /**
     * Switches sections; flow stops or starts at once (dribble will come here). Only right after {@link #drain}: what has flowed
     * belongs to the outlets that were on.
     *
     * @param mask bit 0 is the leftmost section, 1 is on
     */
    public void switchSections(long mask) {
        if (rootIntegral != 0) {
            throw new IllegalStateException("sections switched before what had flowed was drained");
        }
        widthOnM = 0;
        for (int i = 0; i < openness.length; i++) {
            boolean on = (mask >> boom.sectionOf(i) & 1) != 0;
            openness[i] = on ? 1 : 0;
            widthOnM += on ? boom.spacingM() : 0;
        }
        line.open(openness);
    }

    /**
     * Goes on by one step.
     *
     * @param dtS step, s; well below the shortest lag
     * @param speedMps true ground speed
     */
    public void step(double dtS, double speedMps) {
        cabSpeedMps += (speedMps - cabSpeedMps) * dtS / spec.speedLagS();
        meteredM3ps += (flowM3ps() - meteredM3ps) * dtS / spec.meterLagS();
        if (widthOnM > 0) {
            double wantedM3ps = Math.max(targetRateM * cabSpeedMps * widthOnM, idleM3ps());
            double turnPs = spec.gainPs() * opening * (wantedM3ps - meteredM3ps) / wantedM3ps;
            double fastestPs = 1 / spec.strokeS();
            opening = clamp(opening + dtS * clamp(turnPs, -fastestPs, fastestPs), LEAST_OPENING, 1);
        }
        feedPa += (settledPa() - feedPa) * dtS / spec.lineLagS();
        root = Math.sqrt(feedPa);
        rootIntegral += root * dtS;
    }

    /** Flow through the meter: the sum of what leaves the outlets, m³/s. */
    public double flowM3ps() {
        return line.sum() * root;
    }

    /** Pressure where the line enters the boom, Pa. */
    public double feedPressurePa() {
        return feedPa;
    }

    public double outletFlowM3ps(int outlet) {
        return line.coefficient(outlet) * root;
    }

    public double outletPressurePa(int outlet) {
        return line.pressureShare(outlet) * feedPa;
    }

    /** Mean pressure at the outlets that are on, Pa; of all outlets when none is. */
    public double meanOutletPressurePa() {
        double share = 0;
        double count = 0;
        for (int i = 0; i < openness.length; i++) {
            share += openness[i] * line.pressureShare(i);
            count += openness[i];
        }
        return count > 0 ? feedPa * share / count : feedPa;
    }

    public boolean isOn(int outlet) {
        return openness[outlet] > 0;
    }

    /** Width that is switched on, m. */
    public double widthOnM() {
        return widthOnM;
    }

    /**
     * Hands over what has left each outlet since the last call.
     *
     * @return m³ of each outlet; the array is used again by the next call
     */
    public double[] drain() {
        for (int i = 0; i < drainedM3.length; i++) {
            drainedM3[i] = line.coefficient(i) * rootIntegral;
        }
        rootIntegral = 0;
        return drainedM3;
    }

    private static double clamp(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }
}
