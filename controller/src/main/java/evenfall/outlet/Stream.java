package evenfall.outlet;

/**
 * One stream of an outlet. It leaves along the unit vector {@code (back, right, down) = (cos σ · sin τ, sin σ, cos σ · cos
 * τ)}.
 *
 * @param share its share of the outlet's flow, above 0; the shares of an outlet sum to 1
 * @param offsetM where its hole is, m to the right of the outlet's middle
 * @param splayRad σ, angle out of the fore-and-aft plane to the right, rad, within ±π/2
 * @param tiltRad τ, angle from straight down towards the rear, rad, 0 to π
 * @param exitMps speed with water at the outlet's rated pressure, m/s, above 0
 */
public record Stream(double share, double offsetM, double splayRad, double tiltRad, double exitMps) {
    public Stream {
        if (!(share > 0) || !(exitMps > 0)) {
            throw new IllegalArgumentException("a stream has a share and an exit speed above 0");
        }
    }

    /** Part of the exit velocity towards the rear, no unit. */
    public double backPart() {
        return StrictMath.cos(splayRad) * StrictMath.sin(tiltRad);
    }

    /** Part of the exit velocity to the right, no unit. */
    public double rightPart() {
        return StrictMath.sin(splayRad);
    }

    /** Part of the exit velocity downwards, no unit; negative where the stream rises. */
    public double downPart() {
        return StrictMath.cos(splayRad) * StrictMath.cos(tiltRad);
    }
}
