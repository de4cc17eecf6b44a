package evenfall.ledger;

/**
 * Whether the machine turns: its course has changed by more than 45° within the last 20 m of way. A turn at a headland does (radius 10 m:
 * 115°), a contour line of more than 25 m radius does not. Our choice.
 */
final class Turning {
    private static final double BASE_M = 20;
    private static final double LIMIT_RAD = StrictMath.PI / 4;
    private static final int KEPT = 64;

    /** With {@link #KEPT} of them the base is covered. */
    private static final double LEAST_STEP_M = 2 * BASE_M / KEPT;

    private final double[] atM = new double[KEPT];
    private final double[] courseRad = new double[KEPT];
    private int newest = -1;
    private int held;
    private double wayM;
    private boolean turning;

    void forget() {
        held = 0;
        turning = false;
    }

    void gone(double m, double towardsRad) {
        wayM += m;
        if (held > 0 && wayM - atM[newest] < LEAST_STEP_M) {
            return;
        }
        newest = (newest + 1) % KEPT;
        atM[newest] = wayM;
        courseRad[newest] = towardsRad;
        held = Math.min(held + 1, KEPT);
        turning = false;
        for (int back = 1; back < held; back++) {
            int i = Math.floorMod(newest - back, KEPT);
            if (wayM - atM[i] > BASE_M) {
                break;
            }
            turning |= Math.abs(between(courseRad[i], towardsRad)) > LIMIT_RAD;
        }
    }

    boolean isTurning() {
        return turning;
    }

    /** Angle from one course to another the short way, rad. */
    private static double between(double fromRad, double toRad) {
        double turns = (toRad - fromRad) / (2 * StrictMath.PI);
        return 2 * StrictMath.PI * (turns - Math.floor(turns + 0.5));
    }
}
