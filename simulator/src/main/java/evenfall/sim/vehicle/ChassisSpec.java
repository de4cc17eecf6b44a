package evenfall.sim.vehicle;

/**
 * A four-wheeled chassis: a rigid body with its centre of mass midway between the axles, each wheel a
 * vertical spring and damper that stands for tyre and axle suspension together.
 *
 * <p>The centre of mass midway is a choice of ours (the tank sits between the axles); it makes heave,
 * roll and pitch independent of each other, so that each has a closed solution.
 *
 * @param massKg mass with a loaded tank, without the boom's moving parts, kg
 * @param rollInertiaKgm2 moment of inertia about the long axis, kg·m²
 * @param pitchInertiaKgm2 moment of inertia about the cross axis, kg·m²
 * @param trackM distance between left and right wheels, m
 * @param wheelbaseM distance between front and rear wheels, m
 * @param wheelStiffnessNpm stiffness of one wheel with its suspension, N/m
 * @param wheelDampingNspm damping of one wheel with its suspension, N·s/m
 * @param contactLengthM length of ground that a tyre bridges, m, 0 or above
 * @param hangBehindRearAxleM from the rear axle back to the boom's hanging point, m; below zero it
 *     hangs before it
 * @param hangHeightM height of the hanging point over level ground, m
 */
public record ChassisSpec(
        double massKg,
        double rollInertiaKgm2,
        double pitchInertiaKgm2,
        double trackM,
        double wheelbaseM,
        double wheelStiffnessNpm,
        double wheelDampingNspm,
        double contactLengthM,
        double hangBehindRearAxleM,
        double hangHeightM) {

    public ChassisSpec {
        requirePositive(massKg, "mass, kg,");
        requirePositive(rollInertiaKgm2, "roll inertia, kg·m²,");
        requirePositive(pitchInertiaKgm2, "pitch inertia, kg·m²,");
        requirePositive(trackM, "track, m,");
        requirePositive(wheelbaseM, "wheelbase, m,");
        requirePositive(wheelStiffnessNpm, "wheel stiffness, N/m,");
        requireNumber(wheelDampingNspm >= 0, wheelDampingNspm, "wheel damping, N·s/m, must be 0 or above");
        requireNumber(contactLengthM >= 0, contactLengthM, "contact length, m, must be 0 or above");
        requireNumber(true, hangBehindRearAxleM, "hanging point behind the rear axle, m, must be a number");
        requirePositive(hangHeightM, "height of the hanging point, m,");
    }

    /**
     * A self-propelled machine with 4,000 litres in the tank. Invented; its heave, roll and pitch come out at
     * 1.7, 2.2 and 2.1 Hz with a fifth to a quarter of critical damping.
     */
    public static ChassisSpec selfPropelled() {
        return new ChassisSpec(15_000, 21_600, 38_400, 3.0, 3.8, 450_000, 16_500, 0.5, 1.6, 1.4);
    }

    /** Undamped natural frequency of heave, Hz. */
    public double heaveHz() {
        return hertz(4 * wheelStiffnessNpm / massKg);
    }

    /** Undamped natural frequency of roll, Hz. */
    public double rollHz() {
        return hertz(wheelStiffnessNpm * trackM * trackM / rollInertiaKgm2);
    }

    /** Undamped natural frequency of pitch, Hz. */
    public double pitchHz() {
        return hertz(wheelStiffnessNpm * wheelbaseM * wheelbaseM / pitchInertiaKgm2);
    }

    Mode heaveMode() {
        return mode(heaveHz(), 4 * wheelDampingNspm / massKg);
    }

    Mode rollMode() {
        return mode(rollHz(), wheelDampingNspm * trackM * trackM / rollInertiaKgm2);
    }

    Mode pitchMode() {
        return mode(pitchHz(), wheelDampingNspm * wheelbaseM * wheelbaseM / pitchInertiaKgm2);
    }

    private static Mode mode(double naturalHz, double twoZetaOmega) {
        return new Mode(naturalHz, twoZetaOmega / (4 * StrictMath.PI * naturalHz));
    }

    private static double hertz(double omegaSquared) {
        return Math.sqrt(omegaSquared) / (2 * StrictMath.PI);
    }

    private static void requirePositive(double value, String what) {
        requireNumber(value > 0, value, what + " must be above 0");
    }

    private static void requireNumber(boolean holds, double value, String rule) {
        if (!holds || Double.isNaN(value) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(rule + ", not " + value);
        }
    }
}
