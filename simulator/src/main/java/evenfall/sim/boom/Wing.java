package evenfall.sim.boom;

import evenfall.sim.vehicle.Mode;

/**
 * One wing: tilted about its hinge, and bending.
 *
 * <p>Bending is one shape, (s/L)² at s metres beyond the hinge of a wing of length L, with the deflection
 * b of its tip against the straight wing as coordinate. For a mass per metre μ(s) = μ0(1 − τ s/L) Lagrange's
 * equation with the hinge at height z and the straight wing's slope θ (outward, up) is
 *
 * <pre>  b̈ + 2ζω ḃ + ω² b = −(Γz z̈ + Γθ L θ̈)
 *  Γz = ∫μψ / ∫μψ² = (1/3 − τ/4) / (1/5 − τ/6),   Γθ = ∫μ(s/L)ψ / ∫μψ² = (1/4 − τ/5) / (1/5 − τ/6)</pre>
 *
 * <p>which is a {@link Mode} at distance b from the target Γz z + Γθ L θ. The wing's pull back on the
 * centre section is left out.
 */
final class Wing {

    private final double lengthM;
    private final double fromHeight;
    private final double fromSlope;
    private final Mode bending;
    private final boolean rigid;
    private double tiltMpm;
    private double tiltSpeed;
    private double tipBendSpeed;
    private double blowMps;

    Wing(BoomSpec spec) {
        double taper = spec.wingTaper();
        double modal = 1.0 / 5 - taper / 6;
        this.lengthM = spec.halfWidthM() - spec.hingeM();
        this.fromHeight = (1.0 / 3 - taper / 4) / modal;
        this.fromSlope = (1.0 / 4 - taper / 5) / modal * lengthM;
        this.rigid = spec.bendingHz() == Double.POSITIVE_INFINITY;
        this.bending = new Mode(spec.bendingHz(), spec.bendingDampingRatio());
    }

    /** At rest and straight, with no tilt. */
    void place(double hingeHeightM, double centreSlopeMpm) {
        tiltMpm = 0;
        tiltSpeed = 0;
        tipBendSpeed = 0;
        bending.place(fromHeight * hingeHeightM + fromSlope * centreSlopeMpm);
    }

    /** Tilts at this speed, 1/s, for one step, up to its travel. */
    void tilt(double dtS, double speed, double travelMpm) {
        double next = Math.max(-travelMpm, Math.min(travelMpm, tiltMpm + speed * dtS));
        tiltSpeed = (next - tiltMpm) / dtS;
        tiltMpm = next;
    }

    /**
     * One step, at whose end the hinge has this height and vertical speed and the centre section this outward
     * slope and rate of it.
     */
    void step(double dtS, double hingeHeightM, double centreSlopeMpm, double hingeSpeedMps, double centreSlopeSpeed) {
        bending.step(dtS, fromHeight * hingeHeightM + fromSlope * (centreSlopeMpm + tiltMpm));
        blowMps = 0;
        settle(hingeSpeedMps, centreSlopeSpeed);
    }

    /** Takes its speed anew, after a blow, on a hinge that moves and turns so fast now. */
    void settle(double hingeSpeedMps, double centreSlopeSpeed) {
        // Against the target's speed now, not its mean over the step: second order instead of first.
        double targetSpeed = fromHeight * hingeSpeedMps + fromSlope * (centreSlopeSpeed + tiltSpeed);
        tipBendSpeed = rigid ? 0 : bending.speed() - targetSpeed;
    }

    /** A blow to the bending: another speed of its tip at once, m/s. */
    void push(double speedChangeMps) {
        bending.push(speedChangeMps);
        blowMps += speedChangeMps;
    }

    /**
     * Goes over to reading the middle between the speeds before and after this step's blows: soil that
     * carries a wing at rest strikes it at every step, against the fall of the step to come.
     */
    void settleInTheMiddle(double hingeSpeedMps, double centreSlopeSpeed) {
        settle(hingeSpeedMps, centreSlopeSpeed);
        tipBendSpeed -= 0.5 * blowMps;
    }

    /** Height over the line of the centre section, m, at this distance beyond the hinge. */
    double heightM(double beyondM) {
        double share = beyondM / lengthM;
        return tiltMpm * beyondM + bending.offset() * share * share;
    }

    /** How fast that height grows, m/s. */
    double speedMps(double beyondM) {
        double share = beyondM / lengthM;
        return tiltSpeed * beyondM + tipBendSpeed * share * share;
    }

    /** Outward slope against the centre section, m per m, at this distance beyond the hinge. */
    double slopeMpm(double beyondM) {
        return tiltMpm + 2 * bending.offset() * beyondM / (lengthM * lengthM);
    }

    double tiltMpm() {
        return tiltMpm;
    }

    /** How fast the tilt grows, 1/s. */
    double tiltSpeed() {
        return tiltSpeed;
    }

    /** How fast the tip's bend grows, m/s. */
    double tipBendSpeedMps() {
        return tipBendSpeed;
    }

    double tipBendM() {
        return bending.offset();
    }
}
