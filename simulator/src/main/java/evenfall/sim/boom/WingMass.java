package evenfall.sim.boom;

/**
 * The sums over a wing's mass that its motion takes, for a mass per metre μ(s) = 1 − τ s/L at s metres
 * beyond the hinge of a wing of length L, and the bending shape ψ = (s/L)²: in metres, square metres and so
 * on, since the mass per metre at the hinge drops out of every motion. The centre section is taken as heavy per
 * metre as the wing at its hinge.
 */
final class WingMass {

    final double lengthM;
    final double hingeM;

    /** Both wings and the centre section about the boom's centre, ∫μ y². */
    final double boomInertia;

    /** One wing's bending against the boom turning as a whole, ∫μ y ψ. */
    final double turnByBend;

    /** One wing's bending against moving as a whole, ∫μ ψ. */
    final double moveByBend;

    /** One wing's bending, ∫μ ψ². */
    final double bend;

    WingMass(BoomSpec spec) {
        double taper = spec.wingTaper();
        double h = spec.hingeM();
        double l = spec.halfWidthM() - h;
        this.lengthM = l;
        this.hingeM = h;
        double wing = l * (h * h * (1 - taper / 2) + 2 * h * l * (1.0 / 2 - taper / 3) + l * l * (1.0 / 3 - taper / 4));
        this.boomInertia = 2 * wing + 2 * h * h * h / 3;
        this.turnByBend = l * (h * (1.0 / 3 - taper / 4) + l * (1.0 / 4 - taper / 5));
        this.moveByBend = l * (1.0 / 3 - taper / 4);
        this.bend = l * (1.0 / 5 - taper / 6);
    }

    /** The bending shape at this distance from the boom's centre: 0 up to the hinge, 1 at the tip. */
    double shape(double awayM) {
        double share = Math.max(0, awayM - hingeM) / lengthM;
        return share * share;
    }
}
